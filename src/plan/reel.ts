// Reads the tape: its class, what it reads too long or too short, and what one more length would be good for.

import {
  maximumPermissibleError,
  sagOverSpans,
  tapeClasses,
  tapeTemperature,
  temperatureCorrection,
} from "../adjustment/tape.ts";
import type { PlanTape } from "../model/plan.ts";
import type { Cause } from "../model/quantity.ts";
import type { Reel } from "./measuring.ts";
import { child, textOf, type Node } from "./node.ts";
import { readNumber } from "./numbers.ts";
import type { Customs } from "./practice.ts";
import { firstAt, type Texts } from "./sources.ts";
import type { Troubles } from "./troubles.ts";

const reelWords = "the tape's own error";

/** Length of tape that an error is stated for where the plan does not give one, metres. */
const usualLength = 30;

/** The reel of the plan's tapes, or null where nothing is said of it. */
export function reelOf(texts: Texts, customs: Customs, troubles: Troubles): Reel | null {
  const tape = firstAt(texts, "survey", "tape");
  const node = child(tape, "class");
  const name = textOf(node);
  const found = name === "I" || name === "II" || name === "III" ? tapeClasses[name] : undefined;
  const length = readNumber(child(tape, "length"), "length", troubles)?.value ?? usualLength;
  const inTruth = truthOf(tape, length, troubles);
  if (found === undefined && firstAt(texts, "survey", "stations") !== null) {
    customs.assume("the tape's own error is not counted: the plan does not give its class");
  }
  const holder = node ?? tape;
  if (holder === null || !(length > 0) || (found === undefined && inTruth(length) === length)) return null;
  const { place } = holder;
  if (found === undefined) return { place, length, inTruth, error: null };
  const words = `${reelWords} (class ${name ?? ""})`;
  return { place, length, inTruth, error: { words, greatest: (taped) => maximumPermissibleError(found, taped) } };
}

/** Acceleration of gravity, m/s2 (standard value, exact by definition). */
const gravity = 9.80665;

/**
 * The true length of what was read: L (1 + e / L0) for a tape e too long over its whole length L0, and what its warmth
 * and its sag add. Each by what was read, since together they are a part in some thousands of it.
 */
function truthOf(tape: Node | null, length: number, troubles: Troubles): Reel["inTruth"] {
  const longBy = readNumber(child(tape, "long_by"), "length", troubles)?.value ?? 0;
  const warmth = readNumber(child(tape, "temperature"), "temperature", troubles)?.value ?? tapeTemperature;
  const mass = readNumber(child(tape, "mass"), "mass", troubles)?.value ?? 0;
  const pull = readNumber(child(tape, "pull"), "force", troubles)?.value ?? 0;
  const hung = child(tape, "hung")?.data === true && mass > 0 && pull > 0;
  const weight = (mass * gravity) / length;
  return (read) => {
    const size = Math.abs(read);
    const sag = hung ? sagOverSpans(size, { weight, pull, length }) : 0;
    const more = (size * longBy) / length + temperatureCorrection(size, warmth) + sag;
    return read + Math.sign(read) * more;
  };
}

/** What is known of doubt by then, and where troubles with the tape were told (they are told once). */
export interface TapeWork {
  readonly causes: readonly Cause[];
  readonly troubles: Troubles;
}

/** What one more tape would be good for; `causes` are those of the plan, among them the reel's own where it has one. */
export function planTapeOf(texts: Texts, customs: Customs, { causes, troubles }: TapeWork): PlanTape {
  const tape = firstAt(texts, "survey", "tape");
  const name = textOf(child(tape, "class"));
  const cause = causes.find((one) => one.words.startsWith(reelWords));
  const known = cause !== undefined && (name === "I" || name === "II" || name === "III");
  const length = child(tape, "length")?.data;
  const whole = typeof length === "number" && length > 0 ? length : usualLength;
  const longBy = readNumber(child(tape, "long_by"), "length", troubles)?.value ?? 0;
  const warmth = readNumber(child(tape, "temperature"), "temperature", troubles)?.value ?? tapeTemperature;
  return {
    handling: customs.quietU("tape", 0),
    perMetre: customs.quietU("tape", 1) - customs.quietU("tape", 0),
    reach: whole,
    shortPerMetre: longBy / whole + temperatureCorrection(1, warmth),
    reel: known ? { class: name, cause: cause.id } : null,
  };
}
