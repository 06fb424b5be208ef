// Verdicts, findings, needs, and the report that gathers them. The printers see only this page of words.

import type { Grade, Seen, Stakes, Standing } from "./card.ts";
import type { Dimension } from "./quantity.ts";
import type { Problem } from "./problem.ts";
import type { Witness } from "./reading.ts";

export type Verdict = "met" | "no-fault-seen" | "not-met" | "undecided" | "not-given" | "departure" | "does-not-bear";

/** Fixed order, worst first: the one table by which readings are folded and findings are sorted. */
export const verdictOrder: readonly Verdict[] = [
  "not-met",
  "undecided",
  "not-given",
  "departure",
  "no-fault-seen",
  "met",
  "does-not-bear",
];

export type NotGiven = "missing" | "unsaid" | "no-limit-here" | "gave-up";

export interface FoundValue {
  readonly value: number;
  readonly unit: string;
  /** Standard uncertainty, same unit. */
  readonly doubt: number;
  /** How the value is known: `computed`, `searched`, `at least`, `at most`. */
  readonly method: string;
}

export interface Wanted {
  readonly sense: "at_least" | "at_most" | "between";
  readonly value: number | readonly [number, number];
  readonly unit: string;
  readonly limit: string;
  readonly where: string;
  readonly fell_back: boolean;
  readonly standing: Standing;
  readonly source: { readonly id: string; readonly title: string; readonly clause: string; readonly seen: Seen } | null;
}

/** What would put it right: words, what is short now, and what makes it sure. Metres or the reading's unit. */
export interface RemedyFound {
  readonly words: string;
  readonly short: number | null;
  readonly sure: number | null;
  readonly unit: string;
  /** Rules that would fail after this change. */
  readonly would_then_fail: readonly string[];
  /** What shows it on a drawing: the ground that is newly taken, the path that is then driven. */
  readonly witness?: readonly Witness[];
  /** Name of the thing that the witness draws anew in another place. */
  readonly redrawn?: string;
}

export interface DoubtShare {
  readonly path: string;
  readonly words: string;
  readonly share: number;
  /** Standard uncertainty that this one measurement would need for a decision; null where none is good enough. */
  readonly needed: number | null;
}

export interface PlaceInFile {
  readonly file: string;
  readonly path: string;
  readonly line: number;
  readonly column: number;
}

export interface Finding {
  readonly rule: string;
  readonly verdict: Verdict;
  readonly reason?: NotGiven;
  readonly beneath?: {
    readonly verdict: Verdict;
    readonly agreed_by: string;
    readonly because: string;
    readonly review: string;
    readonly expired: boolean;
  };
  readonly grade: Grade;
  readonly stakes: Stakes;
  readonly stage: string;
  readonly stages: readonly string[];
  readonly option: string | null;
  readonly features: readonly { readonly kind: string; readonly name: string; readonly role: string }[];
  readonly found: FoundValue | null;
  readonly wanted: Wanted | null;
  /** Probability that the requirement is met, given the doubt of the measurement (never of the ground). */
  readonly probability: number | null;
  readonly sentence: string;
  readonly remedies: readonly RemedyFound[];
  readonly cautions: readonly string[];
  readonly defers_to: string | null;
  readonly doubts: readonly DoubtShare[];
  readonly at: readonly PlaceInFile[];
  readonly witness: readonly Witness[];
  readonly others: readonly {
    readonly features: readonly string[];
    readonly value: number;
    readonly verdict: Verdict;
  }[];
  readonly fingerprint: string;
  /** Short name of the reading for the mark line (`rise asked for`). */
  readonly reading: string;
  /** Dimension of the reading and the unit it is printed in (see `units.ts`). */
  readonly dimension: Dimension;
  readonly shown_in: string;
  /** True where the one-sided changes of the reading differ by more than a fifth, so that the larger was taken. */
  readonly kinked: boolean;
  /** Which part of the doubt decides: what was surveyed, what is still to be built, our own search, or the figure itself. */
  readonly decided_by: "survey" | "build" | "method" | "limit" | null;
}

/** What stands behind an undecided finding, for those who go out to decide it. Base units of the reading. */
export interface Deciding {
  readonly fingerprint: string;
  /** How far the reading lies inside what is wanted; below 0 outside. */
  readonly gap: number;
  /** Standard uncertainty of that, and the one that would decide it: gap / 3.09 where it is inside on safety, else gap / 1.645. */
  readonly u: number;
  readonly wantedU: number;
  /** Contribution of each cause at one standard uncertainty, signed. */
  readonly contributions: ReadonlyMap<number, number>;
}

export interface Need {
  readonly path: string;
  readonly asks: string;
  readonly unit: string;
  readonly waits: readonly string[];
  readonly stakes: Stakes;
  readonly reason: NotGiven;
  readonly at: PlaceInFile | null;
}

export interface PlanHead {
  readonly file: string;
  readonly title: string;
  readonly stages: readonly string[];
  readonly stage: string | null;
  readonly features: number;
  /** Where each vehicle goes at each stage, a heading a stage and a line a vehicle; for people, not in the forms that programs read. */
  readonly goes?: readonly string[];
}

export interface Report {
  readonly sightrail: 1;
  readonly as_of: string;
  readonly place: readonly string[];
  readonly plans: readonly PlanHead[];
  readonly options: readonly string[];
  readonly counts: Readonly<Record<Verdict, number>>;
  readonly rules: readonly {
    readonly rule: string;
    readonly title: string;
    readonly counts: Readonly<Record<Verdict, number>>;
  }[];
  readonly findings: readonly Finding[];
  readonly needs: readonly Need[];
  readonly problems: readonly Problem[];
  readonly not_checked: readonly string[];
  /** What was assumed where the plan is silent (default building tolerance, tape handling). */
  readonly assumed: readonly string[];
}
