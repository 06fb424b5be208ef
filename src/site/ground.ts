// The ground between levelled places: one net of triangles, built once, read with whatever the numbers are then.

import { type LevelledPlace } from "../model/plan.ts";
import type { Quantity, Read, Spot } from "../model/quantity.ts";
import type { Point, Scene } from "../model/reading.ts";
import { buildNet, type Net, trianglesOf } from "../terrain/net.ts";
import { outerNeedles } from "../terrain/outer-needles.ts";
import { sectionAlong } from "../terrain/section.ts";
import { levelOnPlane, type Plane, planeThrough } from "../terrain/surface.ts";
import { triangleAt } from "../terrain/triangle-at.ts";
import { liveSpot } from "./live-figure.ts";

/** Levelled ground: places with a level, and the triangles between them. Null where there are too few for a net. */
export interface Ground {
  readonly spots: readonly Spot[];
  readonly levels: readonly Quantity<"length">[];
  readonly net: Net | null;
}

/** Parts of features whose level is that of the ground beside them; a top, an invert or a floor is not. */
const groundParts: ReadonlySet<string> = new Set(["foot left", "foot right", "foot", "crest", "toe", "bed"]);

/**
 * Standard uncertainty of grass or rough ground between the places where the staff stood, metres: half of the 20 mm by
 * which such ground rises and falls over a step (PRACTICE).
 */
export const roughness = 0.01;

const made = new WeakMap<readonly LevelledPlace[], Ground>();

/** Numbers of the places on each breakline, in order. */
function breakLinesOf(used: readonly LevelledPlace[]): readonly (readonly number[])[] {
  const lines = new Map<string, { readonly number: number; readonly order: number }[]>();
  for (const [number, { along }] of used.entries())
    for (const { line, order } of along ?? []) lines.set(line, [...(lines.get(line) ?? []), { number, order }]);
  return [...lines.values()].map((line) => line.sort((a, b) => a.order - b.order).map(({ number }) => number));
}

/** The ground of a plan. Which triangle lies where is decided once, at the plan's own values. */
export function groundOf({ levels, read }: Pick<Scene, "levels" | "read">): Ground {
  const known = made.get(levels);
  if (known) return known;
  const used = levels.filter(({ spot, of }) => spot !== null && (of === undefined || groundParts.has(of.part)));
  const spots = used.flatMap(({ spot }) => (spot ? [spot] : []));
  const { net } = buildNet(
    spots.map((spot) => liveSpot(spot)(read)),
    breakLinesOf(used),
  );
  const ground = { spots, levels: used.map(({ level }) => level), net };
  made.set(levels, ground);
  return ground;
}

/** The plane of the triangle under a point, as a function of the read; null outside the net: nothing is guessed there. */
export type LivePlane = (read: Read) => Plane | null;

export function groundUnder(ground: Ground, at: Point): Triangle | null {
  const { net } = ground;
  const triangle = net ? triangleAt(net, at) : null;
  return net && triangle !== null ? triangleOf(ground, net, triangle) : null;
}

/** One triangle of ground, readable again with moved numbers. */
export interface Triangle {
  readonly triangle: number;
  readonly plane: LivePlane;
  readonly corners: (read: Read) => readonly Point[];
}

function triangleOf(ground: Ground, net: Net, triangle: number): Triangle {
  const numbers = [0, 1, 2].map((k) => net.corners[3 * triangle + k] as number);
  const spots = numbers.map((number) => liveSpot(ground.spots[number] as Spot));
  const levels = numbers.map((number) => ground.levels[number] as Quantity);
  const corners = (read: Read) => spots.map((spot) => spot(read));
  const plane: LivePlane = (read) =>
    planeThrough(
      corners(read) as unknown as [Point, Point, Point],
      levels.map(read) as unknown as [number, number, number],
    );
  return { triangle, plane, corners };
}

/** Triangles whose middle lies where `holds` says. */
export function planesWithin(ground: Ground, holds: (at: Point) => boolean): readonly Triangle[] {
  const { net } = ground;
  if (!net) return [];
  return trianglesOf(net).flatMap(([a, b, c], triangle) => {
    const middle: Point = [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3];
    return holds(middle) ? [triangleOf(ground, net, triangle)] : [];
  });
}

/** Level of the ground at a point that may move; null outside the net. A level of the spot's own stands before. */
export function groundLevelAt(ground: Ground, spot: Spot, read: Read): ((read: Read) => number) | null {
  const { level } = spot;
  if (level) return (now) => now(level);
  return levelAtPoint(ground, liveSpot(spot), read);
}

/** Level of the ground at a live point; null outside the net. */
export function levelAtPoint(
  ground: Ground,
  point: (read: Read) => Point,
  read: Read,
): ((read: Read) => number) | null {
  const under = groundUnder(ground, point(read));
  return under && ((now) => levelOn(under.plane(now), point(now)));
}

function levelOn(plane: Plane | null, at: Point): number {
  return plane ? levelOnPlane(plane, at) : Number.NaN;
}

/** A stretch of a line over one triangle: from and to as shares of the line's piece, and the plane there. */
export interface GroundStretch extends Triangle {
  readonly piece: number;
  /** Where it begins and ends on the piece, 0 to 1. */
  readonly from: number;
  readonly to: number;
}

/** Stretches of a line that lie over the net, in order; where the line leaves the net nothing is given. */
export function groundAlong(ground: Ground, line: readonly Point[]): readonly GroundStretch[] {
  const { net } = ground;
  if (!net) return [];
  const level = { net, levels: ground.levels.map(() => 0) };
  return line.slice(1).flatMap((end, piece) => {
    const start = line[piece] as Point;
    const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
    return sectionAlong(level, [start, end]).flatMap((section) =>
      section.slice(1).flatMap((to, k) => {
        const from = section[k];
        const middle: Point = from ? [(from.at[0] + to.at[0]) / 2, (from.at[1] + to.at[1]) / 2] : to.at;
        const under = groundUnder(ground, middle);
        return from && under ? [{ ...under, piece, from: from.run / length, to: to.run / length }] : [];
      }),
    );
  });
}

/** Without the needles on the outside of the net, whose planes say nothing of a slope; all where there is nothing else. */
export function withoutNeedles<One extends Triangle>({ net }: Ground, triangles: readonly One[]): readonly One[] {
  const needles = net ? outerNeedles(net) : new Set<number>();
  const told = triangles.filter(({ triangle }) => !needles.has(triangle));
  return told.length > 0 ? told : triangles;
}

/** Whether the net reaches under the whole of a line. */
export function reachesAll(stretches: readonly GroundStretch[], pieces: number): boolean {
  return [...Array(pieces).keys()].every((piece) => {
    const covered = stretches.filter((one) => one.piece === piece).reduce((sum, one) => sum + one.to - one.from, 0);
    return covered > 1 - 1e-6;
  });
}
