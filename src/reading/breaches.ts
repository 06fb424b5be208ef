// Where the syntax of a text is broken, and which group each break belongs to.

/** Start, end of the value, end with what trails it; as the YAML package gives it. */
export type NodeRange = readonly [number, number, number] | null | undefined;

/**
 * Makes `takeBreaches` over the offsets of the faults: true where a range holds any, which then belong to that range.
 * Asked from the inside outwards, each fault so goes to the smallest group around it.
 */
export function makeTakeBreaches(offsets: readonly number[]): (range: NodeRange) => boolean {
  const left = [...offsets].sort((a, b) => a - b);
  return (range) => {
    if (range === null || range === undefined || left.length === 0) return false;
    const first = lowerBound(left, range[0]);
    const behind = lowerBound(left, range[2] + 1);
    if (behind === first) return false;
    left.splice(first, behind - first);
    return true;
  };
}

/** Index of the first number that is not less than `wanted`. */
function lowerBound(sorted: readonly number[], wanted: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? Infinity) < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}
