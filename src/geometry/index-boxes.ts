// Finding boxes quickly by where they lie. The only file that imports the index.

import Flatbush from "flatbush";
import { boxDistance, grownBox, type Box } from "./box.ts";

/** An index over a list of boxes. Answers are positions in that list, in rising order. */
export interface BoxIndex {
  /** Boxes that share at least a point with `box`. */
  readonly meeting: (box: Box) => readonly number[];
  /** Boxes no farther than `reach` metres from `box`, measured corner to corner where need be. */
  readonly within: (box: Box, reach: number) => readonly number[];
}

/** Index of `boxes`. A place that is null, or whose numbers are not finite, is never found. */
export function indexBoxes(boxes: readonly (Box | null)[]): BoxIndex {
  const kept = boxes.flatMap((box, i) => (box !== null && isFiniteBox(box) ? [{ box, i }] : []));
  if (kept.length === 0) return { meeting: () => [], within: () => [] };
  const index = new Flatbush(kept.length);
  for (const { box } of kept) index.add(box.west, box.south, box.east, box.north);
  index.finish();
  const search = (box: Box, near: (found: Box) => boolean): readonly number[] =>
    index
      .search(box.west, box.south, box.east, box.north, (at) => near(kept[at]?.box as Box))
      .map((at) => kept[at]?.i as number)
      .sort((a, b) => a - b);
  return {
    meeting: (box) => search(box, () => true),
    within: (box, reach) => search(grownBox(box, reach), (found) => boxDistance(box, found) <= reach),
  };
}

function isFiniteBox(box: Box): boolean {
  return [box.west, box.south, box.east, box.north].every(Number.isFinite);
}
