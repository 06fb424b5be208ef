// Reads a station that was set out square off a line.

import type { Point } from "../model/reading.ts";
import { child, isAbsent, textOf, type Node } from "./node.ts";
import { readNumber } from "./numbers.ts";
import { offsetObserved, squareObserved } from "./station-observed.ts";
import { tapesOf, type StationPlan, type StationReading } from "./station-plan.ts";
import { placeByOffset, type StartFault } from "./station-start.ts";
import { exact, type Uncertain } from "./sway.ts";
import { wordsOf } from "./troubles.ts";

/** A right angle at a peg of the line, or some metres along it, and the distance out. */
export function readSquare(name: string, node: Node, reading: StationReading): StationPlan | null {
  const off = child(node, "square_off") as Node;
  const line = reading.lineOf(textOf(off) ?? "", off);
  const [out, ...further] = tapesOf(name, node, { key: "out", reading });
  const side = /^(left|right)\b/.exec(textOf(child(node, "side")) ?? "")?.[1];
  if (side === undefined && (isAbsent(node, "side") || child(node, "side") !== null)) {
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
    offsetObserved(reading, written, { kind: "offset", of: name, line: foot.line, sign: turned }),
  );
  const observed = [squareObserved(reading, out, { of: name, line: foot.line, run: foot.run }), ...offsets];
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
