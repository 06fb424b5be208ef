// Where a vehicle on a found path comes near to things, each place readable again with moved numbers. The path keeps its form.

import { envelopesOf, type Envelope } from "../motion/envelope.ts";
import { prepareEnvelopes } from "../motion/checked.ts";
import type { Ground } from "../motion/ground.ts";
import { type Arc, directionChanges, poseAfter, posesAlong } from "../motion/pose.ts";
import { type Tightest, tightestPlace } from "../motion/tightest.ts";
import { distance } from "../geometry/point.ts";
import { footOn, type Segment } from "../geometry/segment.ts";
import { featureWords } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { contactAt } from "./contact.ts";
import type { Drive } from "./drive.ts";
import { distanceThere, nearestToTrailer, trailerParts, trainAt } from "./trailer-places.ts";
import { type LiveRing, movedOut, ringAt } from "./live-ring.ts";

/** One near place: how much room there is, and from which point of the thing. */
export interface TightPlace {
  readonly key: string;
  /** `wall "march wall"`, or the edge of the ground under the wheels. */
  readonly words: string;
  readonly room: (read: Read) => number;
  readonly at: Point;
  /** Index of the arc, and metres into it, where it is tightest. */
  readonly arc: number;
  readonly along: number;
}

/** A path that was found at a clearance (m) below or above the wanted one. */
export interface DrivenPath {
  readonly drive: Drive;
  readonly arcs: readonly Arc[];
  readonly proven: number;
  readonly wanted: number;
}

/** Rings of a thing at a read, and which envelopes of the vehicle must keep off them. */
interface Guard {
  readonly key: string;
  readonly words: string;
  readonly rings: (read: Read, spare: number) => readonly (readonly Point[])[] | null;
  readonly envelopes: (read: Read, spare: number, ground: Ground) => readonly Envelope[];
  /** Room that stands for touching: where the body is looked at shrunk, or the ground moved, or only wheels count. */
  readonly touching: number;
  /** Whether the body shrinks to have room to spare; else the rings are moved out. */
  readonly spares: "body" | "rings" | "nothing";
}

/** Places farther from the tightest than this decide nothing, m. */
const within = 0.4;
/** Distances are read with so much room to spare (m), so that a nudge never makes the two overlap. */
const spareRoom = 0.3;

/** The near places of a path, tightest first: one for each thing in the way, and one for the ground's own edge. */
export function tightPlaces(path: DrivenPath, read: Read): readonly TightPlace[] {
  const known = ofPath.get(path);
  if (known?.read === read) return known.places;
  const places = placesOf(path, read);
  ofPath.set(path, { read, places });
  return places;
}

/** The near places of a path for the read that they were asked with: many rules ask after the same path. */
const ofPath = new WeakMap<DrivenPath, { readonly read: Read; readonly places: readonly TightPlace[] }>();

/** A place whose room at the read is known before it is made ready to be read again. */
interface Sketched {
  readonly room: number;
  readonly key: string;
  readonly place: () => TightPlace | null;
}

function placesOf(path: DrivenPath, read: Read): readonly TightPlace[] {
  const sketched = guardsOf(path)
    .flatMap((guard) => [placeAt(guard, path, read), sketchedTrailer(guard, path, read)])
    .filter((one) => one !== null)
    .sort((a, b) => a.room - b.room || (a.key < b.key ? -1 : 1));
  let least: number | null = null;
  const places: TightPlace[] = [];
  for (const { room, place } of sketched) {
    if (least !== null && room > least + within) break;
    const ready = place();
    if (!ready) continue;
    least ??= room;
    places.push(ready);
  }
  return places;
}

function sketchedTrailer(guard: Guard, path: DrivenPath, read: Read): Sketched | null {
  const place = trailerPlaceAt(guard, path, read);
  return place && { room: place.room(read), key: place.key, place: () => place };
}

function guardsOf({ drive, proven, wanted }: DrivenPath): readonly Guard[] {
  const body = (read: Read, spare: number, ground: Ground): readonly Envelope[] => {
    const vehicle = drive.vehicle(read) ?? drive.plain;
    return envelopesOf(vehicle, { clear: ground, running: ground }, Math.min(0, proven) - spare);
  };
  const tyres = (read: Read, _: number, ground: Ground): readonly Envelope[] => {
    const vehicle = drive.vehicle(read) ?? drive.plain;
    const nowhere: Ground = { rings: [] };
    return envelopesOf(vehicle, { clear: nowhere, running: ground }, 0).filter(({ part }) => part === "tyre");
  };
  // Looked at from the path, which goes where its ground goes.
  const fromPath = (ring: LiveRing, read: Read) => ringAt(ring, read).map(drive.carried(read).back);
  const asBody = { envelopes: body, touching: Math.min(0, proven), spares: "body" } as const;
  const asWheels = { envelopes: tyres, touching: wanted, spares: "nothing" } as const;
  const things = drive.inTheWay.map((one): Guard => ({
    key: one.feature.name,
    words: featureWords(one.feature),
    rings: (read) => one.rings.map((ring) => fromPath(ring, read)),
    ...(one.keepsOff === "body" || drive.bodyStaysOn ? asBody : asWheels),
  }));
  const edges =
    (by: number): Guard["rings"] =>
    (read, spare) => {
      const moved = drive.running.map((ring) => movedOut(fromPath(ring, read), by + spare));
      return moved.some((ring) => ring === null) ? null : (moved as readonly (readonly Point[])[]);
    };
  const edge: Guard = drive.bodyStaysOn
    ? { key: "", words: "the edge of the surface", rings: (read) => edges(0)(read, 0), ...asBody }
    : {
        key: "",
        words: "the wheels at the edge of the surface",
        rings: edges(wanted - proven),
        envelopes: tyres,
        touching: proven,
        spares: "rings",
      };
  return [...things, edge];
}

function placeAt(guard: Guard, path: DrivenPath, read: Read): Sketched | null {
  const rings = guard.rings(read, 0);
  if (!rings) return null;
  const nearest = tightestPlace(prepareEnvelopes(guard.envelopes(read, 0, { rings })), path.drive.start, path.arcs);
  if (!Number.isFinite(nearest.clearance)) return null;
  // At the very read there is no more nor less than that: what is read again is told by how much it differs.
  const room = guard.touching + nearest.clearance;
  return { room, key: guard.key, place: () => placeReady(guard, path, { read, rings, nearest }) };
}

interface NearestAt {
  readonly read: Read;
  readonly rings: readonly (readonly Point[])[];
  readonly nearest: Tightest;
}

function placeReady(guard: Guard, path: DrivenPath, { read, rings, nearest }: NearestAt): TightPlace | null {
  const { start } = path.drive;
  const sides = sidesAt(rings, nearest.at);
  const pose = posesAlong(start, path.arcs)[nearest.arc];
  const arc = path.arcs[nearest.arc];
  if (!pose || !arc || sides.length === 0) return null;
  const base = guard.touching + nearest.clearance;
  const ringSpare = guard.spares === "rings" && guard.rings(read, spareRoom) !== null ? spareRoom : 0;
  const bodySpare = guard.spares === "body" ? spareRoom : 0;
  const nearSides = (now: Read): readonly Segment[] => {
    const near = guard.rings(now, ringSpare) ?? rings;
    return sides.flatMap(([ring, side]) => segmentOf(near[ring] ?? [], side));
  };
  const parts = (now: Read) => guard.envelopes(now, bodySpare, { rings: [] });
  const there = poseAfter(pose, { ...arc, length: Math.sign(arc.length) * nearest.along });
  const contact = contactAt(there, parts(read), nearSides(read));
  if (!contact) return null;
  const apart = (now: Read): number => contact(parts(now), nearSides(now));
  const before = apart(read);
  const radius = path.drive.plain.rearAxleRadius;
  const lost = directionChanges(path.arcs) > 0 ? lostByRadius.shunting : lostByRadius.through;
  return {
    key: guard.key,
    words: guard.words,
    room: (now) => {
      const wider = (path.drive.vehicle(now)?.rearAxleRadius ?? radius) - radius;
      return base + (apart(now) - before) - lost * wider;
    },
    at: nearest.at,
    arc: nearest.arc,
    along: nearest.along,
  };
}

/** The same for the trailer, where one is on. The place on the path stays; the trailer and the thing are read again. */
function trailerPlaceAt(guard: Guard, { drive, arcs, proven }: DrivenPath, read: Read): TightPlace | null {
  const { trailer, start } = drive;
  const rings = guard.rings(read, 0);
  if (!trailer || !rings) return null;
  const part = guard.spares === "body" ? "body" : "tyre";
  const margin = Math.min(0, proven);
  const near = nearestToTrailer(trailer.plain, trailerParts(trailer.plain, part, { rings }, margin), start, arcs);
  const sides = near ? sidesAt(rings, near.at) : [];
  if (!near || sides.length === 0) return null;
  const room = (now: Read): number => {
    const [towed, there] = [trailer.live(now), guard.rings(now, 0) ?? rings];
    const ground = { rings: sides.map(([ring, side]) => sideOf(there[ring] ?? [], side)) };
    const train = trainAt(towed, start, arcs, near);
    return guard.touching + distanceThere(towed, trailerParts(towed, part, ground, margin), train);
  };
  const words = guard.words.startsWith("the wheels")
    ? guard.words.replace("the wheels", "the trailer's wheels")
    : guard.words;
  const key = `${guard.key} trailer`;
  return {
    key,
    words: words === guard.words ? `${words}, the trailer` : words,
    room,
    at: near.at,
    arc: near.arc,
    along: near.along,
  };
}

/**
 * Room lost for every metre by which the vehicle turns wider: 0.22 to 0.28 in three-arc turns between walls, for cars,
 * vans, lorries and a fire engine; a turn without reversing needs as much more on both sides (COMPUTED).
 */
const lostByRadius = { shunting: 0.3, through: 1 } as const;

/** The one or two sides of rings that a point lies on: ring and side by their numbers. */
function sidesAt(rings: readonly (readonly Point[])[], at: Point): readonly (readonly [number, number])[] {
  return rings.flatMap((ring, r) =>
    ring.flatMap((from, side): (readonly [number, number])[] => {
      const to = ring[(side + 1) % ring.length] as Point;
      return distance(footOn([from, to], at).foot, at) < 1e-6 ? [[r, side]] : [];
    }),
  );
}

const segmentOf = (ring: readonly Point[], side: number): readonly Segment[] => {
  const [from, to] = sideOf(ring, side);
  return from && to ? [[from, to]] : [];
};

const sideOf = (ring: readonly Point[], side: number): readonly Point[] =>
  [ring[side], ring[(side + 1) % ring.length]].flatMap((point) => (point ? [point] : []));
