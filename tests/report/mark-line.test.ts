// The mark line must never mislead: positions against the linear scale worked out by hand (COMPUTED), and order for any numbers.

import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FoundValue, Wanted } from "../../src/model/finding.ts";
import * as marked from "../../src/report/mark-line.ts";
import { found, wanted } from "./invented-report.ts";

/** The line of a length in metres, or of a bare count. */
const markLine = (value: FoundValue, want: Wanted, page: "ordinary" | "wide" = "ordinary") =>
  marked.markLine(
    {
      found: value,
      wanted: want,
      ...(value.unit === "1" ? { dimension: "count", shown_in: "count" } : { dimension: "length", shown_in: "m" }),
    } as const,
    page,
  );

const atMost = (value: number): Wanted => wanted({ sense: "at_most", value });

/** Value that stands at a column of a line with these ends. */
function valueAt(
  line: { readonly low: string; readonly high: string; readonly marks: string },
  column: number,
): number {
  const low = Number.parseFloat(line.low);
  return low + ((Number.parseFloat(line.high) - low) * column) / (line.marks.length - 1);
}

describe("the mark line", () => {
  // Gate 3.12 m good to 0.05 m, 3.10 m wanted: ends 3.06 and 3.18 m, so 40 columns are 0.12 m: o at 20, T at 13, brackets at 3 and 37.
  it("sets marks where the scale has them", () => {
    const line = markLine(found(3.12, 0.025), wanted({ value: 3.1 }));
    expect(line).toEqual({ low: "3.06", marks: ".  (=========T======o================)  .", high: "3.18 m" });
  });

  it.each([
    ["a doubt too small to show leaves the bare o", found(0.1, 1e-6), wanted({ value: 0.5 }), "o", 1],
    ["a doubt of about a column is still seen", found(0.1, 0.006), wanted({ value: 0.5 }), "(o)", 1],
    ["what is found on what is wanted steps aside", found(1, 0), wanted({ value: 1 }), "oT", 1],
    ["two ends wanted, two marks", found(0.03, 0.001), wanted({ sense: "between", value: [0.025, 0.06] }), "T", 2],
  ])("%s", (_name, value, want, marks, times) => {
    expect(markLine(value, want)?.marks.split(marks)).toHaveLength(times + 1);
  });

  it("cuts a doubt out of all proportion, with arrows, and still shows both marks in order", () => {
    const marks = markLine(found(1, 100), wanted({ value: 1.1 }))?.marks ?? "";
    expect(marks).toMatch(/^<=+o=*T=+>$/);
  });

  it("runs on to the end where the value is only a bound", () => {
    expect(markLine(found(2, 0.05, "m", "at least"), wanted({ value: 1 }))?.marks).toMatch(/T.*\(=*o=+>$/);
    expect(markLine(found(2, 0.05, "m", "at most"), wanted({ value: 3 }))?.marks).toMatch(/^<=+o=*\).*T/);
  });

  it.each([
    ["no number", found(Number.NaN, 0), wanted({ value: 1 })],
    ["a number without end", found(Infinity, 0), wanted({ value: 1 })],
    ["a doubt without end", found(1, Infinity), wanted({ value: 1 })],
    ["other units", found(1, 0, "kg"), wanted({ value: 1 })],
  ])("is left out for %s", (_name, value, want) => {
    expect(markLine(value, want)).toBeNull();
  });

  const numbers = fc.double({ min: -1e4, max: 1e4, noNaN: true });
  it("keeps o and T in their true order and within a column of their true place", () => {
    fc.assert(
      fc.property(
        numbers,
        fc.double({ min: 0, max: 100, noNaN: true }),
        numbers,
        fc.boolean(),
        (value, doubt, target, wide) => {
          const line = markLine(found(value, doubt, "1"), { ...atMost(target), unit: "1" }, wide ? "wide" : "ordinary");
          if (!line) return false;
          const o = line.marks.indexOf("o");
          const t = line.marks.indexOf("T");
          const column = valueAt(line, 1) - valueAt(line, 0);
          const ordered = value === target ? o !== t : value < target ? o < t : t < o;
          return (
            o >= 0 &&
            t >= 0 &&
            ordered &&
            Math.abs(valueAt(line, o) - value) <= column &&
            Math.abs(valueAt(line, t) - target) <= 2 * column
          );
        },
      ),
      { seed: 20261125, numRuns: 2000 },
    );
  });

  it("shows no bracket more than a column and a half off the doubt it stands for", () => {
    fc.assert(
      fc.property(numbers, fc.double({ min: 0.01, max: 100, noNaN: true }), numbers, (value, doubt, target) => {
        const line = markLine(found(value, doubt, "1"), { ...atMost(target), unit: "1" });
        const high = line?.marks.indexOf(")") ?? -1;
        if (!line || high < 0) return true;
        const column = valueAt(line, 1) - valueAt(line, 0);
        return Math.abs(valueAt(line, high) - (value + 2 * doubt)) <= 1.5 * column + 1e-9;
      }),
      { seed: 20261125, numRuns: 2000 },
    );
  });
});
