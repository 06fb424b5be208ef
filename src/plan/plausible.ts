// Ranges beyond which a number is more likely a slip of the pen or of the unit than a thing on a plot.

import type { Dimension } from "../model/quantity.ts";
import { baseUnit } from "../model/units.ts";
import type { Written } from "./numbers.ts";
import { wordsOf, type Troubles } from "./troubles.ts";

interface Range {
  readonly fits: RegExp;
  readonly dimension?: Dimension;
  readonly least?: number;
  readonly most: number;
  /** What is asked about, with its article. */
  readonly words: string;
}

/**
 * Widest ranges in base units, first that fits. Our own bounds against slips (PRACTICE), wide enough for anything
 * that a plot holds; a number outside is asked about, never judged.
 */
const ranges: readonly Range[] = [
  { fits: /\bbore$/, least: 0.01, most: 3, words: "a bore" },
  { fits: /\bmesh\b/, least: 0.005, most: 1, words: "a mesh" },
  { fits: /\bthickness$/, least: 0.001, most: 5, words: "a thickness" },
  { fits: /^trees\..*\b(?:girth|stems?)\b(?!.*height)/, least: 0.005, most: 25, words: "a stem or girth" },
  { fits: /^trees\..*\bradius$/, least: 0, most: 40, words: "a crown radius" },
  { fits: /^trees\..*height/, least: 0, most: 120, words: "the height of a tree" },
  { fits: /^(?:fences|walls|gates|steps|hedges)\..*\b(?:height|rise)$/, least: 0, most: 20, words: "a height" },
  { fits: /\bvoids$/, dimension: "share", least: 0, most: 1, words: "a share of voids" },
  { fits: /^vehicles\..*\b(?:length|wheelbase|across|width)$/, least: 0.3, most: 60, words: "a size of a vehicle" },
  { fits: /./, dimension: "share", least: 0, most: 10, words: "a share" },
  { fits: /^site\.earth\./, dimension: "count", least: -180, most: 180, words: "a latitude or longitude" },
  { fits: /./, dimension: "count", least: 0, most: 1e6, words: "a count" },
  { fits: /./, dimension: "slope", least: -20, most: 20, words: "a fall" },
  {
    fits: /(?:^|\.)(?:left|right|run|along|from|to|at|aside|east|north)$/,
    least: -100_000,
    most: 100_000,
    words: "a length",
  },
  { fits: /./, dimension: "length", least: 0, most: 100_000, words: "a length" },
  { fits: /./, dimension: "area", least: 0, most: 1e10, words: "an area" },
  { fits: /./, dimension: "volume", least: 0, most: 1e10, words: "a volume" },
  { fits: /./, dimension: "time", least: 0, most: 1e11, words: "a time" },
  { fits: /./, dimension: "flow", least: 0, most: 1e6, words: "a flow" },
  { fits: /./, dimension: "pressure", least: 0, most: 1e9, words: "a pressure" },
  { fits: /./, dimension: "voltage", least: 0, most: 1e7, words: "a voltage" },
  { fits: /./, dimension: "force", least: 0, most: 1e9, words: "a force" },
  { fits: /./, dimension: "mass", least: 0, most: 1e7, words: "a mass" },
  { fits: /./, dimension: "speed", least: 0, most: 100, words: "a speed" },
  { fits: /./, dimension: "rain", least: 0, most: 1e-3, words: "an intensity of rain" },
  { fits: /./, dimension: "density", least: 10, most: 20_000, words: "a density" },
];

/** A level may lie below the datum. */
const levels: Range = { fits: /./, least: -100_000, most: 100_000, words: "a level" };

/** Farthest that a coordinate may lie from where east and north begin, metres: more than once round a quarter of the earth. */
const farthest = 2e7;

/** Whether a coordinate can lie on the earth; a problem where it cannot. */
export function checkCoordinate(written: Written, troubles: Troubles): boolean {
  if (Math.abs(written.value) <= farthest) return true;
  troubles.report(written.node, {
    code: "out-of-range",
    expected: `a coordinate of ${farthest / 1000} km at the most`,
    got: wordsOf(written.node.data),
    hint: "count its digits again",
  });
  return false;
}

/** Units that are mistaken for each other, by what the value would have to be multiplied with. */
const slips: readonly (readonly [factor: number, unit: string])[] = [
  [0.001, "mm"],
  [0.01, "cm"],
  [0.3048, "ft"],
  [0.0254, "in"],
];

/** Whether a number is plausible; a problem with a guess where it is not. */
export function checkPlausible(
  written: Written,
  of: {
    readonly kind: string;
    readonly path: string;
    readonly form: { readonly dimension: Dimension; readonly level?: true };
  },
  troubles: Troubles,
): boolean {
  const dotted = `${of.kind}.${of.path}`;
  const range = of.form.level
    ? levels
    : ranges.find(
        ({ fits, dimension }) =>
          (dimension === undefined ? of.form.dimension === "length" : dimension === of.form.dimension) &&
          fits.test(dotted),
      );
  const least = range?.least ?? Number.NEGATIVE_INFINITY;
  if (range === undefined || (written.value >= least && written.value <= range.most)) return true;
  const unit = unitWord(of.form.dimension);
  const bound = written.value > range.most ? `${range.most}${unit} at the most` : `${least}${unit} at least`;
  troubles.report(written.node, {
    code: "out-of-range",
    expected: `${range.words} of ${bound}`,
    got: wordsOf(written.node.data),
    hint: guess(written, { ...range, least }, of.form.dimension),
  });
  return false;
}

/** The base unit with a space before it; nothing for counts and shares. */
function unitWord(dimension: Dimension): string {
  return baseUnit[dimension] === "1" ? "" : ` ${baseUnit[dimension]}`;
}

function guess(written: Written, range: Range & { readonly least: number }, dimension: Dimension): string {
  const plain = `${range.words} of ${written.value}${unitWord(dimension)}`;
  if (dimension !== "length") return `${plain}: look at it again`;
  const meant = slips
    .filter(([factor]) => written.value * factor <= range.most && written.value * factor >= range.least)
    .map(([, unit]) => `${written.value} ${unit}`);
  if (meant.length === 0 || written.value < 0) return `${plain}: look at it again`;
  // A tape round a trunk is read in centimetres as often as in millimetres: neither is guessed alone.
  const both = /stem|girth/.test(range.words) ? meant.slice(0, 2).reverse() : meant.slice(0, 1);
  return `${plain}: was ${both.join(" or ")} meant?`;
}
