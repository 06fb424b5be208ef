// The long profile of a way from its levels: runs and heights that can be read again with moved numbers.

import { runAndLeft } from "../geometry/line.ts";
import type { Feature } from "../model/plan.ts";
import type { Quantity, Read, Spot } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { liveSpot } from "./live-figure.ts";
import { levelsOn } from "./surface-planes.ts";

/** A levelled point of the profile. */
export interface ProfilePoint {
  readonly key: string;
  readonly run: (read: Read) => number;
  readonly height: (read: Read) => number;
  readonly at: (read: Read) => Point;
}

/** Levels nearer together than this (m) say nothing of a slope: half a metre of staff and feet (PRACTICE). */
const leastStep = 0.5;

/** Levelled points along the middle line of a way, in order of their run. */
export function profileOf(way: Feature, read: Read): readonly ProfilePoint[] {
  const line = way.shape?.form === "line" ? way.shape.line : [];
  const own = line.flatMap((spot): Levelled[] => (spot.level ? [{ spot, level: spot.level }] : []));
  const points = [...own, ...levelsOn(way)].map(({ spot, level }): ProfilePoint => ({
    key: String(level.id),
    run: (now) =>
      runAndLeft(
        line.map((one) => liveSpot(one)(now)),
        liveSpot(spot)(now),
      )?.run ?? Number.NaN,
    height: (now) => now(level),
    at: liveSpot(spot),
  }));
  const sorted = points.sort((a, b) => a.run(read) - b.run(read));
  const kept: ProfilePoint[] = [];
  for (const point of sorted) {
    const before = kept.at(-1);
    if (!before || point.run(read) - before.run(read) >= leastStep) kept.push(point);
  }
  return kept;
}

interface Levelled {
  readonly spot: Spot;
  readonly level: Quantity<"length">;
}

/** Height of a profile at a run, m; its ends go on as they are. Plain points [run, height]. */
export function heightAt(profile: readonly (readonly [number, number])[], run: number): number {
  const after = profile.findIndex(([at]) => at >= run);
  const last = profile.length - 1;
  const i = Math.max(1, after < 0 ? last : after);
  const [from, to] = [profile[i - 1], profile[i]];
  if (!from || !to) return profile[0]?.[1] ?? Number.NaN;
  return from[1] + ((run - from[0]) / (to[0] - from[0])) * (to[1] - from[1]);
}
