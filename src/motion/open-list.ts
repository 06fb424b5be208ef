// The open list of a best-first search: items by least key, ties by the earlier number, so that runs repeat exactly.

/** A binary heap of item numbers by key. */
export interface OpenList {
  readonly keys: number[];
  readonly items: number[];
}

export function newOpenList(): OpenList {
  return { keys: [], items: [] };
}

/** Adds an item. */
export function push(list: OpenList, key: number, item: number): void {
  const { keys, items } = list;
  let at = keys.length;
  keys.push(key);
  items.push(item);
  while (at > 0) {
    const above = (at - 1) >> 1;
    if (!before(list, at, above)) return;
    swap(list, at, above);
    at = above;
  }
}

/** Takes the item of least key; undefined where the list is empty. */
export function pop(list: OpenList): number | undefined {
  const { keys, items } = list;
  const first = items[0];
  const lastKey = keys.pop();
  const lastItem = items.pop();
  if (lastKey === undefined || lastItem === undefined || keys.length === 0) return first;
  keys[0] = lastKey;
  items[0] = lastItem;
  for (let at = 0; ;) {
    let least = at;
    for (const below of [2 * at + 1, 2 * at + 2]) {
      if (below < keys.length && before(list, below, least)) least = below;
    }
    if (least === at) return first;
    swap(list, at, least);
    at = least;
  }
}

function before({ keys, items }: OpenList, a: number, b: number): boolean {
  const apart = keys[a]! - keys[b]!;
  return apart < 0 || (apart === 0 && items[a]! < items[b]!);
}

function swap({ keys, items }: OpenList, a: number, b: number): void {
  [keys[a], keys[b]] = [keys[b]!, keys[a]!];
  [items[a], items[b]] = [items[b]!, items[a]!];
}
