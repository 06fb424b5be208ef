// Names of the files that a plan includes, for the caller to fetch.

import type { SourceText } from "../reading/source-text.ts";

/** The `include` list as written: file names beside the plan. */
export function wantedIncludes(source: SourceText): readonly string[] {
  const data = source.data;
  if (typeof data !== "object" || data === null || Array.isArray(data)) return [];
  const list = (data as Readonly<Record<string, unknown>>)["include"];
  const names = Array.isArray(list) ? list : [list];
  return names.filter((name): name is string => typeof name === "string");
}
