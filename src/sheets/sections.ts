// Long sections of what runs along the ground, and cross sections of what has a width.

import { keyOfKind } from "../model/kinds.ts";
import { type Feature, featureWords, type Plan } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { drainRuns, pointsOf } from "../site/drain-runs.ts";
import { invertNear } from "../site/dug-depth.ts";
import { finishedPlane } from "../site/finished-level.ts";
import { beside, liveSpot } from "../site/live-figure.ts";
import { sectionAlong, type SectionPoint } from "../terrain/section.ts";
import { groundAt, levelOnPlane, type Surface } from "../terrain/surface.ts";

export interface SectionTold {
  readonly sort: "long" | "cross";
  readonly words: string;
  readonly notes: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

interface Ground {
  readonly surface: Surface;
  readonly read: Read;
}

/** Kinds that are walked, driven or laid along their line. */
const along: ReadonlySet<string> = new Set(["drain", "surface", "ramp", "route", "water", "crossing"]);

/** Sections of every line among the standing features, in the order of the plan. */
export function sectionsOf(plan: Plan, standing: readonly Feature[], ground: Ground): readonly SectionTold[] {
  return standing.flatMap((feature) => {
    if (!along.has(feature.kind) || feature.shape?.form !== "line") return [];
    return [...longSection(feature, plan, ground), ...crossSections(feature, ground)];
  });
}

const fixed = (value: number, decimals: number): number => Number(value.toFixed(decimals));
const capital = (words: string): string => words.replace(/^./, (first) => first.toUpperCase());

/** The level that the thing itself has at a place: its invert or its finished top; null where the plan gives none. */
function ownLevel(feature: Feature, plan: Plan, read: Read): (at: Point) => number | null {
  if (feature.kind !== "drain") {
    const plane = finishedPlane(feature)?.(read) ?? null;
    return (at) => (plane === null ? null : levelOnPlane(plane, at));
  }
  const runs = drainRuns(feature, (key) => plan.features.filter(({ kind }) => keyOfKind(kind) === key));
  return (at) => {
    const near = runs
      .filter(({ upper, lower }) => upper.invert && lower.invert)
      .map((run) => ({ run, off: distanceToLine(pointsOf(run.line, read), at) }))
      .sort((a, b) => a.off - b.off)[0];
    return near ? invertNear(near.run, at, read) : null;
  };
}

function distanceToLine(line: readonly Point[], at: Point): number {
  const offs = line.slice(1).map((end, k) => {
    const start = line[k] as Point;
    const [e, n] = [end[0] - start[0], end[1] - start[1]];
    const share = Math.min(1, Math.max(0, ((at[0] - start[0]) * e + (at[1] - start[1]) * n) / (e * e + n * n || 1)));
    return Math.hypot(start[0] + share * e - at[0], start[1] + share * n - at[1]);
  });
  return Math.min(...offs);
}

function longSection(feature: Feature, plan: Plan, { surface, read }: Ground): readonly SectionTold[] {
  if (feature.shape?.form !== "line") return [];
  const name = featureWords(feature);
  const stretches = sectionAlong(surface, pointsOf(feature.shape.line, read));
  const points = stretches.flat();
  const [first] = points;
  if (first === undefined)
    return [{ sort: "long", words: capital(`${name}: no levels were taken under it`), notes: [], rows: [] }];
  const level = ownLevel(feature, plan, read);
  const what = feature.kind === "drain" ? "invert" : "finished";
  const told = points.map((point) => ({ ...point, own: level(point.at) }));
  const notes = told.map(({ run, level: ground, own }) => {
    const depth = own === null ? "" : `, ${what} ${own.toFixed(2)}, ${depthWords(ground - own)}`;
    return `at ${run.toFixed(2)} m ground ${ground.toFixed(2)}${depth}`;
  });
  const rows = told.map(({ run, at, level: ground, own }) => [
    "long section",
    name,
    fixed(run, 2),
    "",
    fixed(at[0], 2),
    fixed(at[1], 2),
    fixed(ground, 3),
    own === null ? "" : fixed(own, 3),
    own === null ? "" : fixed(ground - own, 3),
    "",
    "",
    "",
  ]);
  const gap = stretches.length > 1 ? ", with gaps where no levels were taken" : "";
  return [
    { sort: "long", words: `${capital(name)}, from its first point${gap}${steepestWords(stretches)}`, notes, rows },
  ];
}

const depthWords = (depth: number): string =>
  `${Math.abs(depth).toFixed(2)} ${depth >= 0 ? "below" : "above"} the ground`;

/** `; steepest 1 in 8 between 3.2 and 9.0 m`: where the ground under it is steepest. */
function steepestWords(stretches: readonly (readonly SectionPoint[])[]): string {
  const steps = stretches.flatMap((points) =>
    points.slice(1).map((to, k) => {
      const from = points[k] as SectionPoint;
      return { from, to, slope: Math.abs(to.level - from.level) / Math.max(to.run - from.run, Number.MIN_VALUE) };
    }),
  );
  const [most] = steps.sort((a, b) => b.slope - a.slope);
  if (!most || most.slope <= 0) return "";
  return `; the ground is steepest, ${(100 * most.slope).toFixed(1)} in 100, from ${most.from.run.toFixed(1)} to ${most.to.run.toFixed(1)} m`;
}

/** At each corner of the line of a thing with a width: the ground at its left edge, its middle and its right edge. */
function crossSections(feature: Feature, { surface, read }: Ground): readonly SectionTold[] {
  if (feature.shape?.form !== "line" || feature.shape.width === undefined) return [];
  const half = read(feature.shape.width) / 2;
  const line = feature.shape.line.map(liveSpot);
  const name = featureWords(feature);
  let run = 0;
  const cuts = line.map((spot, index) => {
    const before = line[index - 1]?.(read);
    const here = spot(read);
    if (before) run += Math.hypot(here[0] - before[0], here[1] - before[1]);
    const places = [half, 0, -half].map((left) => ({ left, at: beside(line, index, () => left)(read) }));
    return { run, places: places.map((place) => ({ ...place, level: groundAt(surface, place.at)?.level ?? null })) };
  });
  const known = cuts.filter(({ places }) => places.every(({ level }) => level !== null));
  if (known.length === 0) return [];
  const notes = known.map(({ run: at, places: [left, middle, right] }) => {
    const levels = `left ${left?.level?.toFixed(2)}, middle ${middle?.level?.toFixed(2)}, right ${right?.level?.toFixed(2)}`;
    const slope = ((left?.level ?? 0) - (right?.level ?? 0)) / (2 * half);
    const way =
      Math.abs(slope) < 0.0005
        ? "level across"
        : `${(100 * Math.abs(slope)).toFixed(1)} in 100 down to the ${slope > 0 ? "right" : "left"}`;
    return `at ${at.toFixed(2)} m ${levels}; ${way}`;
  });
  const rows = known.flatMap(({ run: at, places }) =>
    places.map(({ left, at: [east, north], level }) => [
      "cross section",
      name,
      fixed(at, 2),
      fixed(left, 2),
      fixed(east, 2),
      fixed(north, 2),
      fixed(level ?? Number.NaN, 3),
      "",
      "",
      "",
      "",
      "",
    ]),
  );
  return [{ sort: "cross", words: `${capital(name)}, ground across it at each of its points`, notes, rows }];
}
