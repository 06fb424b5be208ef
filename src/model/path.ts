// A place in a file, as the keys and indexes that lead to it. Lines and columns are looked up only when printed.

/** Keys and indexes from the root of a file to a node, e.g. `["fences", "goat fence", "height"]`. */
export type Path = readonly (string | number)[];

/** A path with the file it belongs to. */
export interface Place {
  readonly file: string;
  readonly path: Path;
}

/** Line and column, both counted from 1. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Words for a path: `fences/goat fence/height`. Names hold no slash, so this can be taken apart again. */
export function pathText(path: Path): string {
  return path.map(String).join("/");
}
