// Slopes along and across a way, from levels on it or from the ground under its middle line.

import { runAndLeft } from "../geometry/line.ts";
import { dot, minus, toTheLeft, unit } from "../geometry/vector.ts";
import type { Feature } from "../model/plan.ts";
import type { Read, Spot } from "../model/quantity.ts";
import type { CandidatePlace, Point, Scene } from "../model/reading.ts";
import { groundAlong, groundOf, type GroundStretch, reachesAll, withoutNeedles } from "./ground.ts";
import { liveSpot } from "./live-figure.ts";
import { levelsOn, type LevelledSpot } from "./surface-planes.ts";

/** Levels nearer together than this along a way say nothing of its slope: half a metre of staff and feet (PRACTICE). */
const leastStep = 0.5;

/** Steps between levels along a way, in order of their run. Signed: above 0 where it rises the way the line is drawn. */
export function stepsAlong(way: Feature, read: Read): readonly CandidatePlace[] {
  const line = way.shape?.form === "line" ? way.shape.line : [];
  const onLine = line.flatMap((spot): LevelledSpot[] => (spot.level ? [{ spot, level: spot.level }] : []));
  const levels = [...onLine, ...levelsOn(way)];
  const points = line.map((spot) => liveSpot(spot)(read));
  const sorted = levels
    .map((entry) => ({ ...entry, run: runAndLeft(points, liveSpot(entry.spot)(read))?.run ?? 0 }))
    .sort((a, b) => a.run - b.run);
  return sorted.slice(1).flatMap((to, index): readonly CandidatePlace[] => {
    const from = sorted[index] as (typeof sorted)[number];
    return to.run - from.run < leastStep ? [] : [step(line, from, to)];
  });
}

function step(line: readonly Spot[], from: LevelledSpot, to: LevelledSpot): CandidatePlace {
  const runOf = (at: LevelledSpot, read: Read) =>
    runAndLeft(
      line.map((spot) => liveSpot(spot)(read)),
      liveSpot(at.spot)(read),
    )?.run ?? Number.NaN;
  return {
    key: `${from.spot.name ?? ""} ${from.level.id}-${to.level.id}`,
    value: (read) => (read(to.level) - read(from.level)) / (runOf(to, read) - runOf(from, read)),
    witness: (read) => [
      { part: "found", form: "line", points: [liveSpot(from.spot)(read), liveSpot(to.spot)(read)], label: "slope" },
    ],
  };
}

/** Slope of the ground under the middle line, triangle by triangle; empty where the levels do not reach under all of it. */
export function groundSlopes(way: Feature, scene: Scene, sense: "along" | "across"): readonly CandidatePlace[] {
  const line = way.shape?.form === "line" ? way.shape.line : [];
  const points = line.map((spot) => liveSpot(spot)(scene.read));
  const ground = groundOf(scene);
  const stretches = groundAlong(ground, points);
  if (!reachesAll(stretches, points.length - 1)) return [];
  return withoutNeedles(ground, stretches).map((stretch) => groundSlope(stretch, line, sense));
}

function groundSlope(stretch: GroundStretch, line: readonly Spot[], sense: "along" | "across"): CandidatePlace {
  const ends = (read: Read): readonly [Point, Point] => {
    const [a, b] = [liveSpot(line[stretch.piece] as Spot)(read), liveSpot(line[stretch.piece + 1] as Spot)(read)];
    const at = (share: number): Point => [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
    return [at(stretch.from), at(stretch.to)];
  };
  return {
    key: `${stretch.piece}.${stretch.triangle}`,
    value: (read) => {
      const plane = stretch.plane(read);
      const [from, to] = ends(read);
      const way = unit(minus(to, from));
      if (!plane || !way) return Number.NaN;
      return dot([plane.east, plane.north], sense === "along" ? way : toTheLeft(way));
    },
    witness: (read) => [{ part: "found", form: "line", points: ends(read), label: "slope" }],
  };
}
