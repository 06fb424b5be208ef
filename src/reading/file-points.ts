// Points read from a file beside the plan: each by name, on a plane or on the earth, with the line it stands on.

import type { Problem, ProblemCode } from "../model/problem.ts";

export interface FilePoint {
  readonly name: string;
  readonly line: number;
  /** Metres east and north, or degrees of longitude and latitude (WGS 84). */
  readonly at: readonly [number, number];
  readonly on: "plane" | "earth";
  readonly level: number | null;
}

export interface FilePoints {
  readonly points: readonly FilePoint[];
  readonly problems: readonly Problem[];
}

/** What is wrong in a file of points, and where. */
export interface FileFault {
  readonly code: ProblemCode;
  readonly line: number;
  readonly expected: string;
  readonly got: string;
  readonly hint: string;
}

/** More points, or deeper nesting, are not read (a choice: far beyond any plot). */
export const mostPoints = 20_000;
export const deepest = 32;

const nameForm = /^\p{L}[\p{L}\p{M}\p{N}_]*(?: [\p{L}\p{M}\p{N}_]+)*$/u;

/** Puts points and faults together; what has no good name, comes twice or is no place is told of and left out. */
export function gathered(file: string, found: readonly FilePoint[], faults: readonly FileFault[]): FilePoints {
  const names = new Set<string>();
  const told: FileFault[] = [...faults];
  const points = found.slice(0, mostPoints).filter((point) => {
    const fault = faultOf(point, names);
    if (fault !== null) told.push(fault);
    names.add(point.name);
    return fault === null;
  });
  if (found.length > mostPoints)
    told.push({
      code: "file-too-large",
      line: found[mostPoints]?.line ?? 1,
      expected: `at most ${mostPoints} points`,
      got: String(found.length),
      hint: "keep the points that the plan needs",
    });
  return { points, problems: told.map((fault) => ({ ...fault, file, column: 1 })) };
}

function faultOf({ name, line, at, on }: FilePoint, names: ReadonlySet<string>): FileFault | null {
  const got = JSON.stringify(name.slice(0, 60));
  if (!nameForm.test(name))
    return {
      code: "bad-name",
      line,
      expected: "a name that begins with a letter",
      got,
      hint: "name the point in the file, or use prefix",
    };
  if (names.has(name))
    return { code: "name-taken", line, expected: "each point once", got, hint: "give each its own name" };
  const [x, y] = at;
  const placed =
    Number.isFinite(x) && Number.isFinite(y) && (on === "plane" || (Math.abs(x) <= 180 && Math.abs(y) <= 90));
  if (placed) return null;
  const expected = on === "plane" ? "east and north in metres" : "longitude and latitude in degrees";
  return {
    code: "not-a-number",
    line,
    expected,
    got: `point ${got} without a place`,
    hint: "write numbers with a point, not a comma",
  };
}
