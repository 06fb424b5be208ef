// The corners and points of what is still to be built, with the lengths between them that check the pegging.

import type { Feature, Plan } from "../model/plan.ts";
import type { Read, Spot } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { liveSpot } from "../site/live-figure.ts";
import { type Dig, digAt } from "./dig-at.ts";

/** One point to be pegged. */
export interface Corner {
  readonly name: string;
  readonly at: Point;
  /** True where it is a peg of the survey, which stands already. */
  readonly stands: boolean;
  /** Levels and dig, for a peg that comes within `pegU` of its place; null where the plan gives no level. */
  readonly dig: ((pegU: number) => Dig) | null;
}

/** A tape between two corners, by index, once both are pegged. */
export interface CornerCheck {
  readonly ends: readonly [number, number];
  readonly is: "side" | "diagonal";
}

export interface Staked {
  readonly feature: Feature;
  readonly corners: readonly Corner[];
  /** Sides and diagonals to be taped afterwards. */
  readonly checks: readonly CornerCheck[];
}

/** Kinds that are wishes or ways of going about it: nobody pegs them. */
const notPegged: ReadonlySet<string> = new Set([
  "manoeuvre",
  "job",
  "stock",
  "route",
  "approach",
  "animals",
  "carrier",
]);

/** Everything new that has a place, in the order of the stages. */
export function stakedOut(plan: Plan, read: Read): readonly Staked[] {
  const fresh = plan.features.filter(
    ({ existing, kind, shape }) => !existing && shape !== null && !notPegged.has(kind),
  );
  const first = fresh.filter(
    (one, i) => fresh.findIndex(({ kind, name }) => kind === one.kind && name === one.name) === i,
  );
  return [...first]
    .sort((a, b) => a.from - b.from)
    .map((feature) => {
      const spots = spotsOf(feature);
      const corners = spots.map((spot, k) => cornerOf({ feature, spot, k, of: spots.length }, plan, read));
      return { feature, corners, checks: checksOf(feature, spots.length) };
    });
}

function spotsOf({ shape }: Feature): readonly Spot[] {
  if (shape === null) return [];
  if (shape.form === "point") return [shape.at];
  if (shape.form === "circle") return [shape.centre];
  return shape.form === "line" ? shape.line : shape.outline;
}

interface Place {
  readonly feature: Feature;
  readonly spot: Spot;
  readonly k: number;
  readonly of: number;
}

function cornerOf({ feature, spot, k, of }: Place, plan: Plan, read: Read): Corner {
  const at = liveSpot(spot)(read);
  const peg = (plan.surveyed ?? []).find(({ kind, name }) => kind === "peg" && standsAt(plan.pegs.get(name), at, read));
  const stands = peg !== undefined;
  const own = of === 1 ? feature.name : `${feature.name} ${k + 1}`;
  return { name: peg?.name ?? own, at, stands, dig: digAt(feature, spot, { plan, read }) };
}

/** A corner this near a peg is that peg, metres (method tolerance). */
const onThePeg = 1e-6;

function standsAt(peg: Spot | undefined, at: Point, read: Read): boolean {
  return peg !== undefined && Math.hypot(read(peg.east) - at[0], read(peg.north) - at[1]) < onThePeg;
}

/** Each side in turn; of an outline also the diagonals that cross its middle. */
function checksOf({ shape }: Feature, count: number): readonly CornerCheck[] {
  const side = (a: number, b: number): CornerCheck => ({ ends: [a, b], is: "side" });
  const sides = Array.from({ length: Math.max(0, count - 1) }, (_, k) => side(k, k + 1));
  if (shape?.form !== "outline" || count < 3) return sides;
  const half = Math.floor(count / 2);
  const diagonals = Array.from({ length: half }, (_, k): CornerCheck => ({ ends: [k, k + half], is: "diagonal" }));
  return [...sides, side(0, count - 1), ...(count > 3 ? diagonals : [])];
}
