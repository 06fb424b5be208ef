// A motion of a train over its lattice: which layer leads to which, by how many bits, and what must be free on the way.

import type { TrainLattice } from "./train-lattice.ts";

/** One way to move: from each layer to at most one other, by a shift in bits, and from there back. */
export interface TrainMotion {
  /** Layer that each layer leads to, and that each is led to from; -1 where there is none. */
  readonly to: Int32Array;
  readonly from: Int32Array;
  /** Bits by which the way from a layer shifts. */
  readonly shift: Int32Array;
  /** Poses on the way from a layer that must be free too: layer and bits from the pose before, pair after pair. */
  readonly middles: Middles;
  /** Curvature of the towing vehicle's way from a layer (1/m, the same both ways), and its length, m. */
  readonly curvature: Float64Array;
  readonly length: Float64Array;
  /** 1 forwards, -1 in reverse. */
  readonly gear: 1 | -1;
  /** Whether it keeps the hitch angle, or towards which side it takes it. */
  readonly bends: -1 | 0 | 1;
}

/** Pairs of layer and bits; those of a layer lie from `from[layer]` on, `count[layer]` numbers of them. */
export interface Middles {
  readonly from: Int32Array;
  readonly count: Int32Array;
  readonly pairs: number[];
}

/** A step from node to node. */
export interface Edge {
  readonly from: LatticeNode;
  readonly to: LatticeNode;
  readonly middles: readonly LatticeNode[];
  readonly curvature: number;
  readonly length: number;
}

/** A layer, and a cell of it counted from some place. */
export interface LatticeNode {
  readonly layer: number;
  readonly x: number;
  readonly y: number;
}

/** Adds a step to a motion. */
export function addEdge({ places }: TrainLattice, motion: TrainMotion, edge: Edge): void {
  const { from, to, middles } = edge;
  const layer = from.layer;
  motion.to[layer] = to.layer;
  motion.from[to.layer] = layer;
  motion.shift[layer] = (to.y - from.y) * places.stride + to.x - from.x;
  motion.curvature[layer] = edge.curvature;
  motion.length[layer] = edge.length;
  motion.middles.from[layer] = motion.middles.pairs.length;
  motion.middles.count[layer] = 2 * middles.length;
  let before = from;
  for (const node of middles) {
    motion.middles.pairs.push(node.layer, (node.y - before.y) * places.stride + node.x - before.x);
    before = node;
  }
}

function emptyMiddles(count: number): Middles {
  return { from: new Int32Array(count), count: new Int32Array(count), pairs: [] };
}

/** A motion of no steps yet. */
export function emptyMotion(lattice: TrainLattice, bends: -1 | 0 | 1): TrainMotion {
  const count = lattice.layers.headings;
  return {
    to: new Int32Array(count).fill(-1),
    from: new Int32Array(count).fill(-1),
    shift: new Int32Array(count),
    middles: emptyMiddles(count),
    curvature: new Float64Array(count),
    length: new Float64Array(count),
    gear: 1,
    bends,
  };
}

/** A motion the other way round. */
export function undone(motion: TrainMotion): TrainMotion {
  const { to, from } = motion;
  const shift = new Int32Array(to.length);
  const middles = emptyMiddles(to.length);
  const [curvature, length] = [new Float64Array(to.length), new Float64Array(to.length)];
  for (const [layer, target] of to.entries()) {
    if (target < 0) continue;
    shift[target] = -motion.shift[layer]!;
    turnRound(motion, layer, middles);
    curvature[target] = motion.curvature[layer]!;
    length[target] = motion.length[layer]!;
  }
  const bends = (0 - motion.bends) as -1 | 0 | 1;
  return { to: from, from: to, shift, middles, curvature, length, gear: motion.gear === 1 ? -1 : 1, bends };
}

/** Adds the poses on the way from a layer as they are passed the other way round. */
function turnRound({ middles, to, shift }: TrainMotion, layer: number, back: Middles): void {
  const { pairs } = middles;
  const [from, count] = [middles.from[layer]!, middles.count[layer]!];
  const target = to[layer]!;
  back.from[target] = back.pairs.length;
  back.count[target] = count;
  let step = -shift[layer]!;
  for (let i = from; i < from + count; i += 2) step += pairs[i + 1]!;
  for (let i = from + count - 2; i >= from; i -= 2) {
    back.pairs.push(pairs[i]!, step);
    step = -pairs[i + 1]!;
  }
}
