// In which order unknowns are eliminated, so that the triangle stays sparse.

/**
 * Order of elimination of `count` nodes by least degree (Tinney and Walker 1967, MEMORY): the node with the
 * fewest neighbours goes first, and its neighbours become neighbours of each other. Ties go to the
 * node that has waited longest, so the order is the same on every machine. `cliques` lists nodes that share an equation.
 */
export function eliminationOrder(count: number, cliques: Iterable<readonly number[]>): number[] {
  const near = neighbours(count, cliques);
  const queue = degreeQueue(near);
  const order: number[] = [];
  for (let node = takeLeast(queue); node >= 0; node = takeLeast(queue)) {
    order.push(node);
    const around = [...near[node]!];
    for (const other of around) {
      const set = near[other]!;
      set.delete(node);
      for (const third of around) if (third !== other) set.add(third);
    }
    near[node]!.clear();
    for (const other of around) move(queue, other, near[other]!.size);
  }
  return order;
}

function neighbours(count: number, cliques: Iterable<readonly number[]>): Set<number>[] {
  const near: Set<number>[] = Array.from({ length: count }, () => new Set());
  for (const clique of cliques) {
    for (const a of clique) for (const b of clique) if (a !== b) near[a]!.add(b);
  }
  return near;
}

interface DegreeQueue {
  readonly byDegree: Set<number>[];
  readonly degree: Int32Array;
  least: number;
}

function degreeQueue(near: readonly Set<number>[]): DegreeQueue {
  const queue: DegreeQueue = { byDegree: [], degree: new Int32Array(near.length), least: 0 };
  for (let d = 0; d <= near.length; d += 1) queue.byDegree.push(new Set());
  near.forEach((set, node) => {
    queue.degree[node] = set.size;
    queue.byDegree[set.size]!.add(node);
  });
  return queue;
}

function move(queue: DegreeQueue, node: number, degree: number): void {
  queue.byDegree[queue.degree[node]!]!.delete(node);
  queue.degree[node] = degree;
  queue.byDegree[degree]!.add(node);
  queue.least = Math.min(queue.least, degree);
}

/** The next node of least degree, or -1 when none is left. Sets keep the order of insertion, which is fixed. */
function takeLeast(queue: DegreeQueue): number {
  while (queue.least < queue.byDegree.length) {
    const set = queue.byDegree[queue.least]!;
    for (const node of set) {
      set.delete(node);
      return node;
    }
    queue.least += 1;
  }
  return -1;
}
