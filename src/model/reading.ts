// Measures and readings: the words by which a quantity is found on the plan.

import type { Feature, LevelledPlace } from "./plan.ts";
import type { Dimension, Read } from "./quantity.ts";

/** Plane metres, east and north. */
export type Point = readonly [number, number];

/** Geometry that shows a reading on the drawing, in plan metres. */
export interface Witness {
  readonly part: "found" | "wanted" | "thing";
  readonly form: "point" | "line" | "outline" | "circle";
  readonly points: readonly Point[];
  readonly radius?: number;
  readonly label?: string;
  /** Of a wheel's track: the way it is driven. */
  readonly gear?: "forward" | "reverse";
}

/** Something a measure would have to know and the plan does not say. */
export interface Missing {
  readonly feature: Feature;
  /** Dotted property name, e.g. `height`. */
  readonly property: string;
  /** Completes "what is ...?": `the height of fence "goat paddock"`. */
  readonly asks: string;
  readonly dimension?: Dimension;
  /** `unsaid` where the plan does not say whether the thing exists at all. */
  readonly why: "missing" | "unsaid";
  /** Set where a row asks what a plan may leave unsaid: under which name, and what could be said. */
  readonly silence?: { readonly of: string; readonly answers: readonly (boolean | string)[] };
  /** True where every answer was tried, and the verdict hangs on it. */
  readonly tried?: true;
}

/**
 * One place where the quantity can be found (a vertex against a segment, a stand, a run of pipe). `value` is
 * evaluated many times with nudged numbers, so it keeps its topology: it decides nothing anew.
 */
export interface CandidatePlace {
  /** Stable under nudging, moving, turning and mirroring. */
  readonly key: string;
  readonly value: (read: Read) => number;
  readonly witness: (read: Read) => readonly Witness[];
  /** Words for the place, e.g. `at post 3` or `8.40 m from peg P1`; completes the phrase. */
  readonly where?: string;
  /** Standard uncertainty of the method itself (a grid, an empirical formula's scatter), added in squares. */
  readonly methodU?: number;
  /** No number that the value reads moves it by more than so many times its own move, both in base units; left out where that is not known. */
  readonly steepest?: number;
  /** In what way the value is known: exactly found, or only bounded. */
  readonly bound?: "at_least" | "at_most";
}

/** What a measure answers: places where the quantity stands, or what is missing, or that it does not bear here. */
export type Found =
  | { readonly is: "found"; readonly places: readonly CandidatePlace[] }
  | { readonly is: "missing"; readonly missing: readonly Missing[] }
  | { readonly is: "gave-up"; readonly because: string }
  | { readonly is: "does-not-bear" };

/** The features of one evaluation, by role name. A role of `everything` or several holds a list. */
export interface Subject {
  readonly [role: string]: Feature;
}

/** What a measure may see besides its subject: the plan as it stands at one stage. */
export interface Scene {
  readonly stage: number;
  /** Features that stand at the end of this stage, by kind (plural key of the plan, e.g. `walls`); all if omitted. */
  standing(kind?: string): readonly Feature[];
  /**
   * What the work of this stage runs on: what stood at the end of the stage before (at the first stage: what exists
   * from the start) and is not taken away at the start of this one. A changed feature is still as it was before.
   */
  before(kind?: string): readonly Feature[];
  /** What the plan says of the plot as a whole (`ground`, `rain`), where it says anything. */
  readonly site: Feature | null;
  /** Everything that was levelled: pegs, spots of ground, parts of features. */
  readonly levels: readonly LevelledPlace[];
  readonly read: Read;
}

/** Parameters of a measure, as the card gives them: words or numbers in base units. */
export interface Parameters {
  readonly [name: string]: string | number | boolean | undefined;
}

/** How a parameter may be given. */
export type ParameterForm =
  | { readonly words: readonly string[]; readonly default: string }
  | { readonly dimension: Dimension; readonly default: number };

/** One quantity that can be found on a plan. */
export interface Measure {
  readonly name: string;
  readonly dimension: Dimension;
  /** Role names with what they are, for the card's check: `{fence: "a line that has a height"}`. */
  readonly roles: Readonly<Record<string, string>>;
  readonly parameters: Readonly<Record<string, ParameterForm>>;
  /** Words its reading: slots are role names and `found`: `from {stand} a rise of {found} clears it`. */
  readonly phrase: string;
  /** The same for a value below 0, worded by its size: `it goes {found} under the crown of {tree}`; `wanted` follows what is wanted. */
  readonly below?: { readonly phrase: string; readonly wanted?: string };
  /** Short name of the quantity for the mark line: `rise asked for`, `clear width`. */
  readonly shortName: string;
  /** Unit in which it is printed where that is not the usual one of its dimension (`mm`, `1 in`, `deg`). */
  readonly shownIn?: string;
  readonly find: (subject: Subject, scene: Scene, parameters: Parameters) => Found;
}
