// A sheet to take outside: what the hand does, in order, and the same as a table.

/** One thing to do: a sentence, and what belongs to it. */
export interface SheetEntry {
  readonly words: string;
  readonly notes: readonly string[];
}

export interface SheetPart {
  readonly heading: string;
  readonly entries: readonly SheetEntry[];
}

export interface Sheet {
  readonly title: string;
  /** What this sheet is, in one line. */
  readonly what: string;
  readonly file: string;
  readonly parts: readonly SheetPart[];
  /** Sentences at the foot: what to mind, and what the figures rest on. */
  readonly foot: readonly string[];
  readonly table: { readonly columns: readonly string[]; readonly rows: readonly (readonly (string | number)[])[] };
}
