// Volumes of earth from sections and from a grid of depths.

/**
 * Volume between two sections of area A1 and A2 (square metres) L metres apart, by the average of the ends:
 * V = L (A1 + A2) / 2, cubic metres. Too large where one tapers: half as much again for a pyramid.
 */
export function endAreaVolume(length: number, [first, last]: readonly [number, number]): number {
  return (length * (first + last)) / 2;
}

/**
 * Volume of a prismoid: V = L (A1 + 4 Am + A2) / 6, cubic metres. Am is the area of the section half way, drawn from
 * the mean of the dimensions, not the mean of the areas.
 */
export function prismoidVolume(length: number, [first, middle, last]: readonly [number, number, number]): number {
  return (length * (first + 4 * middle + last)) / 6;
}

/** Volume over sections at equal distance, by the average of the ends, cubic metres. 0 for less than two sections. */
export function volumeByEndAreas(step: number, areas: readonly number[]): number {
  return areas.slice(1).reduce((sum, area, i) => sum + endAreaVolume(step, [areas[i] as number, area]), 0);
}

/**
 * Volume over an odd number of sections at equal distance by Simpson's rule, each three taken as a prismoid, cubic
 * metres. Null for an even number or for less than three.
 */
export function volumeBySimpson(step: number, areas: readonly number[]): number | null {
  if (areas.length < 3 || areas.length % 2 === 0) return null;
  let sum = 0;
  for (let i = 0; i + 2 < areas.length; i += 2) {
    sum += prismoidVolume(2 * step, [areas[i] as number, areas[i + 1] as number, areas[i + 2] as number]);
  }
  return sum;
}

/**
 * Area of a trapezoid cut: V = h (b + n h), square metres: b the bottom width, h the depth in metres, and n the run of
 * each side to one of rise.
 */
export function trapezoidArea(bottomWidth: number, depth: number, runPerRise: number): number {
  return depth * (bottomWidth + runPerRise * depth);
}

/**
 * Volume of a pit from depths (metres) on a square grid: V = a/4 (S1 + 2 S2 + 3 S3 + 4 S4), where a is the area of a
 * cell and Sn the sum of the depths at corners where n cells meet. A cell counts where all four depths are given (not null).
 */
export function gridVolume(spacing: number, depths: readonly (readonly (number | null)[])[]): number {
  let sum = 0;
  for (const [i, row] of depths.slice(1).entries()) {
    const above = depths[i] as readonly (number | null)[];
    for (const [j, corner] of row.slice(1).entries()) {
      const four = [above[j], above[j + 1], row[j], corner];
      if (four.every((depth) => typeof depth === "number")) sum += four.reduce((whole, depth) => whole + depth, 0);
    }
  }
  return (spacing * spacing * sum) / 4;
}
