// Reads a point as the plan writes it: a peg or corner by name, a coordinate pair, or run and offset from a line.

import type { LiveLine } from "./lines.ts";
import { pointAlong } from "./lines.ts";
import type { Measuring } from "./measuring.ts";
import { child, isAbsent, isMapping, items, lacksEntries, textOf, type Node } from "./node.ts";
import type { LivePoint } from "./number-book.ts";
import { readNumber, type Written } from "./numbers.ts";
import { checkCoordinate } from "./plausible.ts";
import { exact, scaled, type Uncertain } from "./sway.ts";
import { wordsOf, type Troubles } from "./troubles.ts";

/** How the points of one feature are to be understood. */
export interface Setting {
  /** What stands is as it was measured; what is to be built is where the plan says, give or take the building. */
  readonly existing: boolean;
  /** The line that `run`, `left` and `right` are measured from; null where there is none. */
  readonly along: () => LiveLine | null;
  /** Whether that line is named, so that a fault told at its pegs is why there is none. */
  readonly isAlongNamed?: boolean;
  readonly byName: (name: string, node: Node) => LivePoint | null;
  readonly lineByName: (name: string, node: Node) => LiveLine | null;
  /** Whether a name is that of a line or outline, not of a point. */
  readonly isLine: (name: string) => boolean;
  /** Whose point: `surface "track"`. */
  readonly whose: string;
  readonly measuring: Measuring;
  readonly troubles: Troubles;
}

const pointForms = "a point: a peg by name, a pair such as [33, 14], or {run: 12, right: 9}";

/** Reads one point. `which` is its word within the feature: `corner 2`. */
export function readPoint(node: Node | null, setting: Setting, which: string): LivePoint | null {
  if (node === null) return null;
  const text = textOf(node);
  if (text !== null) return readNamed(node, text, setting, which);
  if (Array.isArray(node.data)) return readPair(node, setting, which);
  if (isMapping(node.data)) return readPlace(node, setting, which);
  return setting.troubles.report(node, {
    code: "wrong-type",
    expected: pointForms,
    got: wordsOf(node.data),
    hint: "write one of these",
  });
}

function readNamed(node: Node, name: string, setting: Setting, which: string): LivePoint | null {
  const point = setting.byName(name, node);
  if (point === null || setting.existing || point.built === true) return point;
  const built = setting.measuring.built(point, `${which} of ${setting.whose}`, node.place);
  return { ...built, name: point.name ?? name };
}

function readPair(node: Node, setting: Setting, which: string): LivePoint | null {
  const { troubles, measuring } = setting;
  if (lacksEntries(node)) return null;
  const parts = items(node);
  if ((node.data as readonly unknown[]).length === 4) return reportFour(node, troubles);
  const [first, second] = parts;
  if (parts.length !== 2 || first === undefined || second === undefined) {
    const got = wordsOf(node.data);
    return troubles.report(node, {
      code: "wrong-type",
      expected: "a pair: east and north in metres",
      got,
      hint: "write two numbers",
    });
  }
  const east = readNumber(first, "length", troubles);
  const north = readNumber(second, "length", troubles);
  if (east === null || north === null) return null;
  if (!checkCoordinate(east, troubles) || !checkCoordinate(north, troubles)) return null;
  const words = `the position of ${which} of ${setting.whose}`;
  if (setting.existing) {
    return {
      east: measuring.coordinate(east, words, "east"),
      north: measuring.coordinate(north, words, "north"),
      place: node.place,
    };
  }
  const at = { east: planned(east, words, measuring), north: planned(north, words, measuring), place: node.place };
  return toBuild(at, [east, north], { setting, which });
}

function reportFour(node: Node, troubles: Troubles): null {
  const [a, b, c, d] = node.data as readonly unknown[];
  return troubles.report(node, {
    code: "decimal-comma",
    expected: "a pair: east and north in metres",
    got: "four numbers",
    hint: `write points, not commas, inside numbers: [${String(a)}.${String(b)}, ${String(c)}.${String(d)}]`,
  });
}

/** What is to be built stands exactly where the plan says, unless the plan gives a ±. */
function planned(written: Written, words: string, measuring: Measuring): Uncertain {
  return written.plusMinus === null ? exact(written.value) : measuring.stated(written, words, "length", "build");
}

function toBuild(
  at: LivePoint,
  written: readonly Written[],
  { setting, which }: { readonly setting: Setting; readonly which: string },
): LivePoint {
  if (written.some((one) => one.plusMinus !== null)) return { ...at, built: true };
  return setting.measuring.built(at, `${which} of ${setting.whose}`, at.place);
}

/** `{along, run, left | right}` or `{at, level}`. */
function readPlace(node: Node, setting: Setting, which: string): LivePoint | null {
  const inner = child(node, "at");
  const point = inner === null ? readRun(node, setting, which) : readPoint(inner, setting, which);
  const level = readNumber(child(node, "level"), "length", setting.troubles);
  if (point === null || level === null) return point;
  const how = { sort: "level", dimension: "length", existing: setting.existing } as const;
  return { ...point, level: setting.measuring.size(level, `the level of ${which} of ${setting.whose}`, how) };
}

function readRun(node: Node, setting: Setting, which: string): LivePoint | null {
  const { troubles } = setting;
  const named = child(node, "along");
  const name = textOf(named);
  const line = named !== null && name !== null ? setting.lineByName(name, named) : setting.along();
  const offsets = readRunAndLeft(node, setting, which);
  if (offsets === null) return null;
  if (line === null) {
    if (named !== null || setting.isAlongNamed) return null;
    return troubles.report(node, {
      code: "missing-key",
      expected: "a line that run and offset are measured from",
      got: wordsOf(node.data),
      hint: "write along: P1 to P2 into this feature",
    });
  }
  const point = pointAlong(line, offsets, node.place);
  if (point === null) return null;
  return setting.existing ? point : toBuild(point, offsets.written, { setting, which });
}

interface RunAndLeft {
  readonly run: Uncertain;
  readonly left: Uncertain;
  readonly written: readonly Written[];
}

/** Reads `run` with `left` or `right`; taped where the thing stands, as written where it is to be built. */
function readRunAndLeft(node: Node, setting: Setting, which: string): RunAndLeft | null {
  const { troubles, measuring } = setting;
  const side = child(node, "left") ?? child(node, "right");
  const run = readNumber(child(node, "run"), "length", troubles);
  const off = readNumber(side, "length", troubles);
  if (child(node, "left") !== null && child(node, "right") !== null) {
    const got = "left and right together";
    return troubles.report(node, {
      code: "contradiction",
      expected: "left or right",
      got,
      hint: "keep one of the two",
    });
  }
  if (run === null || off === null) return reportHalfPlace(node, setting);
  const take = (written: Written, words: string): Uncertain =>
    setting.existing ? measuring.taped(written, words) : planned(written, words, measuring);
  const whose = `${which} of ${setting.whose}`;
  const runTaped = take(run, `the run of ${whose}`);
  const offset = take(off, `the offset of ${whose}`);
  const left = side?.place.path.at(-1) === "right" ? scaled(offset, -1) : offset;
  return { run: runTaped, left, written: [run, off] };
}

function reportHalfPlace(node: Node, { troubles }: Setting): null {
  if (!isAbsent(node, "run") && !(isAbsent(node, "left") && isAbsent(node, "right"))) return null;
  const hint = "a point needs run, and left or right: {run: 12, right: 9}";
  return troubles.report(node, { code: "missing-key", expected: pointForms, got: wordsOf(node.data), hint });
}

/** Reads a list of points; what cannot be read is left out, and null is given where fewer than `least` remain. */
export function readPoints(
  node: Node | null,
  setting: Setting,
  { least, word }: { readonly least: number; readonly word: string },
): readonly LivePoint[] | null {
  if (node === null) return null;
  const list = items(node);
  if (!Array.isArray(node.data) || list.length < least) {
    const expected = `${least === 3 ? "three" : "two"} points or more`;
    const got = wordsOf(node.data);
    return setting.troubles.report(node, {
      code: "bad-geometry",
      expected,
      got,
      hint: `write the ${word}s in the order you walk past them`,
    });
  }
  const points = list.map((item, i) => readPoint(item, setting, `${word} ${i + 1}`));
  const read = points.filter((point) => point !== null);
  return read.length === points.length ? read : null;
}
