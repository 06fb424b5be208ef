// A corner with the ties that put it in, and the checks on it: what the lines of the setting-out sheet are made of.

import type { Plan } from "../model/plan.ts";
import type { Point } from "../model/reading.ts";
import type { Corner, CornerCheck } from "./corners.ts";
import type { Dig } from "./dig-at.ts";
import type { Mark, Moves, TwoTies } from "./two-ties.ts";

export interface SetOutWork {
  readonly marks: readonly Mark[];
  readonly plan: Plan;
  /** The plan's first line, where both its pegs stand. */
  readonly base: readonly [Mark, Mark] | null;
}

export interface Pegged {
  /** Its place among the corners of its feature, from 0. */
  readonly index: number;
  readonly corner: Corner;
  readonly ties: TwoTies | null;
  readonly at: Point;
  readonly moves: Moves;
  /** How far the printed lengths put it off, metres. */
  readonly aside: Point;
  readonly dig: Dig | null;
}

/** A tape between two pegs: its length, and by how much it may be out before it is suspicious, metres. */
export interface Check {
  readonly from: string;
  readonly to: string;
  readonly is: CornerCheck["is"];
  readonly length: number;
  readonly most: number;
}
