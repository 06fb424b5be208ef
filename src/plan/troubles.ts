// Gathers the problems met while a plan is resolved, each at its place in the file.

import type { Place, Position } from "../model/path.ts";
import type { Problem, ProblemCode } from "../model/problem.ts";
import { isDamaged, type Node } from "./node.ts";

/** What is wrong, in words. `part` says whether the key or the value of the place is meant. */
export interface Trouble {
  readonly code: ProblemCode;
  readonly expected: string;
  readonly got: string;
  readonly hint: string;
  readonly part?: "key" | "value";
}

export type Locate = (place: Place, part: "key" | "value") => Position;

export interface Troubles {
  readonly report: (at: Node | Place, trouble: Trouble) => null;
  readonly list: () => readonly Problem[];
}

/** An empty list. A second problem of the same code at the same place with the same words is not repeated. */
export function openTroubles(locate: Locate): Troubles {
  const found: Problem[] = [];
  const seen = new Set<string>();
  const report = (at: Node | Place, trouble: Trouble): null => {
    const place = "place" in at ? at.place : at;
    // What seems to be missing where something is passed over has been told of already.
    if (trouble.code === "missing-key" && "place" in at && isDamaged(at)) return null;
    const { line, column } = locate(place, trouble.part ?? "value");
    const key = `${trouble.code} ${place.file} ${line} ${column} ${trouble.got}`;
    if (seen.has(key)) return null;
    seen.add(key);
    const { code, expected, got, hint } = trouble;
    found.push({ code, file: place.file, line, column, expected, got, hint });
    return null;
  };
  return { report, list: () => found };
}

/** A piece of data in words, for `got`: short, on one line. */
export function wordsOf(data: unknown): string {
  if (data === null || data === undefined) return "nothing";
  if (typeof data === "string") return `"${data.length > 60 ? `${data.slice(0, 57)}...` : data}"`;
  if (typeof data === "number" || typeof data === "boolean") return String(data);
  if (Array.isArray(data)) return `a list of ${data.length}`;
  const keys = Object.keys(data);
  return keys.length === 0
    ? "an empty group"
    : `a group with ${keys.slice(0, 4).join(", ")}${keys.length > 4 ? ", ..." : ""}`;
}
