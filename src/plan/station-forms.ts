// Reads how one station was measured: what it hangs on, what was observed, and where the adjustment may start.

import type { Point } from "../model/reading.ts";
import { checkCoordinate } from "./plausible.ts";
import { child, isAbsent, items, lacksEntries, textOf, type Node } from "./node.ts";
import { readNumber, readNumberText, type Written } from "./numbers.ts";
import * as observe from "./station-observed.ts";
import { tapesOf, type StationPlan, type StationReading } from "./station-plan.ts";
import { readSquare } from "./station-square.ts";
import { placeByBearing, placeByOffset, type StartFault } from "./station-start.ts";
import { readTieList, readTies, toMiddle } from "./station-ties.ts";
import { wordsOf } from "./troubles.ts";

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
  if (lacksEntries(pair)) return null;
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
  if (!checkCoordinate(east, reading.troubles) || !checkCoordinate(north, reading.troubles)) return null;
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

function readAlong(name: string, node: Node, reading: StationReading): StationPlan | null {
  const along = child(node, "along");
  const line = along === null ? null : reading.lineOf(textOf(along) ?? "", along);
  const runs = tapesOf(name, node, { key: "run", reading });
  const side = child(node, "right") !== null ? "right" : "left";
  const offsets = tapesOf(name, node, { key: side, reading });
  const [run] = runs;
  const [offset] = offsets;
  if (line === null || run === undefined || offset === undefined) {
    if (isAbsent(node, "along")) {
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

function readBearing(name: string, node: Node, reading: StationReading): StationPlan | null {
  const fromNode = child(node, "from");
  const bearing = child(node, "bearing") as Node;
  const tapes = tapesOf(name, node, { key: "tape", reading });
  if (fromNode === null && !isAbsent(node, "from")) return null;
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
