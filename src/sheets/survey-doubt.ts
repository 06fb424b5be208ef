// How well the survey alone knows a number that follows from the plan.

import type { NumberBook, Quantity, Read } from "../model/quantity.ts";
import { swayLength } from "../model/quantity.ts";

/** Step of the derivative as a part of the number's own doubt, and the least step, in the number's unit (method). */
const stepShare = 1e-3;
const leastStep = 1e-9;

/**
 * Standard uncertainty of `value` by what was measured, in its unit: u^2 = sum over causes of (g . sway)^2, g by central
 * differences (JCGM 100:2008 5.2.2, MEMORY). The tolerance of building is left out: who sets out is about to build.
 */
export function surveyDoubt(value: (read: Read) => number, book: NumberBook): number {
  const plain = ({ id }: Quantity): number => book.values[id] as number;
  const noted = new Set<number>();
  value((quantity) => (noted.add(quantity.id), plain(quantity)));
  const moves = new Map<number, number>();
  for (const id of noted) {
    const sway = book.sways[id] ?? new Map<number, number>();
    const step = Math.max(leastStep, stepShare * swayLength(sway));
    const moved = (by: number) => value((quantity) => plain(quantity) + (quantity.id === id ? by : 0));
    const slope = sway.size === 0 ? 0 : (moved(step) - moved(-step)) / (2 * step);
    for (const [cause, by] of sway)
      if (book.causes[cause]?.sort === "survey") moves.set(cause, (moves.get(cause) ?? 0) + slope * by);
  }
  return Math.hypot(...moves.values());
}
