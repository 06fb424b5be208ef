// What: how deep is the soil over this run of pipe at its shallowest?
// Formula: level of the ground (or of the chamber's cover) - invert - bore, at the nodes and wherever the ground bends.
// Source: plane geometry; what the plan states as `cover` stands before (PRACTICE).
// Valid: the wall of the pipe is not counted, some millimetres; ground between levels as a net of triangles.
//   Where a surface is a role too, only what lies under it counts; a run that crosses it with no such place counts whole.
// Witness: the place.

import { holdsPoint } from "../geometry/polygon.ts";
import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { Quantity, Read } from "../model/quantity.ts";
import type { CandidatePlace, Measure, Point, Scene } from "../model/reading.ts";
import type { DrainNode } from "../site/drain-nodes.ts";
import { type DrainRun, missingInverts, planLength, pointsOf, runOf } from "../site/drain-runs.ts";
import { groundAlong, groundLevelAt, groundOf, type GroundStretch, roughness } from "../site/ground.ts";
import { areaAt } from "../site/area.ts";
import { groundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { levelOnPlane } from "../terrain/surface.ts";
import { askedFor, missing } from "./asked-for.ts";

export const coverOverPipe: Measure = {
  name: "cover-over-pipe",
  dimension: "length",
  roles: { run: "a run of a drain" },
  parameters: {},
  phrase: "{found} of soil lies over it at the thinnest",
  below: { phrase: "it stands {found} out of the ground at the worst place", wanted: "of soil over it" },
  shortName: "cover",
  find: (subject, scene) => {
    const run = runOf(subject["run"], scene);
    if (!run || !crosses(subject["run"], subject["surface"], scene)) return { is: "does-not-bear" };
    const stated = propertyOf(run.drain, "cover");
    if (isQuantity(stated))
      return { is: "found", places: [{ key: "stated", value: (read) => read(stated), witness: () => [] }] };
    const bore = propertyOf(run.drain, "bore");
    if (!isQuantity(bore)) return missing(askedFor(run.drain, "bore", "the bore", "length"));
    if (!run.upper.invert || !run.lower.invert) return missing(...missingInverts(run));
    const places = [...atNodes(run, bore, scene), ...between(run, bore, scene)];
    if (places.length > 0) return { is: "found", places: under(subject["surface"], places, scene) };
    return missing(askedFor(run.drain, "cover", "the least depth of soil over the pipe", "length"));
  },
};

/** Whether the run passes under the surface; without a surface it always does. */
function crosses(run: Feature | undefined, surface: Feature | undefined, scene: Scene): boolean {
  const [a, b] = [run && groundFigure(run), surface && groundFigure(surface)];
  return !surface || (!!a && !!b && nearPlaces(a, b, 0, scene.read).length > 0);
}

/** Places that lie under the surface; all of them where none does. */
function under(
  surface: Feature | undefined,
  places: readonly CandidatePlace[],
  scene: Scene,
): readonly CandidatePlace[] {
  const figure = surface && groundFigure(surface);
  const area = figure && areaAt(figure, scene.read);
  if (!area) return places;
  const inside = places.filter((place) => {
    const at = place.witness(scene.read)[0]?.points[0];
    return at !== undefined && holdsPoint(area, at);
  });
  return inside.length > 0 ? inside : places;
}

function atNodes(run: DrainRun, bore: Quantity, scene: Scene): readonly CandidatePlace[] {
  return [run.upper, run.lower].flatMap((node): readonly CandidatePlace[] => {
    const { invert, spot } = node;
    const ground = groundAt(node, scene);
    if (!invert || !ground) return [];
    return [
      {
        key: node.name,
        where: `at ${node.name}`,
        value: (read) => ground(read) - invert(read) - read(bore),
        witness: (read) => [{ part: "found", form: "point", points: [[read(spot.east), read(spot.north)]] }],
      },
    ];
  });
}

function groundAt({ feature, spot }: DrainNode, scene: Scene): ((read: Read) => number) | null {
  const cover = feature?.kind === "chamber" ? propertyOf(feature, "cover") : undefined;
  if (isQuantity(cover)) return (read) => read(cover);
  return groundLevelAt(groundOf(scene), spot, scene.read);
}

/** Wherever the run crosses from one triangle of ground to the next. */
function between(run: DrainRun, bore: Quantity, scene: Scene): readonly CandidatePlace[] {
  const stretches = groundAlong(groundOf(scene), pointsOf(run.line, scene.read));
  return stretches.flatMap((stretch) =>
    [stretch.from, stretch.to].map((share): CandidatePlace => {
      const key = `${stretch.piece}.${share.toFixed(6)}`;
      const at = (read: Read) => placeOn(run, stretch.piece, share, read);
      return {
        key,
        methodU: roughness,
        value: (read) => groundOn(stretch, at(read).point, read) - at(read).invert - read(bore),
        witness: (read) => [{ part: "found", form: "point", points: [at(read).point] }],
      };
    }),
  );
}

function groundOn(stretch: GroundStretch, at: Point, read: Read): number {
  const plane = stretch.plane(read);
  return plane ? levelOnPlane(plane, at) : Number.NaN;
}

/** Point and invert at a share of a piece of the run. */
function placeOn(run: DrainRun, piece: number, share: number, read: Read) {
  const points = pointsOf(run.line, read);
  const [from, to] = [points[piece] as Point, points[piece + 1] as Point];
  const walked = planLength(run.line.slice(0, piece + 1), read) + share * Math.hypot(to[0] - from[0], to[1] - from[1]);
  const whole = run.length(read);
  const [top, bottom] = [run.upper.invert?.(read) ?? Number.NaN, run.lower.invert?.(read) ?? Number.NaN];
  const point: Point = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
  return { point, invert: top + ((bottom - top) * walked) / whole };
}
