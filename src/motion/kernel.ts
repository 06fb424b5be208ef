// The innermost loops of the flood, over one big array of words: bits of a layer are shifted onto another, what is free
// and new is kept and logged. The same four loops exist as machine code (kernel.wat); both leave the same bits.

/**
 * Where a job's numbers lie at the bottom of the array, as words. Addresses are words from the bottom of the array.
 * `source` is the word whose bits move to the word at `target`; `last` the last target word to visit; `part` the bits
 * (0..31) of the shift within a word; `log` where the next entry (address, new bits) goes, moved on by the job.
 * For runs: `limit` is the farthest word of the layer; a word that has gained lets the run go on for `reach` words.
 */
export const register = {
  source: 0,
  target: 1,
  free: 2,
  last: 3,
  part: 4,
  log: 5,
  limit: 6,
  reach: 7,
  met: 8,
  // For rows: the layer, bits from row to row, first and last row, last column.
  base: 9,
  stride: 10,
  row: 11,
  lastRow: 12,
  lastColumn: 13,
} as const;

/** The sides between which rows are cleared: places in an array of 64-bit numbers over the same memory. */
export const numberRegister = { left: 8, leftSlope: 9, right: 10, rightSlope: 11 } as const;

/** Words at the bottom that are kept for the registers, and as many 64-bit numbers as they hold. */
export const registers = 32;
export const numberRegisters = registers / 2;

/** The loops. Each reads its job from the registers of the array that it belongs to. */
export interface Kernel {
  /** Shifts the words of one layer onto another. */
  readonly shiftOver: () => void;
  /** Runs along one layer in place, upwards or downwards: what a word gains it hands on. */
  readonly runUp: () => void;
  readonly runDown: () => void;
  /** Sets `met` to 1 where words from `source` to `last` have a bit in common with those from `target`. */
  readonly meet: () => void;
  /** Clears a layer's bits between two sides that move by their slopes from row to row. */
  readonly clearRows: () => void;
  /** Clears the bits from `target` to `last` that are set from `source` on, shifted down by `part`. */
  readonly clearShifted: () => void;
}

/** An array and the number registers over its bottom. */
interface Holder {
  readonly words: Int32Array;
  readonly numbers: Float64Array;
}

/** The loops in plain script, for a holder of the array (which may be replaced by a larger one). */
export function scriptKernel(holder: Holder): Kernel {
  return {
    shiftOver: () => shiftOver(holder.words),
    runUp: () => run(holder.words, 1),
    runDown: () => run(holder.words, -1),
    meet: () => meet(holder.words),
    clearRows: () => clearRows(holder.words, holder.numbers),
    clearShifted: () => clearShifted(holder.words),
  };
}

function shiftOver(words: Int32Array): void {
  const last = words[register.last]!;
  const part = words[register.part]!;
  const back = 31 - part;
  let log = words[register.log]!;
  let source = words[register.source]!;
  let free = words[register.free]!;
  let below = words[source - 1]! >>> 1;
  for (let target = words[register.target]!; target <= last; target++, source++, free++) {
    const here = words[source]!;
    const come = (here << part) | (below >>> back);
    below = here >>> 1;
    if (come === 0) continue;
    const had = words[target]!;
    const fresh = come & words[free]! & ~had;
    if (fresh === 0) continue;
    words[target] = had | fresh;
    words[log] = target;
    words[log + 1] = fresh;
    log += 2;
  }
  words[register.log] = log;
}

function run(words: Int32Array, way: 1 | -1): void {
  const part = words[register.part]!;
  const back = 31 - part;
  const limit = words[register.limit]!;
  const reach = words[register.reach]!;
  let last = words[register.last]!;
  let log = words[register.log]!;
  let source = words[register.source]!;
  let free = words[register.free]!;
  for (let target = words[register.target]!; way * (last - target) >= 0; target += way, source += way, free += way) {
    let all = 0;
    for (;;) {
      const come = (words[source]! << part) | ((words[source - 1]! >>> 1) >>> back);
      const fresh = come & words[free]! & ~words[target]!;
      if (fresh === 0) break;
      words[target]! |= fresh;
      all |= fresh;
    }
    if (all === 0) continue;
    words[log] = target;
    words[log + 1] = all;
    log += 2;
    if (way * (target + reach - last) > 0)
      last = way === 1 ? Math.min(limit, target + reach) : Math.max(limit, target + reach);
  }
  words[register.log] = log;
}

function meet(words: Int32Array): void {
  const last = words[register.last]!;
  let target = words[register.target]!;
  let met = 0;
  for (let source = words[register.source]!; source <= last; source++, target++) {
    if ((words[source]! & words[target]!) === 0) continue;
    met = 1;
    break;
  }
  words[register.met] = met;
}

function clearRows(words: Int32Array, numbers: Float64Array): void {
  const base = words[register.base]!;
  const stride = words[register.stride]!;
  const lastRow = words[register.lastRow]!;
  const lastColumn = words[register.lastColumn]!;
  const leftSlope = numbers[numberRegister.leftSlope]!;
  const rightSlope = numbers[numberRegister.rightSlope]!;
  let left = numbers[numberRegister.left]!;
  let right = numbers[numberRegister.right]!;
  for (let row = words[register.row]!; row <= lastRow; row++) {
    const from = left > 0 ? Math.ceil(left) : 0;
    const to = right < lastColumn ? Math.floor(right) : lastColumn;
    if (from <= to) clearRun(words, base, row * stride + from, row * stride + to);
    left += leftSlope;
    right += rightSlope;
  }
}

/** Clears bits from..to (inclusive) of a layer. */
export function clearRun(words: Int32Array, base: number, from: number, to: number): void {
  const first = base + (from >> 5);
  const last = base + (to >> 5);
  const head = -1 << (from & 31);
  const tail = -1 >>> (31 - (to & 31));
  if (first === last) {
    words[first]! &= ~(head & tail);
    return;
  }
  words[first]! &= ~head;
  for (let word = first + 1; word < last; word++) words[word] = 0;
  words[last]! &= ~tail;
}

function clearShifted(words: Int32Array): void {
  const last = words[register.last]!;
  const part = words[register.part]!;
  let source = words[register.source]!;
  for (let target = words[register.target]!; target <= last; target++, source++) {
    words[target]! &= ~((words[source]! >>> part) | ((words[source + 1]! << 1) << (31 - part)));
  }
}
