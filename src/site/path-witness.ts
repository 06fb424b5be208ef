// What shows a found path on the drawing: the body where it changes direction, the tyres' tracks, the ground it covers,
// and the tightest place.

import { type Arc, poseAfter, posesAlong } from "../motion/pose.ts";
import { bodyOutline, sweptOutline } from "../motion/swept-outline.ts";
import { distance } from "../geometry/point.ts";
import { footOn } from "../geometry/segment.ts";
import { union } from "../geometry/overlay.ts";
import { polygonOf } from "../geometry/polygon.ts";
import { sidesOf } from "../geometry/ring.ts";
import type { Read } from "../model/quantity.ts";
import type { Point, Witness } from "../model/reading.ts";
import { trailerOutlineAt, trailerOutlines } from "./trailer-outlines.ts";
import type { DrivenPath, TightPlace } from "./tight-places.ts";

/** The witness of a path at one of its near places. */
export function pathWitness({ drive, arcs }: DrivenPath, place: TightPlace, read: Read): readonly Witness[] {
  const vehicle = drive.vehicle(read) ?? drive.plain;
  const swept = sweptOutline(vehicle, drive.start, arcs);
  const behind = drive.trailer ? trailerOutlines(drive.trailer.live(read), drive.start, arcs) : null;
  const covered = union([...swept.rings, ...(behind?.covered ?? [])].map((ring) => polygonOf(ring))) ?? [];
  const poses = posesAlong(drive.start, arcs);
  const pose = poses[place.arc] ?? drive.start;
  const arc = arcs[place.arc];
  const there = arc ? poseAfter(pose, { ...arc, length: Math.sign(arc.length) * place.along }) : pose;
  const behindThere = drive.trailer && place.key.endsWith(" trailer");
  const outline = behindThere
    ? trailerOutlineAt(drive.trailer.live(read), drive.start, arcs, place)
    : bodyOutline(vehicle, there);
  return [
    { part: "found", form: "line", points: [nearestOn(outline, place.at), place.at], label: "tightest" },
    { part: "thing", form: "outline", points: outline },
    ...covered.map((polygon): Witness => ({ part: "wanted", form: "outline", points: polygon.outline })),
    ...swept.stops.map((stop, i): Witness => ({
      part: "thing",
      form: "outline",
      points: stop.outline,
      ...(i + 1 < swept.stops.length ? { label: `move ${i + 1}` } : {}),
    })),
    ...(behind?.stops ?? []).map((points): Witness => ({ part: "thing", form: "outline", points })),
    ...legsOf(arcs).flatMap(({ gear, from, legs }) =>
      sweptOutline(vehicle, poses[from] ?? drive.start, legs)
        .wheelTracks.slice(2)
        .map((track): Witness => ({ part: "thing", form: "line", points: track, gear })),
    ),
  ];
}

/** Runs of arcs driven the same way, and at which arc each begins. */
function legsOf(arcs: readonly Arc[]) {
  const legs: { gear: "forward" | "reverse"; from: number; legs: Arc[] }[] = [];
  for (const [i, arc] of arcs.entries()) {
    const gear = arc.length < 0 ? "reverse" : "forward";
    const last = legs.at(-1);
    if (last?.gear === gear) last.legs.push(arc);
    else legs.push({ gear, from: i, legs: [arc] });
  }
  return legs;
}

function nearestOn(outline: readonly Point[], at: Point): Point {
  const feet = sidesOf(outline).map((side) => footOn(side, at).foot);
  return feet.reduce((best, foot) => (distance(foot, at) < distance(best, at) ? foot : best), feet[0] ?? at);
}
