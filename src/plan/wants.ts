// Short lists of words at the head of a plan: the files that it includes, the papers that were looked at.

import type { SourceText } from "../reading/source-text.ts";
import { child, textOf } from "./node.ts";
import { pointFileNodes } from "./point-files.ts";

/** The `include` list as written, then the files of points: file names beside the plan. */
export function wantedIncludes(source: SourceText): readonly string[] {
  const points = pointFileNodes(source).flatMap((node) => textOf(child(node, "file")) ?? []);
  return [...wordsUnder(source, "include"), ...points];
}

/** The `papers` list as written. */
export function papersSeen(source: SourceText): readonly string[] {
  return wordsUnder(source, "papers");
}

function wordsUnder(source: SourceText, key: string): readonly string[] {
  const data = source.data;
  if (typeof data !== "object" || data === null || Array.isArray(data)) return [];
  const list = (data as Readonly<Record<string, unknown>>)[key];
  const names = Array.isArray(list) ? list : [list];
  return names.filter((name): name is string => typeof name === "string");
}
