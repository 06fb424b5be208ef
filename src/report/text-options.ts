// What whoever prints the text report may choose.

import type { PlaceNames } from "./standing-words.ts";

export interface TextOptions {
  /** Numbers in words instead of the mark line, for a screen reader. */
  readonly plain?: boolean;
  /** First lines only; cautions stay. */
  readonly brief?: boolean;
  /** Columns of a line, 80 to 118; 100 if not given. */
  readonly width?: number;
  /** Also lists what is met and what does not bear on the plan. */
  readonly all?: boolean;
  /** Names of places by their word in the plan. */
  readonly places?: PlaceNames;
  /** Last line: how to ask for more (`sightrail reason ...`), from whoever knows the command. */
  readonly more?: string;
}
