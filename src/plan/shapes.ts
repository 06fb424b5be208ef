// Reads the form of a feature on the ground from whichever way it is written.

import type { LiveShape } from "./live-shape.ts";
import { lengthOf, lineBeside, pointAlong, turnedRound, type LiveLine } from "./lines.ts";
import { child, items, textOf, type Node } from "./node.ts";
import type { LivePoint } from "./number-book.ts";
import { readNumber } from "./numbers.ts";
import { readPoint, readPoints, type Setting } from "./points.ts";
import { exact, scaled, sum, type Uncertain } from "./sway.ts";
import { wordsOf } from "./troubles.ts";

/** How the shape of a feature is read. `size` gives a length of the feature its doubt. */
export interface ShapeWork {
  readonly setting: Setting;
  readonly size: (node: Node, path: string) => Uncertain | null;
  /** The setting for points that a change or an option has written. */
  readonly settingOf: (node: Node) => Setting;
}

type ShapeReader = (node: Node, written: Node, work: ShapeWork) => LiveShape | null;

const readers: readonly (readonly [key: string, read: ShapeReader])[] = [
  ["outline", readOutline],
  ["circle", readCircle],
  ["centre_line", readLine],
  ["line", readLine],
  ["offsets", readLine],
  ["edge_line", readLine],
  ["crest", readBank],
  ["beside", readBeside],
  ["between", readBetween],
  ["on_wall", readOnLine],
  ["on", readOn],
  ["at", readAt],
];

/** Keys that say where a feature lies; they are no properties. */
export const shapeKeys: ReadonlySet<string> = new Set([
  "at",
  "outline",
  "holes",
  "circle",
  "centre_line",
  "line",
  "offsets",
  "edge_line",
  "crest",
  "toe",
  "along",
  "beside",
]);

/** The shape of a feature, or null where it has none or where it cannot be read. */
export function readShape(node: Node, work: ShapeWork): LiveShape | null {
  for (const [key, read] of readers) {
    const written = child(node, key);
    if (written !== null) {
      const shape = read(node, written, work);
      if (shape !== null || key !== "on") return shape;
    }
  }
  return null;
}

const bare = (main: LiveShape["main"]): LiveShape => ({ main, lines: {} });
const lineOf = (points: readonly LivePoint[], closed: boolean, work: ShapeWork): LiveLine => ({
  points,
  closed,
  name: work.setting.whose,
});

function readAt(_: Node, written: Node, work: ShapeWork): LiveShape | null {
  const at = readPoint(written, work.settingOf(written), "the place");
  return at === null ? null : bare({ form: "point", at });
}

function readOutline(node: Node, written: Node, work: ShapeWork): LiveShape | null {
  const points = readPoints(written, work.settingOf(written), { least: 3, word: "corner" });
  if (points === null) return null;
  const holes = items(child(node, "holes")).flatMap((hole, i) => {
    const corners = readPoints(hole, work.settingOf(hole), { least: 3, word: `hole ${i + 1} corner` });
    return corners === null ? [] : [lineOf(corners, true, work)];
  });
  return bare({ form: "outline", outline: lineOf(points, true, work), holes });
}

function readLine(_: Node, written: Node, work: ShapeWork): LiveShape | null {
  const points = readPoints(written, work.settingOf(written), { least: 2, word: "point" });
  return points === null ? null : bare({ form: "line", line: lineOf(points, false, work) });
}

function readCircle(_: Node, written: Node, work: ShapeWork): LiveShape | null {
  const acrossNode = child(written, "across");
  const across = acrossNode === null ? null : work.size(acrossNode, "circle.across");
  const centre = readPoint(written, work.settingOf(written), "the middle");
  if (across === null || acrossNode === null || centre === null) return null;
  return bare({ form: "circle", centre, across, place: acrossNode.place });
}

/** A bank lies between its crest and its toe. */
function readBank(node: Node, written: Node, work: ShapeWork): LiveShape | null {
  const toeNode = child(node, "toe");
  const crest = readPoints(written, work.settingOf(written), { least: 2, word: "crest point" });
  const toe = toeNode === null ? null : readPoints(toeNode, work.settingOf(toeNode), { least: 2, word: "toe point" });
  if (crest === null) return null;
  const line = lineOf(crest, false, work);
  if (toe === null) return { main: { form: "line", line }, lines: { crest } };
  return { main: ring(line, lineOf(toe, false, work), work), lines: { crest, toe } };
}

/** The outline between two lines: along the first, back along the second, whichever way round crosses over least. */
function ring(a: LiveLine, b: LiveLine, work: ShapeWork): LiveShape["main"] {
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

function readBeside(node: Node, written: Node, work: ShapeWork): LiveShape | null {
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
function readBetween(_: Node, written: Node, work: ShapeWork): LiveShape | null {
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
  if (a === undefined || b === undefined) return readLine(written, written, work);
  if (a === null || b === null) return null;
  return { main: ring(a, b, work), lines: { side_1: a.points, side_2: b.points } };
}

/** A fence on a wall takes the wall's line. */
function readOnLine(_: Node, written: Node, work: ShapeWork): LiveShape | null {
  const name = textOf(written);
  const line = name === null ? null : work.setting.lineByName(name, written);
  return line === null ? null : bare({ form: "line", line });
}

/** A gate on a fence: from `along` metres, as wide as it is clear. */
function readOn(node: Node, written: Node, work: ShapeWork): LiveShape | null {
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
