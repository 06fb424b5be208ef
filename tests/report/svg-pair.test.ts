// A manoeuvre without room beside what would let it go: two panels at one scale, true to it, for findings that have them.

import { describe, expect, it } from "vitest";
import type { Point, Witness } from "../../src/model/reading.ts";
import { drawing, pairsMarkup } from "../../src/report/svg.ts";
import { smallPicture } from "./invented-picture.ts";
import { found, invented, quietReport, wanted } from "./invented-report.ts";

const box = (west: number, south: number, east: number, north: number): readonly Point[] => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
];

/** A path over ten metres by five, as the search of a manoeuvre shows it. */
const path: readonly Witness[] = [
  { part: "found", form: "line", points: [[4, 5], [4, 5.2]], label: "tightest" }, // prettier-ignore
  { part: "thing", form: "outline", points: box(1, 1, 5, 3) },
  { part: "wanted", form: "outline", points: box(0, 0, 10, 5) },
  { part: "thing", form: "outline", points: box(0, 1, 4, 3), label: "move 1" },
  { part: "thing", form: "outline", points: box(6, 1, 10, 3) },
  { part: "thing", form: "line", points: [[0, 1], [10, 1]] }, // prettier-ignore
];
const strip: Witness = { part: "found", form: "outline", points: box(10, 0, 11, 5), label: "1.00 m more" };
const finding = invented({
  rule: "a/b",
  verdict: "not-met",
  sentence: "The cart has no room.",
  stages: [smallPicture.stage],
  found: found(-0.14, 0.02),
  wanted: wanted({ value: 0.3 }),
  witness: path,
  remedies: [
    {
      words: "Carry it out by 1.00 m.",
      short: 0.9,
      sure: 1,
      unit: "m",
      would_then_fail: [],
      witness: [strip, ...path],
    },
  ],
});
const report = { ...quietReport, findings: [finding] };

describe("a finding with a change that can be drawn", () => {
  const [sheet] = pairsMarkup(smallPicture, report);
  const markup = sheet?.markup ?? "";
  it("is drawn twice, with what is short and with the change in words", () => {
    expect(markup).toContain(">As drawn<");
    expect(markup).toContain(">0.44 m short of the room that is wanted all round.<"); // 0.30 - (-0.14)
    expect(markup).toContain(">0.14 m too little<");
    expect(markup).toContain(">With one change<");
    expect(markup).toContain(">Carry it out by 1.00 m.<");
  });
  it("is drawn at one scale, true to it", () => {
    const scale = Number(/1 : (\d+)</.exec(markup)?.[1]);
    const widths = [...markup.matchAll(/fill="#cfc6ad"[^>]*/g)].length;
    expect(widths).toBe(2);
    const [, west, east] =
      /<path d="M([\d.]+),[\d.]+L([\d.]+),[\d.]+L[\d.]+,[\d.]+L[\d.]+,[\d.]+Z" fill="#cfc6ad"/.exec(markup) ?? [];
    expect(Number(east) - Number(west)).toBeCloseTo(10_000 / scale, 1);
  });
  it("stands below the plan in the same file, and the plan keeps its size", () => {
    const svg = drawing(smallPicture, report);
    expect(svg).toContain(">As drawn<");
    expect(svg).not.toContain("NaN");
    expect(drawing(smallPicture, { ...report, findings: [{ ...finding, remedies: [] }] })).not.toContain(">As drawn<");
  });
});
