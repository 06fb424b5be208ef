// The two-peg test: does the level's line of sight lie level?

/** Readings on two staffs A and B, metres, with the instrument midway and then away from the middle. */
export interface TwoPegReadings {
  readonly midway: { readonly onA: number; readonly onB: number };
  readonly moved: { readonly onA: number; readonly onB: number };
  /** Sight length to A less sight length to B after moving, metres (positive where the instrument is nearer B). */
  readonly sightDifference: number;
}

export interface TwoPegResult {
  /** A reading less B reading from midway, where equal sights cancel the error: how much B stands above A. */
  readonly trueDifference: number;
  /** How much the moved pair differs from it. */
  readonly error: number;
  /** Tilt of the line of sight, metres in a metre, positive where it looks up; null without a sight difference. */
  readonly perMetre: number | null;
}

/** Tilt c = [(a2 - b2) - (a1 - b1)] / (sight to A - sight to B); field procedure, PRACTICE. */
export function twoPegTest({ midway, moved, sightDifference }: TwoPegReadings): TwoPegResult {
  const trueDifference = midway.onA - midway.onB;
  const error = moved.onA - moved.onB - trueDifference;
  return { trueDifference, error, perMetre: sightDifference === 0 ? null : error / sightDifference };
}
