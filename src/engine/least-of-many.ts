// The least of several changes, each of which may do or not: amounts are tried in rising levels, all changes at each
// level, and only those that do are halved down.

/** Levels that are tried, in steps: 0.25, 0.5, 1, 2, 4, 8, 16 m for a step of 0.05 m; none beyond a change's own most. */
const levels = [5, 10, 20, 40, 80, 160, 320] as const;

/** What is asked of the changes. Amounts are counted in steps. */
export interface Trial<Change> {
  readonly does: (change: Change, steps: number) => boolean;
  readonly most: (change: Change) => number;
}

/** Which change does with the least number of steps, and that number; null where none does. */
export function leastOfMany<Change extends object>(
  changes: readonly Change[],
  { does, most }: Trial<Change>,
): { readonly of: Change; readonly steps: number } | null {
  let below = 0;
  for (const level of levels) {
    const at = (change: Change) => Math.min(level, most(change));
    const [first, ...others] = changes.filter((change) => at(change) > below && does(change, at(change)));
    if (first !== undefined) {
      let best = { of: first, steps: halved(first, [below, at(first)], does) };
      for (const change of others) {
        const fewer = best.steps - 1;
        if (fewer > below && does(change, fewer)) best = { of: change, steps: halved(change, [below, fewer], does) };
      }
      return best;
    }
    below = level;
  }
  return null;
}

/** The least number that does between one that does not and one that does. */
export function halved<Change>(
  change: Change,
  [from, to]: readonly [number, number],
  does: Trial<Change>["does"],
): number {
  let [low, high] = [from, to];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (does(change, middle)) high = middle;
    else low = middle;
  }
  return high;
}
