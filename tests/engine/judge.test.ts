// Verdicts around a limit, and probabilities against the published examples of JCGM 106.

import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { describe, expect, it } from "vitest";
import { judge, oneSided, slack } from "../../src/engine/judge.ts";

/** A limit from below at 1.20 with a reading and its standard uncertainty. */
const against = (reading: number, u: number, limit = 1.2) => ({ inside: reading - limit, u, size: reading });

describe("seven points around a limit, at least 1.20, u 0.01", () => {
  const k = oneSided.usual * 0.01;
  const rows: readonly (readonly [string, number, string])[] = [
    ["well below", 1.18, "not-met"],
    ["just on the failing edge", 1.2 - k, "not-met"],
    ["just inside the failing edge", 1.2 - k + 1e-6, "undecided"],
    ["on the limit", 1.2, "undecided"],
    ["just short of the passing edge", 1.2 + k - 1e-6, "undecided"],
    ["on the passing edge", 1.2 + k, "met"],
    ["well above", 1.24, "met"],
  ];
  it.each(rows)("%s", (_, reading, verdict) => {
    expect(judge(against(reading, 0.01), "damage").verdict).toBe(verdict);
  });
});

describe("without doubt it is a plain comparison with slack", () => {
  it("takes a limit that is met but for the last binary digit", () => {
    expect(judge({ inside: 0.1 + 0.2 - 0.3, u: 0, size: 0.3 }, "damage").verdict).toBe("met");
    expect(judge({ inside: 0.3 - 0.1 - 0.2, u: 0, size: 0.3 }, "damage").verdict).toBe("met");
    expect(judge({ inside: -2 * slack, u: 0, size: 1 }, "damage").verdict).toBe("not-met");
  });
});

describe("safety asks for 0.999", () => {
  it("is undecided between 1.645 u and 3.09 u", () => {
    expect(judge(against(1.22, 0.01), "damage").verdict).toBe("met");
    expect(judge(against(1.22, 0.01), "safety").verdict).toBe("undecided");
    expect(judge(against(1.2 + oneSided.safety * 0.01, 0.01), "safety").verdict).toBe("met");
  });
});

describe("a band", () => {
  const inBand = (reading: number, u: number) =>
    judge({ inside: reading - 2.5, other: 6 - reading, u, size: reading }, "damage");
  it("is met in the middle, not outside, and undecided at an edge", () => {
    expect(inBand(4, 0.3).verdict).toBe("met");
    expect(inBand(2.5, 0.3).verdict).toBe("undecided");
    expect(inBand(1.5, 0.3).verdict).toBe("not-met");
    expect(inBand(7, 0.3).verdict).toBe("not-met");
  });
  it("can never be met where the doubt is wider than the band", () => {
    expect(inBand(4.25, 3).verdict).toBe("undecided");
  });
});

interface PublishedRow {
  readonly id: string;
  readonly y: number;
  readonly u: number;
  readonly upper?: number;
  readonly lower?: number;
  readonly p: number;
}
interface Table {
  readonly published: { readonly tolerance: number; readonly rows: readonly PublishedRow[] };
  readonly gradient: {
    readonly upper: number;
    readonly u: number;
    readonly tolerance: number;
    readonly rows: readonly { readonly y: number; readonly p: number; readonly at_95: string }[];
  };
}

describe("published probabilities of conformity (JCGM 106:2012, MEMORY)", () => {
  const table = parse(readFileSync(new URL("../tables/conformity.jcgm-106.yaml", import.meta.url), "utf8")) as Table;
  it.each(table.published.rows)("$id", (row) => {
    const inside = row.upper === undefined ? row.y - (row.lower ?? 0) : row.upper - row.y;
    const judged = judge({ inside, u: row.u, size: row.y }, "damage");
    expect(Math.abs(judged.probability - row.p)).toBeLessThanOrEqual(table.published.tolerance);
  });
  it.each(table.gradient.rows)("a gradient of $y % against 12 %", (row) => {
    const judged = judge({ inside: table.gradient.upper - row.y, u: table.gradient.u, size: row.y }, "damage");
    expect(Math.abs(judged.probability - row.p)).toBeLessThanOrEqual(table.gradient.tolerance);
    expect(judged.verdict).toBe(row.at_95);
  });
});
