// Knocknabrack: every fault that was put into the plan is found with the value of a sum by hand, and gone in the twin.
// All sums are COMPUTED here from the plan's own numbers; the limits are those that the cards name.

import { expect, it } from "vitest";
import { findingsOf, type Fault, itFindsAndMends } from "./scene.ts";

const faults: readonly Fault[] = [
  {
    what: "the percolation area, up-hill of the borehole",
    rule: "separation/field-near-well",
    of: ["percolation area", "new borehole"],
    // corner (14.00, 58.00), borehole (50.00, 26.25): sqrt(36.00^2 + 31.75^2) = sqrt(2304.06) = 48.00. Winter water
    // 30.10 stands 4.10 above the borehole's 26.00, so 60 is wanted. The tie to C pulls the borehole by 2 mm.
    faulty: { verdict: "not-met", value: 48, wanted: 60 },
    // borehole (66.00, 12.00): sqrt(52.00^2 + 46.00^2) = sqrt(4820) = 69.43. A screen: met is distance only.
    mended: { verdict: "no-fault-seen", value: 69.43, within: 0.01, wanted: 60 },
  },
  {
    what: "the pump trench, entered and not held",
    rule: "works/trench-not-supported",
    of: ["pump trench"],
    faulty: { verdict: "not-met", value: 1.6, wanted: 0 },
    mended: "does not bear",
  },
  {
    what: "the spoil, too near the edge",
    rule: "works/spoil-at-edge",
    of: ["pump trench"],
    faulty: { verdict: "not-met", value: 0.3, wanted: 0.6 },
    mended: { verdict: "no-fault-seen", value: 1, wanted: 0.6 },
  },
  {
    what: "the tanker way, too narrow",
    rule: "access/passage-too-narrow",
    of: ["tanker way"],
    // bin's middle 43.20 less half of 2.40, less the parlour's wall at 38.00: 42.00 - 38.00 = 4.00. Wanted 4.50.
    faulty: { verdict: "not-met", value: 4, wanted: 4.5 },
    // 45.80 - 1.20 - 38.00 = 6.60.
    mended: { verdict: "met", value: 6.6, wanted: 4.5 },
  },
  {
    what: "the calf paddock, jumped from the haggard wall",
    rule: "fences/jumped-out-from-stand",
    of: ["calf paddock", "haggard wall"],
    // gap 50.00 - 0.50 / 2 - 48.80 = 0.95; D = 1.25 - 0.80 = 0.45; (0.45 + sqrt(0.2025 + 0.9025)) / 2 = 0.7506.
    faulty: { verdict: "not-met", value: 0.7506, within: 5e-4, wanted: 1 },
    // gap 49.75 - 46.60 = 3.15; (0.45 + sqrt(0.2025 + 9.9225)) / 2 = (0.45 + 3.1820) / 2 = 1.8160.
    mended: { verdict: "no-fault-seen", value: 1.816, within: 5e-4, wanted: 1 },
  },
  {
    what: "the calf shed, in the root zone of the road ash",
    rule: "trees/works-in-root-zone",
    of: ["calf shed", "road ash"],
    // corner (56.00, 43.00), ash (60.20, 48.60): 4.20 and 5.60 make 7.00. Wanted 12 x 0.640 = 7.68.
    faulty: { verdict: "not-met", value: 7, wanted: 7.68 },
    // corner (55.00, 42.00): sqrt(5.20^2 + 6.60^2) = sqrt(70.60) = 8.402.
    mended: { verdict: "met", value: 8.402, wanted: 7.68 },
  },
  {
    what: "shale in which pyrite was seen",
    rule: "materials/suspect-pieces",
    of: [],
    faulty: { verdict: "not-met", value: 0 },
    mended: { verdict: "met", value: 1 },
  },
  {
    what: "the west hedge, cut in May",
    rule: "works/clears-in-nesting-months",
    of: ["cut the west hedge"],
    // months of 1 March to 31 August among [5]: one; among [10]: none.
    faulty: { verdict: "not-met", value: 1, wanted: 0 },
    mended: { verdict: "met", value: 0, wanted: 0 },
  },
];

itFindsAndMends("knocknabrack", faults);

it("asks where the shale comes from, and has the answer in the twin", () => {
  const [asked] = findingsOf("knocknabrack", "materials/origin-not-known", ["shale for the yard"]);
  expect(asked?.verdict).toBe("not-given");
  const [answered] = findingsOf("knocknabrack-mended", "materials/origin-not-known", ["stone for the yard"]);
  expect(answered?.verdict).toBe("met");
});

it("takes the council's letter where no figure is published", () => {
  const of = ["house tank", "new borehole"];
  expect(findingsOf("knocknabrack", "separation/tank-near-well", of)[0]?.reason).toBe("no-limit-here");
  const [told] = findingsOf("knocknabrack-mended", "separation/tank-near-well", of);
  // tank (8.00, 48.00), borehole (66.00, 12.00): sqrt(58^2 + 36^2) = sqrt(4660) = 68.26. Wanted by letter: 30.
  expect(told?.verdict).toBe("no-fault-seen");
  expect(told?.found?.value).toBeCloseTo(68.26, 1);
  expect(told?.wanted?.value).toBe(30);
});
