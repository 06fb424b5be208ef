// The lattice of poses: square cells, evenly spaced headings, and the shifts by which a vehicle gets about on it.
// One heading is one layer of bits, one bit per cell, row after row in one long string; a move is one shift of a whole
// layer. Rows are padded by the longest move, so that what runs off a row's end falls on cells that are never free.

/** How finely a lattice is laid. */
export interface LatticeStep {
  /** Side of a cell, m. */
  readonly cell: number;
  /** Number of headings in a full turn; a multiple of 4. */
  readonly headings: number;
}

/** Sides of a box, m. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** A lattice over a box; the node of the origin and heading 0 is one of its nodes. */
export interface Lattice extends LatticeStep {
  readonly columns: number;
  readonly rows: number;
  /** Column and row of the origin. */
  readonly originColumn: number;
  readonly originRow: number;
  /** Bits from one row to the next. */
  readonly stride: number;
  /** Words of one layer. */
  readonly words: number;
  /** Words from one layer to the next: some more, which stay zero, so that a shift may read past an end. */
  readonly layerStride: number;
}

/** One way to move on a lattice: from heading k to k + turn, by `shift[k]` bits. */
export interface Motion {
  readonly turn: -1 | 0 | 1;
  readonly shift: Int32Array;
  /** Signed curvature sign of the arc it stands for: left 1, straight 0, right -1. */
  readonly steer: -1 | 0 | 1;
  /** 1 forwards, -1 in reverse. */
  readonly gear: 1 | -1;
}

/**
 * Longest straight steps, m. The short one gets into tight places; the long one points better. With the short one
 * alone some pads were found 13 cm too small, whatever the cell, for want of a straight in the right direction.
 */
const straightLengths = [0.35, 0.7] as const;
const longestStraight = 0.7;

/** A lattice over a box for moves of up to `longestMove` metres. */
export function latticeOver(box: Box, step: LatticeStep, longestMove: number): Lattice {
  const { cell } = step;
  const originColumn = Math.ceil(-box.left / cell) + 1;
  const originRow = Math.ceil(-box.low / cell) + 1;
  const columns = originColumn + Math.ceil(box.right / cell) + 2;
  const rows = originRow + Math.ceil(box.high / cell) + 2;
  const stride = columns + Math.ceil(Math.max(longestMove, longestStraight) / cell) + 1;
  const words = (rows * stride + 31) >> 5;
  return { ...step, columns, rows, originColumn, originRow, stride, words, layerStride: words + 2 * layerEdge };
}

/** Words before and after every layer that stay zero: as many as are worked at a time. */
export const layerEdge = 4;

/** First word of a heading's layer, counted from the beginning of its set of layers. */
export function layerBase(lattice: Lattice, heading: number): number {
  return layerEdge + heading * lattice.layerStride;
}

/** Words of a whole set of layers. */
export function latticeWords(lattice: Lattice): number {
  return lattice.headings * lattice.layerStride;
}

/** Rounding that treats left and right alike: halves go away from zero. */
function roundEven(value: number): number {
  return Math.sign(value) * Math.round(Math.abs(value));
}

/**
 * The motions of one gear for a vehicle of rear-axle radius `radius` (m): straights, full lock left, full lock right. Full-lock displacements are differences of rounded points of one fixed circle, so that rounding telescopes:
 * an arc of any length is off by at most one cell.
 */
export function motionsOf(lattice: Lattice, radius: number, gear: 1 | -1): readonly Motion[] {
  const { headings, stride } = lattice;
  const around = circlePoints(lattice, radius);
  const left = new Int32Array(headings);
  const right = new Int32Array(headings);
  for (let k = 0; k < headings; k++) {
    const after = bitsBetween(around, k, (k + 1) % headings, stride);
    const before = bitsBetween(around, (k + headings - 1) % headings, k, stride);
    // Forward left leads from k to k + 1, forward right along the mirrored circle from k to k - 1.
    left[k] = gear === 1 ? after : -before;
    right[k] = gear === 1 ? before : -after;
  }
  return [
    ...straights(lattice, gear),
    { turn: gear, shift: left, steer: 1, gear },
    { turn: gear === 1 ? -1 : 1, shift: right, steer: -1, gear },
  ];
}

/** Rounded points, in cells, of a left-hand circle at every heading: x = R sin, y = -R cos. */
function circlePoints(lattice: Lattice, radius: number): readonly (readonly [number, number])[] {
  return Array.from({ length: lattice.headings }, (_, k) => {
    const angle = (2 * Math.PI * k) / lattice.headings;
    const r = radius / lattice.cell;
    return [roundEven(snapped(r * Math.sin(angle))), roundEven(snapped(-r * Math.cos(angle)))] as const;
  });
}

/** A number without its rounding noise, so that mirrored headings round alike. */
function snapped(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}

function bitsBetween(points: readonly (readonly [number, number])[], from: number, to: number, stride: number): number {
  const a = points[from]!;
  const b = points[to]!;
  return (b[1] - a[1]) * stride + (b[0] - a[0]);
}

function straights(lattice: Lattice, gear: 1 | -1): readonly Motion[] {
  return straightLengths.map((longest) => {
    const steps = straightSteps(lattice, longest);
    const shift = Int32Array.from(steps, ([x, y]) => gear * (y * lattice.stride + x));
    return { turn: 0, shift, steer: 0, gear };
  });
}

/** Steps that were looked for already, by cell, headings and length: a few lattices are used over and over. */
const knownSteps = new Map<string, readonly (readonly [number, number])[]>();

/** For each heading the step of whole cells, no longer than `longest` (m), that points best along it. */
function straightSteps(lattice: LatticeStep, longest: number): readonly (readonly [number, number])[] {
  const key = `${lattice.cell} ${lattice.headings} ${longest}`;
  const known = knownSteps.get(key);
  if (known !== undefined) return known;
  const steps = findSteps(lattice, longest);
  knownSteps.set(key, steps);
  return steps;
}

/** Looked for in an eighth of a turn, and turned and mirrored from there: so left and right are alike for certain. */
function findSteps(lattice: LatticeStep, longest: number): readonly (readonly [number, number])[] {
  const quarter = lattice.headings / 4;
  const eighth = Array.from({ length: Math.floor(quarter / 2) + 1 }, (_, k) => {
    const angle = (2 * Math.PI * k) / lattice.headings;
    return bestStep(Math.cos(angle), Math.sin(angle), longest / lattice.cell);
  });
  return Array.from({ length: lattice.headings }, (_, k) => {
    const within = k % quarter;
    const [x, y] = within < eighth.length ? eighth[within]! : swapped(eighth[quarter - within]!);
    return quarterTurns[Math.floor(k / quarter)]!(x, y);
  });
}

const swapped = ([x, y]: readonly [number, number]) => [y, x] as const;

/** A step turned by so many quarters to the left. */
const quarterTurns: readonly ((x: number, y: number) => readonly [number, number])[] = [
  (x, y) => [x, y],
  (x, y) => [-y, x],
  (x, y) => [-x, -y],
  (x, y) => [y, -x],
];

/** The best step for a bearing of an eighth of a turn at most. */
function bestStep(c: number, s: number, longest: number): readonly [number, number] {
  const most = Math.floor(longest);
  let best: readonly [number, number] = [0, 0];
  let bestError = Infinity;
  for (let y = 0; y <= most; y++) {
    for (let x = y; x <= most; x++) {
      if (x === 0 || x * x + y * y > longest * longest) continue;
      const error = Math.abs(snapped(Math.atan2(c * y - s * x, c * x + s * y)));
      if (error < bestError - 1e-9 || (error < bestError + 1e-9 && x * x + y * y < best[0] ** 2 + best[1] ** 2)) {
        best = [x, y];
        bestError = error;
      }
    }
  }
  return best;
}
