// A card: one rule as data. Words only; reading and checking are the rulebook's.

import type { Dimension } from "./quantity.ts";
import type { Parameters } from "./reading.ts";

export type Stakes = "safety" | "damage" | "nuisance";
export type Grade = "must" | "should";
export type Standing = "law" | "standard" | "guidance" | "practice" | "your own wish";
export type Seen = "read" | "read second-hand" | "memory" | "computed" | "none";

/** One entry of the bibliography. */
export interface Source {
  readonly id: string;
  readonly title: string;
  readonly publisher?: string;
  readonly edition?: string;
  readonly seen: Seen;
  readonly address?: string;
  readonly date?: string;
  readonly note?: string;
}

/** A bound: a number in base units, or one that follows from the plan or from a table. */
export type Bound =
  | { readonly from: "number"; readonly value: number }
  | { readonly from: "table"; readonly table: string; readonly column: string }
  /** times x property, kept between `downTo` and `upTo`. */
  | {
      readonly from: "times";
      readonly times: number;
      readonly of: string;
      readonly upTo?: number;
      readonly downTo?: number;
    }
  /** times / property. */
  | { readonly from: "over"; readonly times: number; readonly over: string }
  /** A property of a role, as it stands in the plan. */
  | { readonly from: "plan"; readonly property: string };

/** What is wanted of a reading. */
export type Requirement =
  | { readonly sense: "at_least"; readonly bound: Bound }
  | { readonly sense: "at_most"; readonly bound: Bound }
  | { readonly sense: "between"; readonly low: Bound; readonly high: Bound };

/** A condition on a property of a role or on a companion reading. */
export type Condition =
  /** `silent: "ask"`: where the plan does not say, it is asked for; else silence is taken as no. */
  | { readonly of: string; readonly is: string | boolean | readonly string[]; readonly silent?: "ask" }
  | {
      readonly of: string;
      readonly over?: number;
      readonly from?: number;
      readonly upTo?: number;
      readonly under?: number;
      /** Dimension that the units of the row tell; left out for bare numbers. */
      readonly dimension?: Dimension;
    };

/** One row of a card. */
export interface Limit {
  readonly id: string;
  readonly where: string;
  readonly when: readonly Condition[];
  readonly forEach?: string;
  readonly must?: Requirement;
  readonly should?: Requirement;
  readonly source?: string;
  readonly clause?: string;
  readonly standing: Standing;
  readonly measure?: { readonly name: string; readonly parameters: Parameters };
  /** Of the owner's own row: the published rows that it stands for; it bears where one of them would. */
  readonly standsFor?: readonly Limit[];
}

/** A change that might put a finding right. Tried in the card's order. */
export type Remedy =
  | { readonly change: string; readonly to?: string }
  | { readonly move: string; readonly awayFrom: string }
  | { readonly remove: string }
  /** A role that is a manoeuvre: what would let it be done is searched; words after it stand only where nothing is found. */
  | { readonly ease: string }
  | { readonly words: string };

/** Which features play a role. */
export interface RoleChoice {
  readonly role: string;
  /** Kinds or parts (`fence`, `drain run`), or `everything`, or `site`. */
  readonly kinds: readonly string[];
}

export interface Card {
  readonly id: string;
  readonly area: string;
  readonly title: string;
  readonly asks: string;
  readonly about: RoleChoice;
  readonly against: RoleChoice | null;
  /** Reach in metres for pairs; null where there is no second role. */
  readonly within: number | null;
  /** What narrows that reach for a pair whose own number tells how far the rule can bear; null where nothing does. */
  readonly narrowed: Extract<Bound, { readonly from: "times" }> | null;
  readonly report: "worst" | "each";
  readonly measure: string;
  readonly parameters: Parameters;
  readonly dimension: Dimension;
  readonly stakes: Stakes;
  readonly faultsOnly: boolean;
  /** Companion readings by name, usable in `when`. */
  readonly companions: Readonly<Record<string, { readonly measure: string; readonly parameters: Parameters }>>;
  /** Word of the `none` list under which the plan may say that this hazard is not there. */
  readonly hazard: string | null;
  readonly limits: readonly Limit[];
  readonly fault: string;
  readonly cautions: readonly string[];
  readonly defersTo: string | null;
  readonly remedies: readonly Remedy[];
  /** File of the card, for problems and SARIF. */
  readonly file: string;
}

/** A reference table: rows by key, columns of numbers in base units, with the doubt of each. */
export interface Table {
  readonly name: string;
  readonly dimension: Dimension;
  readonly rows: ReadonlyMap<string, Readonly<Record<string, TableValue>>>;
}
export interface TableValue {
  readonly value: number;
  readonly u: number;
  readonly source: string;
}

/** Everything the engine needs to judge: cards, tables, bibliography, places. */
export interface Rulebook {
  readonly cards: readonly Card[];
  readonly tables: ReadonlyMap<string, Table>;
  readonly sources: ReadonlyMap<string, Source>;
  /** Child -> parent; the chain of every place ends at `anywhere`. */
  readonly places: ReadonlyMap<string, string>;
  /** Words for places in a sentence, by their word in the plan. */
  readonly placeNames: Readonly<Record<string, string>>;
}
