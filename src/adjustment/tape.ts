// What a tape is good for, and what it reads too long or too short.

/** Largest error a tape of a class may have when sold: constant + perMetre L, metres. */
export interface TapeClass {
  readonly constant: number;
  readonly perMetre: number;
  /** Added where the tape starts at a hook or at its end face. */
  readonly endFace: number;
}

/**
 * Accuracy classes of material measures of length: a + bL mm with L rounded up to whole metres, plus c where the
 * measure starts at its end: 0.1 + 0.1 L, 0.3 + 0.2 L, 0.6 + 0.4 L. UK SI 2016/1153 Schedule 1I (MI-008), READ; for
 * 20 C and, on tapes of 5 m or more, 50 N pull. Properties of the instrument, not limits of a rule.
 */
export const tapeClasses: Readonly<Record<"I" | "II" | "III", TapeClass>> = {
  I: { constant: 0.0001, perMetre: 0.0001, endFace: 0.0001 },
  II: { constant: 0.0003, perMetre: 0.0002, endFace: 0.0002 },
  III: { constant: 0.0006, perMetre: 0.0004, endFace: 0.0003 },
};

/** A length that is a whole number of metres but for rounding is not rounded up (method tolerance). */
const wholeMetre = 1e-9;

/** Maximum permissible error of a length measured from the zero line, metres. */
export function maximumPermissibleError(tape: TapeClass, length: number): number {
  return tape.constant + tape.perMetre * Math.ceil(length - wholeMetre);
}

/** The same where the measure starts at the hook or the end face. */
export function maximumPermissibleErrorFromEnd(tape: TapeClass, length: number): number {
  return maximumPermissibleError(tape, length) + tape.endFace;
}

/** u of a stated largest error E, all values within it alike: E / sqrt 3. JCGM 100:2008 4.3.7, MEMORY. */
export function uniformDoubt(largestError: number): number {
  return largestError / Math.sqrt(3);
}

/** Expansion of steel, 1/K: physical constant as used for tapes, MEMORY. */
export const steelExpansion = 11.5e-6;

/** Temperature at which tapes are true, degrees Celsius (READ with the classes above). */
export const tapeTemperature = 20;

/**
 * What to add to a length taped at `temperature`, metres: alpha (t - 20) L. A warm tape is long and reads short,
 * so the correction is positive above 20 C. COMPUTED from the expansion coefficient.
 */
export function temperatureCorrection(length: number, temperature: number, expansion = steelExpansion): number {
  return expansion * (temperature - tapeTemperature) * length;
}

/**
 * What to add for sag of a tape hanging free between its ends, metres: -w^2 L^3 / (24 T^2), w its weight in N/m,
 * T the pull in N. Flat-parabola formula, COMPUTED; holds where the sag is small beside L.
 */
export function sagCorrection({ length, weight, pull }: { length: number; weight: number; pull: number }): number {
  return -(weight * weight * length ** 3) / (24 * pull * pull);
}

/** A tape that hangs free, `length` long as a whole: longer lines are taken in whole tapes and a rest. */
export interface HungTape {
  /** Weight in newtons per metre, pull in newtons. */
  readonly weight: number;
  readonly pull: number;
  readonly length: number;
}

/**
 * What to add to a line taped with a hanging tape, metres: the sag of every span by itself, since it grows with the
 * cube of the span; the last span is what is left.
 */
export function sagOverSpans(line: number, { weight, pull, length }: HungTape): number {
  const whole = Math.floor(line / length);
  const rest = line - whole * length;
  return whole * sagCorrection({ length, weight, pull }) + sagCorrection({ length: rest, weight, pull });
}

/** Horizontal length of a taped slope with a rise between its ends: sqrt(s^2 - h^2); null where h exceeds s. */
export function horizontalLength(slopeLength: number, rise: number): number | null {
  const square = slopeLength * slopeLength - rise * rise;
  return square < 0 ? null : Math.sqrt(square);
}

/** What a tape reads too long where it is off the line by `bow` at the middle: 2 sqrt((L/2)^2 + bow^2) - L. */
export function bowExcess(length: number, bow: number): number {
  return 2 * Math.sqrt((length / 2) ** 2 + bow * bow) - length;
}
