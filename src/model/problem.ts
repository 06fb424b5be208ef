// A problem: the plan, a card or the command could not be read as meant.

/** The closed list of problem codes. A code is a sentence in short, stable over versions. */
export type ProblemCode =
  | "file-not-found"
  | "file-too-large"
  | "nested-too-deep"
  | "too-many-aliases"
  | "not-yaml"
  | "several-documents"
  | "duplicate-key"
  | "wrong-type"
  | "unknown-key"
  | "missing-key"
  | "unknown-word"
  | "not-a-number"
  | "decimal-comma"
  | "wrong-unit"
  | "out-of-range"
  | "bad-name"
  | "name-taken"
  | "unknown-name"
  | "circular"
  | "bad-geometry"
  | "cannot-close"
  | "not-built-yet"
  | "contradiction"
  | "outside-folder"
  | "bad-card"
  | "unknown-rule"
  | "bad-date"
  | "no-earth-tie"
  | "bad-command";

/** What could not be read, where, and what would do. `leftOut` says whether something was dropped because of it. */
export interface Problem {
  readonly code: ProblemCode;
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly expected: string;
  readonly got: string;
  readonly hint: string;
}

/** A value together with the problems met on the way to it; one never replaces the other. */
export interface WithProblems<T> {
  readonly value: T;
  readonly problems: readonly Problem[];
}
