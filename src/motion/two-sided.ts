// Two floods towards each other: from the start forwards, from the end backwards, always the smaller side next. With
// i changes of direction behind one front and j behind the other, and gears that differ where the fronts meet, a
// way of i + j + 1 changes has been found, and none of fewer exists on the lattice.

import { close } from "./flood.ts";
import { giveBack } from "./heap.ts";
import { register } from "./kernel.ts";
import { motionsOf } from "./lattice.ts";
import { bitsAt, emptySide, seed } from "./side.ts";
import type { Field, Side } from "./side.ts";
import type { Lattice } from "./lattice.ts";
import type { Gear } from "./pose.ts";
import type { Node } from "./trace.ts";

/** One question on a lattice. */
export interface FloodProblem {
  readonly lattice: Lattice;
  /** Room for two sides on the lattice. */
  readonly field: Field;
  readonly radius: number;
  readonly start: Node;
  /** Nodes near enough to the end. */
  readonly ends: readonly Node[];
  readonly firstGear: Gear;
  readonly lastGear: Gear;
}

/** Two fronts; `met` tells how many changes the meeting stands for. */
export interface Fronts {
  readonly problem: FloodProblem;
  readonly start: Front;
  readonly end: Front;
  /** Changes of a way over the present meeting; null where the fronts do not meet yet. */
  met: number | null;
  /** True where neither side can grow any more. */
  exhausted: boolean;
}

interface Front {
  readonly side: Side;
  readonly motions: { readonly forward: ReturnType<typeof motionsOf>; readonly reverse: ReturnType<typeof motionsOf> };
  /** The gear in which the vehicle drives next to this front. */
  gear: Gear;
  changes: number;
  /** Closures in a row that reached nothing new. */
  idle: number;
}

/** Fronts closed under the first and the last gear; they may have met already with 0 or 1 changes. */
export function beginFronts(problem: FloodProblem): Fronts {
  const { lattice, radius, field } = problem;
  const ahead = motionsOf(lattice, radius, 1);
  const back = motionsOf(lattice, radius, -1);
  const start = newFront(emptySide(field, 0), { forward: ahead, reverse: back }, problem.firstGear);
  // Seen from the end everything runs backwards: what leads there by driving forward is found by reversing from it.
  const end = newFront(emptySide(field, 1), { forward: back, reverse: ahead }, problem.lastGear);
  seed(start.side, problem.start.heading, problem.start.bit);
  for (const node of problem.ends) seed(end.side, node.heading, node.bit);
  close(start.side, start.motions[start.gear]);
  const fronts: Fronts = { problem, start, end, met: null, exhausted: false };
  if (problem.firstGear === problem.lastGear) {
    const direct = meet(start.side, end.side);
    if (direct) fronts.met = 0;
  }
  close(end.side, end.motions[end.gear]);
  if (fronts.met === null && problem.firstGear !== problem.lastGear && meet(start.side, end.side)) fronts.met = 1;
  return fronts;
}

function newFront(side: Side, motions: Front["motions"], gear: Gear): Front {
  return { side, motions, gear, changes: 0, idle: 0 };
}

/** Goes on until the fronts meet, or could only meet with more than `most` changes, or nothing grows any more. */
export function growFronts(fronts: Fronts, most: number): void {
  while (fronts.met === null && !fronts.exhausted) {
    if (changesNext(fronts) > most) return;
    extend(fronts);
    if (gearsDiffer(fronts) && meet(fronts.start.side, fronts.end.side)) fronts.met = changesNow(fronts);
  }
}

/** Lets fronts that have met look for a way of more changes, which is roomier. */
export function goOn(fronts: Fronts, most: number): void {
  if (fronts.met === null || fronts.exhausted) return;
  const least = Math.max(2, fronts.met + 2);
  if (least > most) {
    fronts.met = null;
    return;
  }
  fronts.met = null;
  while (!fronts.exhausted && (!gearsDiffer(fronts) || changesNow(fronts) < least)) extend(fronts);
  if (gearsDiffer(fronts) && changesNow(fronts) >= least) fronts.met = changesNow(fronts);
}

function gearsDiffer(fronts: Fronts): boolean {
  return fronts.start.gear !== fronts.end.gear;
}

function changesNow(fronts: Fronts): number {
  return fronts.start.changes + fronts.end.changes + 1;
}

/** Changes of the next meeting to be looked for: where the gears differ now it is the one after the next. */
function changesNext(fronts: Fronts): number {
  return fronts.start.changes + fronts.end.changes + (gearsDiffer(fronts) ? 3 : 2);
}

function extend(fronts: Fronts): void {
  const { start, end } = fronts;
  const front = pick(start, end);
  front.gear = front.gear === "forward" ? "reverse" : "forward";
  front.changes += 1;
  const grown = close(front.side, front.motions[front.gear]);
  front.idle = grown === 0 ? front.idle + 1 : 0;
  if (start.idle >= 2 || end.idle >= 2) fronts.exhausted = true;
}

/** The smaller side: what has gained less has cost less so far. */
function pick(start: Front, end: Front): Front {
  return start.side.gained <= end.side.gained ? start : end;
}

/** Whether two sides have a pose in common. */
function meet(a: Side, b: Side): boolean {
  const { words, kernel } = a.field.heap;
  for (let heading = 0; heading < a.lattice.headings; heading++) {
    const from = Math.max(a.low[heading]!, b.low[heading]!);
    const to = Math.min(a.high[heading]!, b.high[heading]!);
    if (from > to) continue;
    words[register.source] = bitsAt(a, heading) + from;
    words[register.target] = bitsAt(b, heading) + from;
    words[register.last] = bitsAt(a, heading) + to;
    kernel.meet();
    if (words[register.met] === 1) return true;
  }
  return false;
}

/** Gives back the memory of fronts, which must not be used any more. */
export function release(fronts: Fronts): void {
  giveBack(fronts.problem.field.heap);
}
