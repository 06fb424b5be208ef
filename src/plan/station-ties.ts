// Reads a station that was tied in with tapes from two or more pegs.

import type { Point } from "../model/reading.ts";
import { child, entries, isMapping, textOf, type Node } from "./node.ts";
import { lengthsOf, tapeObserved, type Observed } from "./station-observed.ts";
import type { StationPlan, StationReading } from "./station-plan.ts";
import { placeByTies, type StartFault } from "./station-start.ts";
import { scaled, type Uncertain } from "./sway.ts";
import { wordsOf } from "./troubles.ts";

/** One tie with its tapes. */
interface TieRead {
  readonly to: string;
  readonly length: number;
  readonly observed: readonly Observed[];
}

/** All ties of a station; null where one of them cannot be read. */
export function readTieList(name: string, node: Node, reading: StationReading): readonly TieRead[] | null {
  const ties = child(node, "ties");
  const read = entries(ties).map(([to, tape]): TieRead | null => {
    const other = reading.station(to, tape);
    const written = lengthsOf(tape, node, reading.troubles);
    const [first] = written;
    if (other === null || first === undefined) return null;
    const more = toMiddle(node, name, reading);
    const observed = written.map((one) => tapeObserved(reading, one, [other, name], more));
    return { to: other, length: first.value + (more?.value ?? 0), observed };
  });
  const good = read.filter((tie) => tie !== null);
  return good.length === read.length ? good : null;
}

/** What is added to a tape that ends at a face: the radius of what stands there; null where nothing is. */
export function toMiddle(node: Node, name: string, reading: StationReading): Uncertain | null {
  const to = textOf(child(node, "to"));
  if (to !== "near face" && to !== "far face") return null;
  const radius = reading.roundRadius(name);
  if (radius !== null) return to === "near face" ? radius : scaled(radius, -1);
  reading.customs.assume(
    `what stands at ${name} has no girth or width in the plan: tapes to its ${to} were taken as tapes to its middle`,
  );
  return null;
}

/** Two ties or more, with the side of a line where two cannot tell. */
export function readTies(name: string, node: Node, reading: StationReading): StationPlan | null {
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
