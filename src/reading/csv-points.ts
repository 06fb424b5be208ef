// Points from CSV: a head line, a row for each point, columns by their names.

import Papa from "papaparse";
import { type FileFault, type FilePoint, type FilePoints, gathered, mostPoints } from "./file-points.ts";

/** Names of the columns as the plan gives them; usual ones where it does not. */
export interface CsvColumns {
  readonly name?: string;
  readonly east?: string;
  readonly north?: string;
  readonly level?: string;
}

/** Heads that are understood without being told, in small letters. */
const usual: Readonly<Record<keyof CsvColumns, readonly string[]>> = {
  name: ["name", "peg", "point", "station", "id"],
  east: ["east", "easting", "e"],
  north: ["north", "northing", "n"],
  level: ["level", "rl", "height", "z"],
};

/** Reads points in metres. A decimal comma is not guessed at: it is no number and is told of. */
export function csvPoints(file: string, text: string, columns: CsvColumns): FilePoints {
  const { data, meta, errors } = Papa.parse<Readonly<Record<string, string>>>(text.replace(/^\uFEFF/, ""), {
    header: true,
    skipEmptyLines: true,
    preview: mostPoints + 1,
  });
  const heads = meta.fields ?? [];
  const headOf = (key: keyof CsvColumns) =>
    heads.find((head) =>
      columns[key] === undefined ? usual[key].includes(head.trim().toLowerCase()) : head === columns[key],
    );
  const [name, east, north, level] = (["name", "east", "north", "level"] as const).map(headOf);
  if (name === undefined || east === undefined || north === undefined) return gathered(file, [], [missingHead(heads)]);
  const faults = errors
    .filter(({ code }) => code !== "UndetectableDelimiter")
    .map(({ message, row }): FileFault => ({
      code: "wrong-type",
      line: (row ?? 0) + 2,
      expected: "rows with as many fields as the head",
      got: message,
      hint: "look at the quotes and the separators of this row",
    }));
  const points = data.map((row, k): FilePoint => ({
    name: (row[name] ?? "").trim(),
    line: k + 2,
    at: [numberIn(row[east]), numberIn(row[north])],
    on: "plane",
    level: level === undefined || (row[level] ?? "").trim() === "" ? null : numberIn(row[level]),
  }));
  return gathered(file, points, faults);
}

function missingHead(heads: readonly string[]): FileFault {
  return {
    code: "missing-key",
    line: 1,
    expected: "a head line with the columns name, east and north",
    got: heads.slice(0, 8).join(", ") || "an empty file",
    hint: "name the columns in the plan: {file: pegs.csv, name: peg, east: E, north: N}",
  };
}

/** A plain decimal number; NaN for anything else, so that 12,5 is never taken for 12 or 125. */
function numberIn(text: string | undefined): number {
  const plain = (text ?? "").trim();
  return /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
}
