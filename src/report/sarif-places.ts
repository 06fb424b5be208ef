// Where a SARIF result stands: in a file, and in the plan by the names of its features.

import type { PlaceInFile } from "../model/finding.ts";
import { clean } from "./clean.ts";

/** Each other place once; a SARIF list of related places holds no two alike. */
export function distinctPlaces(first: PlaceInFile | undefined, others: readonly PlaceInFile[]): readonly PlaceInFile[] {
  const key = (at: PlaceInFile) => `${at.file}\n${at.path}\n${at.line}\n${at.column}`;
  const seen = new Set(first ? [key(first)] : []);
  return others.filter((at) => !seen.has(key(at)) && seen.add(key(at)));
}

/** A SARIF location: the place in the file, and what it is called in the plan. */
export function location(at: PlaceInFile | undefined, more: { readonly logicalLocations?: readonly object[] } = {}) {
  const logicalLocations = more.logicalLocations ?? [];
  const path = at && at.path !== "" ? [{ fullyQualifiedName: clean(at.path), kind: "member" }] : [];
  const all = [...logicalLocations, ...path];
  return {
    ...(at ? { physicalLocation: physical(at) } : {}),
    ...(all.length === 0 ? {} : { logicalLocations: all }),
  };
}

/** A SARIF physical location; without a region where the line is not known. */
export function physical({
  file,
  line,
  column,
}: {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}) {
  const region = line >= 1 ? { region: { startLine: line, ...(column >= 1 ? { startColumn: column } : {}) } } : {};
  return { artifactLocation: { uri: addressOf(file) }, ...region };
}

/** A file name as a relative reference, or as a `file:` address where it is absolute (RFC 3986). */
export function addressOf(file: string): string {
  const whole = file.replace(/[\ud800-\udfff]/gu, "\ufffd").replaceAll("\\", "/");
  const encoded = whole.split("/").map(encodeURIComponent).join("/");
  if (/^[A-Za-z]:\//.test(whole)) return `file:///${whole.slice(0, 2)}${encoded.slice(4)}`;
  return whole.startsWith("/") ? `file://${encoded}` : encoded;
}
