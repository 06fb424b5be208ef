// Reads how one station was measured: what it hangs on, what was observed, and where the adjustment may start.

import type { Place } from "../model/path.ts";
import type { Point } from "../model/reading.ts";
import { child, entries, isMapping, items, textOf, type Node } from "./node.ts";
import { readNumber, readNumberText, type Written } from "./numbers.ts";
import { placeByBearing, placeByOffset, placeByTies, type StartFault } from "./station-start.ts";
import * as observe from "./station-observed.ts";
import type { Observed, StationWork } from "./station-observed.ts";
import { exact, scaled, type Uncertain } from "./sway.ts";
import { wordsOf } from "./troubles.ts";

/** A station as written: ready to be placed once what it hangs on has a place. */
export interface StationPlan {
  readonly name: string;
  readonly place: Place;
  readonly node: Node;
  readonly needs: readonly string[];
  readonly observed: readonly Observed[];
  readonly start: (at: (station: string) => Point) => Point | StartFault;
  /** The stations whose tapes fix it, for the angle at which they cut. */
  readonly tiedTo?: readonly string[];
}

/** What is known of the whole survey while one station is read. */
export interface StationReading extends StationWork {
  /** The station that the plan's grid hangs on, and the one whose line is east. */
  readonly datum: string | null;
  readonly firstLine: string | null;
  readonly lineOf: (text: string, node: Node) => readonly [string, string] | null;
  readonly station: (name: string, node: Node) => string | null;
  /** Turn from what a bearing is read against to the plan's north, radians; null (and a problem) where it is not known. */
  readonly turnFrom: (north: "grid" | "magnetic" | "true", node: Node) => number | null;
}

type Reader = (name: string, node: Node, reading: StationReading) => StationPlan | null;

const readers: readonly (readonly [key: string, read: Reader])[] = [
  ["square_off", readSquare],
  ["at", readAt],
  ["line_to", readFirstLine],
  ["run", readAlong],
  ["bearing", readBearing],
  ["ties", readTies],
];

/** Reads one station; a problem and null where it cannot be read. Further ties of it are checks. */
export function readStation(name: string, node: Node, reading: StationReading): StationPlan | null {
  const fits = readers.find(([key]) => child(node, key) !== null);
  if (fits === undefined) {
    return reading.troubles.report(node, {
      code: "missing-key",
      expected: "how the peg was measured: at, line_to, ties, along, square_off, or from with a bearing",
      got: wordsOf(node.data),
      hint: "two tapes will do: ties: {P1: 31.20, P2: 28.86}, side: left of P1 to P2",
    });
  }
  const [key, read] = fits;
  const plan = read(name, node, reading);
  if (plan === null || key === "ties" || child(node, "ties") === null) return plan;
  const ties = readTieList(name, node, reading);
  return ties === null ? plan : { ...plan, observed: [...plan.observed, ...ties.flatMap((tie) => tie.observed)] };
}

function readAt(name: string, node: Node, reading: StationReading): StationPlan | null {
  const pair = child(node, "at");
  const [first, second, ...more] = items(pair);
  if (pair === null || first === undefined || second === undefined || more.length > 0) {
    const got = wordsOf(pair?.data);
    const hint = more.length === 2 ? "write points, not commas, inside numbers" : "write at: [0, 0]";
    const code = more.length === 2 ? "decimal-comma" : "wrong-type";
    return reading.troubles.report(pair ?? node, { code, expected: "a pair: east and north in metres", got, hint });
  }
  const east = readNumber(first, "length", reading.troubles);
  const north = readNumber(second, "length", reading.troubles);
  if (east === null || north === null) return null;
  const exactly = name === reading.datum;
  const observed = [
    observe.coordinateObserved(reading, east, { station: name, axis: "east", exactly }),
    observe.coordinateObserved(reading, north, { station: name, axis: "north", exactly }),
  ];
  return { name, node, place: node.place, needs: [], observed, start: () => [east.value, north.value] };
}

function readFirstLine(name: string, node: Node, reading: StationReading): StationPlan | null {
  const to = child(node, "line_to");
  const other = to === null ? null : reading.station(textOf(to) ?? "", to);
  if (other === null) return null;
  if (name !== reading.firstLine) {
    return reading.troubles.report(to as Node, {
      code: "contradiction",
      expected: "one line_to in the plan: the first line, which is east",
      got: `a second one at ${name}`,
      hint: "measure this peg with ties, along a line, or with a bearing",
    });
  }
  const tapes = tapesOf(name, node, { key: "tape", reading });
  const [first] = tapes;
  if (first === undefined) return null;
  const observed = [
    observe.firstLineObserved((to as Node).place, [other, name]),
    ...tapes.map((written) => observe.tapeObserved(reading, written, [other, name])),
  ];
  const start = (at: (station: string) => Point): Point => [at(other)[0] + first.value, at(other)[1]];
  return { name, node, place: node.place, needs: [other], observed, start };
}

/** The lengths under a key that the form cannot do without. */
function tapesOf(
  name: string,
  node: Node,
  { key, reading }: { readonly key: string; readonly reading: StationReading },
): readonly Written[] {
  const written = observe.lengthsOf(child(node, key), node, reading.troubles);
  if (child(node, key) === null) {
    reading.troubles.report(node, {
      code: "missing-key",
      expected: `${key}: a length in metres`,
      got: wordsOf(node.data),
      hint: `write the ${key} of peg ${name}`,
    });
  }
  const bad = written.find((one) => key === "tape" && !(one.value > 0));
  if (bad !== undefined) {
    reading.troubles.report(bad.node, {
      code: "out-of-range",
      expected: "a length above 0",
      got: String(bad.value),
      hint: "measure it again",
    });
    return [];
  }
  return written;
}

function readAlong(name: string, node: Node, reading: StationReading): StationPlan | null {
  const along = child(node, "along");
  const line = along === null ? null : reading.lineOf(textOf(along) ?? "", along);
  const runs = tapesOf(name, node, { key: "run", reading });
  const side = child(node, "right") !== null ? "right" : "left";
  const offsets = tapesOf(name, node, { key: side, reading });
  const [run] = runs;
  const [offset] = offsets;
  if (line === null || run === undefined || offset === undefined) {
    if (along === null) {
      reading.troubles.report(node, {
        code: "missing-key",
        expected: "along: a line between two pegs",
        got: wordsOf(node.data),
        hint: "write along: P1 to P2",
      });
    }
    return null;
  }
  const sign = side === "left" ? 1 : -1;
  const observed = [
    ...runs.map((written) => observe.offsetObserved(reading, written, { kind: "run", of: name, line })),
    ...offsets.map((written) => observe.offsetObserved(reading, written, { kind: "offset", of: name, line, sign })),
  ];
  const start = (at: (station: string) => Point): Point | StartFault =>
    placeByOffset([at(line[0]), at(line[1])], run.value, sign * offset.value);
  return { name, node, place: node.place, needs: line, observed, start };
}

function readSquare(name: string, node: Node, reading: StationReading): StationPlan | null {
  const off = child(node, "square_off") as Node;
  const line = reading.lineOf(textOf(off) ?? "", off);
  const [out, ...further] = tapesOf(name, node, { key: "out", reading });
  const side = /^(left|right)\b/.exec(textOf(child(node, "side")) ?? "")?.[1];
  if (side === undefined) {
    reading.troubles.report(node, {
      code: "missing-key",
      expected: "side: left or right",
      got: wordsOf(node.data),
      hint: `say on which side of ${textOf(off) ?? "the line"} ${name} lies`,
    });
  }
  const foot = line === null ? null : readFoot(node, line, reading);
  if (line === null || out === undefined || side === undefined || foot === null) return null;
  const sign = side === "left" ? 1 : -1;
  const [from, to] = foot.line;
  const turned = from === line[0] ? sign : -sign;
  const offsets = [out, ...further].map((written) =>
    observe.offsetObserved(reading, written, { kind: "offset", of: name, line: foot.line, sign: turned }),
  );
  const observed = [observe.squareObserved(reading, out, { of: name, line: foot.line, run: foot.run }), ...offsets];
  const start = (at: (station: string) => Point): Point | StartFault =>
    placeByOffset([at(from), at(to)], foot.run.value, turned * out.value);
  return { name, node, place: node.place, needs: line, observed, start };
}

interface Foot {
  /** The line from the peg at which the square was set out. */
  readonly line: readonly [string, string];
  readonly run: Uncertain;
}

/** Where on the line the right angle stands: at one of its pegs, or some metres along it. */
function readFoot(node: Node, line: readonly [string, string], reading: StationReading): Foot | null {
  const at = child(node, "at") ?? child(node, "run");
  const name = textOf(at);
  if (at !== null && name === line[0]) return { line, run: exact(0) };
  if (at !== null && name === line[1]) return { line: [line[1], line[0]], run: exact(0) };
  if (at !== null && (typeof at.data === "number" || /^[-+\d.]/.test(name ?? ""))) {
    const run = readNumber(at, "length", reading.troubles);
    return run === null
      ? null
      : { line, run: reading.measuring.taped(run, `the run of the right angle on ${line.join(" to ")}`) };
  }
  return reading.troubles.report(at ?? node, {
    code: "unknown-name",
    expected: `at: ${line[0]} or ${line[1]}, or a distance along that line`,
    got: wordsOf(at?.data),
    hint: "name the peg at which the square was set out",
  });
}

function readBearing(name: string, node: Node, reading: StationReading): StationPlan | null {
  const fromNode = child(node, "from");
  const bearing = child(node, "bearing") as Node;
  const tapes = tapesOf(name, node, { key: "tape", reading });
  if (fromNode === null) {
    return reading.troubles.report(node, {
      code: "missing-key",
      expected: "from: the peg that the bearing was taken from",
      got: wordsOf(node.data),
      hint: "write from: P3",
    });
  }
  const from = reading.station(textOf(fromNode) ?? "", fromNode);
  const azimuth = readAzimuth(bearing, reading);
  const [tape] = tapes;
  if (from === null || azimuth === null || tape === undefined) return null;
  const observed = [
    observe.bearingObserved(reading, azimuth, [from, name]),
    ...tapes.map((written) => observe.tapeObserved(reading, written, [from, name], toMiddle(node, name, reading))),
  ];
  const start = (at: (station: string) => Point): Point => placeByBearing(at(from), azimuth.value, tape.value);
  return { name, node, place: node.place, needs: [from], observed, start };
}

/** `318 deg magnetic` as an azimuth from the plan's north. */
function readAzimuth(node: Node, reading: StationReading): Written | null {
  const match = /^(.*?)\s*\b(grid|magnetic|true)$/.exec(textOf(node) ?? "");
  const north = match?.[2] as "grid" | "magnetic" | "true" | undefined;
  if (north === undefined) {
    return reading.troubles.report(node, {
      code: "unknown-word",
      expected: "a bearing that says which north: 318 deg magnetic",
      got: wordsOf(node.data),
      hint: "add grid, magnetic or true",
    });
  }
  const turn = reading.turnFrom(north, node);
  const written = readNumberText(node, match?.[1], { dimension: "angle", troubles: reading.troubles });
  return turn === null || written === null ? null : { ...written, value: written.value + turn };
}

interface TieRead {
  readonly to: string;
  readonly length: number;
  readonly observed: readonly Observed[];
}

function readTieList(name: string, node: Node, reading: StationReading): readonly TieRead[] | null {
  const ties = child(node, "ties");
  const read = entries(ties).map(([to, tape]): TieRead | null => {
    const other = reading.station(to, tape);
    const written = observe.lengthsOf(tape, node, reading.troubles);
    const [first] = written;
    if (other === null || first === undefined) return null;
    const more = toMiddle(node, name, reading);
    const observed = written.map((one) => observe.tapeObserved(reading, one, [other, name], more));
    return { to: other, length: first.value + (more?.value ?? 0), observed };
  });
  const good = read.filter((tie) => tie !== null);
  return good.length === read.length ? good : null;
}

/** What is added to a tape that ends at a face: the radius of what stands there; null where nothing is. */
function toMiddle(node: Node, name: string, reading: StationReading): Uncertain | null {
  const to = textOf(child(node, "to"));
  if (to !== "near face" && to !== "far face") return null;
  const radius = reading.roundRadius(name);
  if (radius !== null) return to === "near face" ? radius : scaled(radius, -1);
  reading.customs.assume(
    `what stands at ${name} has no girth or width in the plan: tapes to its ${to} were taken as tapes to its middle`,
  );
  return null;
}

function readTies(name: string, node: Node, reading: StationReading): StationPlan | null {
  const ties = readTieList(name, node, reading);
  if (ties === null) return null;
  const list = child(node, "ties") as Node;
  if (!isMapping(list.data) || ties.length < 2) {
    return reading.troubles.report(list, {
      code: "bad-geometry",
      expected: "two ties or more",
      got: wordsOf(list.data),
      hint: "tape the peg from a second known point",
    });
  }
  const sideNode = child(node, "side");
  const match = /^(left|right) of (.+)$/.exec(textOf(sideNode) ?? "");
  const line = match === null || sideNode === null ? null : reading.lineOf(match[2] as string, sideNode);
  if (sideNode !== null && match !== null && line === null) return null;
  const start = (at: (station: string) => Point): Point | StartFault =>
    placeByTies(
      ties.map((tie) => ({ to: tie.to, from: at(tie.to), length: tie.length })),
      line === null ? null : { side: match?.[1] === "right" ? "right" : "left", line: [at(line[0]), at(line[1])] },
    );
  const needs = [...ties.map((tie) => tie.to), ...(line ?? [])];
  const observed = ties.flatMap((tie) => tie.observed);
  return { name, node, place: node.place, needs, observed, start, tiedTo: ties.map((tie) => tie.to) };
}
