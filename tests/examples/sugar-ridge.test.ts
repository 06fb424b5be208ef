// Sugar Ridge: every fault that was put into the plan is found with the value of a sum by hand, and gone in the twin.
// All sums are COMPUTED here from the plan's own numbers, in feet; 1 ft = 0.3048 m by definition.

import { describe, expect, it } from "vitest";
import { findingsOf, type Fault, itFindsAndMends } from "./scene.ts";

const ft = 0.3048;

const faults: readonly Fault[] = [
  {
    what: "the hill drive, too steep for loose stone",
    rule: "surfaces/too-steep-for-surface",
    of: ["hill drive"],
    // 108.80 - 100.80 = 8.00 ft in 50 ft: 16 %. Wanted at most 15 %.
    faulty: { verdict: "not-met", value: 0.16, within: 2e-4, wanted: 0.15 },
    // 105.30 - 100.80 = 4.50 ft in 50 ft: 9 %.
    mended: { verdict: "met", value: 0.09, within: 2e-4, wanted: 0.15 },
  },
  {
    what: "the drive, in the root zone of the line maple",
    rule: "trees/works-in-root-zone",
    of: ["hill drive", "line maple"],
    // edge 36 - 14 / 2 = 29 ft, maple at 10 ft: 19 ft. Wanted a foot for each of 24 inches: 24 ft.
    faulty: { verdict: "not-met", value: 19 * ft, wanted: 24 * ft },
    // edge 54.5 - 7 = 47.5 ft: 37.5 ft.
    mended: { verdict: "met", value: 37.5 * ft, wanted: 24 * ft },
  },
  {
    what: "the loading way, too narrow",
    rule: "access/passage-too-narrow",
    of: ["loading way"],
    // 100.5 - 90 = 10.5 ft = 3.200 m for a tractor that wants 3.50.
    faulty: { verdict: "not-met", value: 10.5 * ft, wanted: 3.5 },
    // 104.5 - 90 = 14.5 ft.
    mended: { verdict: "met", value: 14.5 * ft, wanted: 3.5 },
  },
  {
    what: "the deer fence, jumped from the pasture wall",
    rule: "fences/jumped-in-from-stand",
    of: ["deer fence", "pasture wall"],
    // gap 165 - (160 + 1) = 4 ft; D = 8 - 3 = 5 ft; (5 + sqrt(25 + 16)) / 2 = 5.7016 ft = 1.738 m. Wanted 1.80.
    faulty: { verdict: "not-met", value: 5.7016 * ft, within: 5e-4, wanted: 1.8 },
    // gap 172 - 161 = 11 ft; (5 + sqrt(25 + 121)) / 2 = 8.5415 ft.
    mended: { verdict: "no-fault-seen", value: 8.5415 * ft, within: 5e-4, wanted: 1.8 },
  },
];

itFindsAndMends("sugar-ridge", faults);

describe("the store drain", () => {
  const of = ["store drain, store outlet to septic tank"];
  it("is judged by both codes that are adopted", () => {
    // 106.00 - 105.70 = 0.30 ft in 36 ft: 1 in 120. Both codes want 1/8 in per ft, which is 1 in 96.
    const told = findingsOf("sugar-ridge", "drains/too-flat", of);
    expect(told.map((one) => one.verdict)).toEqual(["not-met", "not-met"]);
    for (const one of told) expect(one.found?.value).toBeCloseTo(1 / 120, 5);
    for (const one of told) expect(one.wanted?.value).toBeCloseTo(1 / 96, 5);
    expect(new Set(told.map((one) => one.wanted?.where))).toEqual(new Set(["ipc", "irc"]));
  });
  it("is met by both in the twin", () => {
    // 106.00 - 105.40 = 0.60 ft in 36 ft: 1 in 60.
    const told = findingsOf("sugar-ridge-mended", "drains/too-flat", of);
    expect(told.map((one) => one.verdict)).toEqual(["met", "met"]);
    for (const one of told) expect(one.found?.value).toBeCloseTo(1 / 60, 5);
  });
});
