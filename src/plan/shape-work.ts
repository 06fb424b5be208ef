// What every reader of a shape needs.

import type { LiveLine } from "./lines.ts";
import type { LiveShape } from "./live-shape.ts";
import type { Node } from "./node.ts";
import type { LivePoint } from "./number-book.ts";
import type { Setting } from "./points.ts";
import { turnedRound } from "./lines.ts";
import type { Uncertain } from "./sway.ts";

/** How the shape of a feature is read. `size` gives a length of the feature its doubt. */
export interface ShapeWork {
  readonly setting: Setting;
  readonly size: (node: Node, path: string) => Uncertain | null;
  /** The setting for points that a change or an option has written. */
  readonly settingOf: (node: Node) => Setting;
}

/** A shape without further lines. */
export const bare = (main: LiveShape["main"]): LiveShape => ({ main, lines: {} });
/** Points as a line of the feature. */
export const lineOf = (points: readonly LivePoint[], closed: boolean, work: ShapeWork): LiveLine => ({
  points,
  closed,
  name: work.setting.whose,
});

/** The outline between two lines: along the first, back along the second, whichever way round crosses over least. */
export function ring(a: LiveLine, b: LiveLine, work: ShapeWork): LiveShape["main"] {
  const ends = (line: LiveLine): readonly [LivePoint, LivePoint] => [
    line.points[0] as LivePoint,
    line.points.at(-1) as LivePoint,
  ];
  const gap = (p: LivePoint, q: LivePoint): number =>
    Math.hypot(p.east.value - q.east.value, p.north.value - q.north.value);
  const [[a0, a1], [b0, b1]] = [ends(a), ends(b)];
  const sameWay = gap(a1, b1) + gap(a0, b0) <= gap(a1, b0) + gap(a0, b1);
  const back = sameWay ? turnedRound(b) : b;
  return { form: "outline", outline: lineOf([...a.points, ...back.points], true, work), holes: [] };
}
