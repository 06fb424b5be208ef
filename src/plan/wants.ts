// Short lists of words at the head of a plan: the files that it includes, the papers that were looked at.

import type { SourceText } from "../reading/source-text.ts";
import { child, textOf } from "./node.ts";
import { pointFileNodes } from "./point-files.ts";

/** The `include` list as written, then the files of points: file names beside the plan. */
export function wantedIncludes(source: SourceText): readonly string[] {
  const points = pointFileNodes(source).flatMap((node) => textOf(child(node, "file")) ?? []);
  return [...wordsUnder(source, "include"), ...points].slice(0, mostIncludes);
}

/** More files than the schema allows a plan to include are not fetched. */
const mostIncludes = 200;

/** The `papers` list as written. */
export function papersSeen(source: SourceText): readonly string[] {
  return wordsUnder(source, "papers");
}

/** Kinds that somebody builds: of these it matters whether they stand already. */
const built = [
  "buildings",
  "surfaces",
  "walls",
  "fences",
  "gates",
  "drains",
  "ramps",
  "steps",
  "excavations",
  "soakaways",
  "drainage_fields",
  "septic_tanks",
  "tanks",
];
const mostNamed = 6;

/** What is taken to stand already because the plan gives it neither `from` nor `existing`, in words: one line or none. */
export function standingUnsaid(source: SourceText): readonly string[] {
  const root = source.data as Readonly<Record<string, unknown>> | null;
  const names = built.flatMap((kind) => {
    const features = root && typeof root === "object" && !Array.isArray(root) ? root[kind] : null;
    return typeof features === "object" && features !== null
      ? Object.entries(features)
          .filter(([, one]) => isUnsaid(one))
          .map(([name]) => name)
      : [];
  });
  if (names.length === 0) return [];
  const more = names.length > mostNamed ? ` and ${names.length - mostNamed} more` : "";
  const list = names
    .slice(0, mostNamed)
    .map((name) => `"${name}"`)
    .join(", ");
  return [
    `taken to stand already where the plan gives neither existing nor from, and asked about only where it matters: ${list}${more}`,
  ];
}

function isUnsaid(one: unknown): boolean {
  return typeof one === "object" && one !== null && !("from" in one) && !("existing" in one);
}

function wordsUnder(source: SourceText, key: string): readonly string[] {
  const data = source.data;
  if (typeof data !== "object" || data === null || Array.isArray(data)) return [];
  const list = (data as Readonly<Record<string, unknown>>)[key];
  const names = Array.isArray(list) ? list : [list];
  return names.filter((name): name is string => typeof name === "string");
}
