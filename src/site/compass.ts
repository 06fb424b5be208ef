// Directions in words: the nearest of the eight points of the compass, by the plan's own north.

import type { Point } from "../model/reading.ts";

const compassWords = [
  "north",
  "north-east",
  "east",
  "south-east",
  "south",
  "south-west",
  "west",
  "north-west",
] as const;

/** `south-east` for a direction of any length, east and north. */
export function compassWord([east, north]: Point): string {
  const points = compassWords.length;
  const turns = (Math.atan2(east, north) * points) / (2 * Math.PI);
  return compassWords[(Math.round(turns) + points) % points] as string;
}
