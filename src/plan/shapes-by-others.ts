// Reads shapes that are placed by other things: beside a wall, between two lines, on a fence.

import { lengthOf, lineBeside, pointAlong } from "./lines.ts";
import type { LiveShape } from "./live-shape.ts";
import { child, items, textOf, type Node } from "./node.ts";
import type { LivePoint } from "./number-book.ts";
import { readNumber } from "./numbers.ts";
import { readPoints, type Setting } from "./points.ts";
import { bare, lineOf, ring, type ShapeWork } from "./shape-work.ts";
import { exact, scaled, sum } from "./sway.ts";
import { wordsOf } from "./troubles.ts";

/** A line or ring beside another: `beside: march wall, left: 1.5`. */
export function readBeside(node: Node, written: Node, work: ShapeWork): LiveShape | null {
  const { setting } = work;
  const line = setting.lineByName(textOf(written) ?? "", written);
  const side = child(node, "left") ?? child(node, "right");
  if (side === null) {
    return setting.troubles.report(node, {
      code: "missing-key",
      expected: "left or right: how far beside that line",
      got: wordsOf(node.data),
      hint: "write left: 1.5",
    });
  }
  const off = readNumber(side, "length", setting.troubles);
  if (line === null || off === null) return null;
  const here = work.settingOf(written);
  const words = `the offset of ${setting.whose}`;
  const taped = here.existing
    ? here.measuring.taped(off, words)
    : off.plusMinus === null
      ? exact(off.value)
      : here.measuring.stated(off, words, "length", "build");
  const left = side.place.path.at(-1) === "right" ? scaled(taped, -1) : taped;
  const beside = lineBeside(line, left, node.place);
  if (beside === null) {
    return setting.troubles.report(written, {
      code: "bad-geometry",
      expected: "a line without hairpin bends",
      got: line.name,
      hint: "write the points of this one by themselves",
    });
  }
  const points = here.existing
    ? beside.points
    : beside.points.map((point, i) => here.measuring.built(point, `point ${i + 1} of ${setting.whose}`, node.place));
  const main = beside.closed
    ? ({ form: "outline", outline: lineOf(points, true, work), holes: [] } as const)
    : ({ form: "line", line: lineOf(points, false, work) } as const);
  return bare(main);
}

/** Between two points a line; between two features the ground that lies between them. */
export function readBetween(_: Node, written: Node, work: ShapeWork): LiveShape | null {
  const { setting } = work;
  const both = items(written);
  const [first, second] = both;
  if (both.length !== 2 || first === undefined || second === undefined) {
    return setting.troubles.report(written, {
      code: "bad-geometry",
      expected: "two pegs, or two features",
      got: wordsOf(written.data),
      hint: "write between: [P1, P2]",
    });
  }
  const lines = [first, second].map((node) =>
    setting.isLine(textOf(node) ?? "") ? setting.lineByName(textOf(node) ?? "", node) : undefined,
  );
  const [a, b] = lines;
  if (a === undefined || b === undefined) return lineThrough(written, work);
  if (a === null || b === null) return null;
  return { main: ring(a, b, work), lines: { side_1: a.points, side_2: b.points } };
}

/** A fence on a wall takes the wall's line. */
export function readOnLine(_: Node, written: Node, work: ShapeWork): LiveShape | null {
  const name = textOf(written);
  const line = name === null ? null : work.setting.lineByName(name, written);
  return line === null ? null : bare({ form: "line", line });
}

/** A gate on a fence: from `along` metres, as wide as it is clear. */
export function readOn(node: Node, written: Node, work: ShapeWork): LiveShape | null {
  const alongNode = child(node, "along");
  const name = textOf(written);
  if (alongNode === null || name === null || !/^[-+\d.]/.test(String(alongNode.data))) return null;
  const { setting } = work;
  const line = setting.lineByName(name, written);
  const run = readNumber(alongNode, "length", setting.troubles);
  if (line === null || run === null) return null;
  const here = work.settingOf(alongNode);
  const start = here.existing
    ? here.measuring.taped(run, `the run of ${setting.whose} along ${name}`)
    : exact(run.value);
  const clearNode = child(node, "clear") ?? child(node, "width");
  const clear = clearNode === null ? exact(0) : (work.size(clearNode, String(clearNode.place.path.at(-1))) ?? exact(0));
  const ends = [start, sum(start, clear)].map((along) => pointAlong(line, { run: along, left: exact(0) }, node.place));
  const points = ends.filter((point) => point !== null);
  const length = lengthOf(line).value;
  if (points.length < 2 || run.value < 0 || run.value + clear.value > length + 0.05) {
    return setting.troubles.report(alongNode, {
      code: "bad-geometry",
      expected: `a place on ${name}, which is ${length.toFixed(2)} m long`,
      got: `${run.value} m`,
      hint: "measure along it from its first point",
    });
  }
  const asBuilt = here.existing || line.points.every((point) => point.built === true);
  const placed = asBuilt ? points : builtTogether(points, { node, setting });
  return bare(
    clear.value > 0
      ? { form: "line", line: lineOf(placed, false, work) }
      : { form: "point", at: placed[0] as LivePoint },
  );
}

/** Both ends of a made thing move together: its width is its own, its place is built. */
function builtTogether(
  points: readonly LivePoint[],
  { node, setting }: { readonly node: Node; readonly setting: Setting },
): readonly LivePoint[] {
  return points.map((point) => setting.measuring.built(point, `the place of ${setting.whose}`, node.place));
}

/** A line through points as they are written. */
export function lineThrough(written: Node, work: ShapeWork): LiveShape | null {
  const points = readPoints(written, work.settingOf(written), { least: 2, word: "point" });
  return points === null ? null : bare({ form: "line", line: lineOf(points, false, work) });
}
