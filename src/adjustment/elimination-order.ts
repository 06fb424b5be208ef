// In which order unknowns are eliminated, so that the triangle stays sparse, and which are eliminated together.

/** Groups of unknowns in order of elimination, bundled: the members of a front are eliminated together. */
export type Fronts = readonly (readonly number[])[];

/** Fronts are bundled up to this many groups even at the price of some stored zeros (method choice, timed). */
const bundle = 3;

/**
 * Order of elimination of `count` groups by least degree (Tinney and Walker 1967, MEMORY): the group with the
 * fewest neighbours goes first, and its neighbours become neighbours of each other. Ties go to the one that has
 * waited longest, so the order is the same on every machine. `cliques` lists groups that share an equation.
 */
export function eliminationFronts(count: number, cliques: Iterable<readonly number[]>): Fronts {
  const near = neighbours(count, cliques);
  const queue = degreeQueue(near);
  const order: number[] = [];
  const later: (readonly number[])[] = Array.from({ length: count }, () => []);
  for (let node = takeLeast(queue); node >= 0; node = takeLeast(queue)) {
    order.push(node);
    const around = [...near[node]!];
    later[node] = around;
    for (const other of around) {
      const set = near[other]!;
      set.delete(node);
      for (const third of around) if (third !== other) set.add(third);
    }
    near[node]!.clear();
    for (const other of around) move(queue, other, near[other]!.size);
  }
  return bundled(order, later);
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

/**
 * Bundle each group with the next that needs it (its parent in the elimination tree) where that costs no zeros,
 * or few, and list the bundles so that children stand before parents and close to them (postorder).
 */
function bundled(order: readonly number[], later: readonly (readonly number[])[]): Fronts {
  const rank = new Int32Array(order.length);
  order.forEach((node, place) => (rank[node] = place));
  const parent = order.map((_, node) => later[node]!.reduce((p, q) => (p < 0 || rank[q]! < rank[p]! ? q : p), -1));
  const home = Int32Array.from(order, (_, node) => node);
  const members = order.map((_, node) => [node]);
  for (let place = order.length - 1; place >= 0; place -= 1) {
    const node = order[place]!;
    const above = parent[node]!;
    if (above < 0) continue;
    const head = home[above]!;
    const perfect =
      later[node]!.length === later[head]!.length + members[head]!.length && above === members[head]!.at(-1);
    if (!perfect && members[head]!.length >= bundle) continue;
    home[node] = head;
    members[head]!.push(node);
  }
  return postorder(order, { parent, home, members });
}

interface Bundles {
  readonly parent: readonly number[];
  readonly home: Int32Array;
  /** Members of a bundle under its head, last eliminated first. */
  readonly members: readonly number[][];
}

function postorder(order: readonly number[], { parent, home, members }: Bundles): Fronts {
  const below: number[][] = order.map(() => []);
  const stack: number[] = [];
  for (const head of order) {
    if (home[head] !== head) continue;
    if (parent[head]! < 0) stack.push(head);
    else below[home[parent[head]!]!]!.push(head);
  }
  const fronts: number[][] = [];
  for (let head = stack.pop(); head !== undefined; head = stack.pop()) {
    fronts.push(members[head]!);
    stack.push(...below[head]!);
  }
  return fronts.reverse().map((front) => front.toReversed());
}
