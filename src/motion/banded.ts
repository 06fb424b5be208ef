// Least squares whose residuals each touch a few neighbouring unknowns: normal equations in a band, by Cholesky.

/** Normal equations: entry (i, j), j <= i, is `matrix[i * width + i - j]`; `right` is J^T r. */
export interface Banded {
  readonly size: number;
  /** Unknowns that one residual may span. */
  readonly width: number;
  readonly matrix: Float64Array;
  readonly right: Float64Array;
  readonly factor: Float64Array;
}

export function newBanded(size: number, width: number): Banded {
  return {
    size,
    width,
    matrix: new Float64Array(size * width),
    right: new Float64Array(size),
    factor: new Float64Array(size * width),
  };
}

export function clearBanded(system: Banded): void {
  system.matrix.fill(0);
  system.right.fill(0);
}

/** Adds one residual r with its derivatives by the unknowns first, first + 1, ...; those off the ends are held fixed. */
export function addResidual(system: Banded, first: number, row: Float64Array, residual: number): void {
  const { size, width, matrix, right } = system;
  for (let a = 0; a < row.length; a++) {
    const i = first + a;
    const value = row[a]!;
    if (value === 0 || i < 0 || i >= size) continue;
    right[i]! += value * residual;
    for (let b = Math.max(0, -first); b <= a; b++) matrix[i * width + a - b]! += value * row[b]!;
  }
}

/**
 * Solves (A + damping (diag A + floor)) step = -J^T r into `step`; unknowns marked in `held` stay as they are.
 * Returns false where the matrix is not positive (then `step` is worthless).
 */
export function solveDamped(system: Banded, damping: number, held: Uint8Array, step: Float64Array): boolean {
  const { size, width, factor, right } = system;
  setFactor(system, damping, held);
  for (let i = 0; i < size; i++) step[i] = held[i] === 1 ? 0 : -right[i]!;
  for (let i = 0; i < size; i++) {
    for (let j = Math.max(0, i - width + 1); j <= i; j++) {
      let sum = factor[i * width + i - j]!;
      const from = Math.max(0, i - width + 1, j - width + 1);
      for (let k = from; k < j; k++) sum -= factor[i * width + i - k]! * factor[j * width + j - k]!;
      if (j < i) factor[i * width + i - j] = sum / factor[j * width]!;
      else if (sum <= 0) return false;
      else factor[i * width] = Math.sqrt(sum);
    }
  }
  substitute(system, step);
  return true;
}

/** Least addition to the diagonal before damping, so that unknowns nothing depends on stay put. */
const diagonalFloor = 1e-6;

function setFactor(system: Banded, damping: number, held: Uint8Array): void {
  const { size, width, matrix, factor } = system;
  for (let i = 0; i < size; i++) {
    for (let d = 0; d < width; d++) {
      const apart = i - d < 0 || (d > 0 && (held[i] === 1 || held[i - d] === 1));
      factor[i * width + d] = apart ? 0 : matrix[i * width + d]!;
    }
    const diagonal = matrix[i * width]!;
    factor[i * width] = held[i] === 1 ? 1 : diagonal + damping * (diagonal + diagonalFloor) + 1e-12;
  }
}

function substitute(system: Banded, step: Float64Array): void {
  const { size, width, factor } = system;
  for (let i = 0; i < size; i++) {
    let sum = step[i]!;
    for (let k = Math.max(0, i - width + 1); k < i; k++) sum -= factor[i * width + i - k]! * step[k]!;
    step[i] = sum / factor[i * width]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = step[i]!;
    for (let k = i + 1; k < Math.min(size, i + width); k++) sum -= factor[k * width + k - i]! * step[k]!;
    step[i] = sum / factor[i * width]!;
  }
}
