// Tansy Bank: every fault that was put into the plan is found with the value of a sum by hand, or within the bracket of the
// search, and gone in the twin. All sums are COMPUTED here from the plan's own numbers; the limits are those of the cards.

import { describe, expect, it } from "vitest";
import { printed } from "../../src/index.ts";
import { type Fault, findingsOf, inspectionOf, itFindsAndMends } from "./scene.ts";

const faults: readonly Fault[] = [
  {
    what: "the blocks, which come before the yard is made",
    rule: "access/no-room-to-turn",
    of: ["blocks come"],
    // The drive alone is 4.00 m wide: the search (COMPUTED) finds no way even for a lorry 0.8 m slimmer all round.
    faulty: { verdict: "not-met", value: -0.5, within: 0.1, wanted: 0.3 },
    mended: { verdict: "met", value: 0.56, within: 0.06, wanted: 0.3 },
  },
  {
    what: "the feed lorry, which has too little room on the finished yard",
    rule: "access/no-room-to-turn",
    of: ["feed comes"],
    // The search on the 5 cm lattice (COMPUTED), whose bracket is 5 cm wide.
    faulty: { verdict: "not-met", value: 0.09, within: 0.05, wanted: 0.3 },
    mended: { verdict: "met", value: 0.56, within: 0.06, wanted: 0.3 },
  },
  {
    what: "the view from the new gate, cut short by the lane wall",
    rule: "access/cannot-see",
    of: ["drive gate", "lane"],
    // Gate's middle at run 10.30, the wall ends at 12.60 and 8.00: 2.30 along. Its face lies 1.60 - 0.50 = 1.10 in from
    // the road's edge, the eye 2.40: 2.30 x 2.40 / (2.40 - 1.10) = 4.246. 27 mph is 43.5 km/h: 39 m.
    faulty: { verdict: "not-met", value: 4.246, within: 0.005, wanted: 39 },
    // A wall 0.90 high is below the eye at 1.05: nothing drawn stands in the way, told as 300 m at least.
    mended: { verdict: "no-fault-seen", value: 300, wanted: 39 },
  },
  {
    what: "the low car on the crest of the drive",
    rule: "access/grounds",
    of: ["park car", "drive"],
    // (21.102 - 20.000) / 7.60 = 0.145; 2.70 x 0.145 / 4 = 0.0979; 0.080 - 0.0979 = -0.0179.
    faulty: { verdict: "not-met", value: -0.0179, within: 0.0005, wanted: 0 },
    // The sharpest break left, 0.080 - 0.038 = 0.042, lifts 2.70 x 0.042 / 4 = 0.028: less than touches anything.
    mended: "does not bear",
  },
  {
    what: "the break in the slope of the drive",
    rule: "access/slope-breaks-too-sharply",
    of: ["drive"],
    faulty: { verdict: "not-met", value: 0.145, within: 0.0005, wanted: 0.1 },
    // 0.448 / 5.60 = 0.080 and 0.152 / 4.00 = 0.038: 0.042 between them.
    mended: { verdict: "met", value: 0.042, within: 0.0005, wanted: 0.1 },
  },
  {
    what: "the yard, too near the bank",
    rule: "access/way-near-drop",
    of: ["yard", "garden bank"],
    // 24.30 - 24.00.
    faulty: { verdict: "not-met", value: 0.3, wanted: 0.5 },
    // 25.40 - 24.00.
    mended: { verdict: "no-fault-seen", value: 1.4, wanted: 0.5 },
  },
  {
    what: "the door beside the wall",
    rule: "parking/door-does-not-open",
    of: ["park car"],
    // The bay's middle at 21.35, half the car 0.90, the wall's face 22.85 - 0.15 = 22.70: 22.70 - 22.25 = 0.45.
    faulty: { verdict: "not-met", value: 0.45, wanted: 0.6 },
    mended: "does not bear",
  },
];

describe("Tansy Bank", () => {
  itFindsAndMends("tansy-bank", faults.slice(0, -1));

  it("has square corners at its mouth, which the lorry cuts, and rounded ones", () => {
    // r = sqrt(8.2^2 - 4.5^2) - 1.2 = 5.655; a = r - 2.4 = 3.255, b = r - 2.0 = 3.655, p = r - 1.2 = 4.455;
    // a + b - p = 2.455, a^2 + b^2 - p^2 = 4.107: 2.455 - sqrt(6.027 - 4.107) = 1.069 of radius, and none is drawn.
    const of = ["blocks come", "drive"];
    const [faulty] = findingsOf("tansy-bank", "access/mouth-corner-cut", of);
    expect(faulty?.verdict).toBe("not-met");
    expect(faulty?.found?.value).toBeCloseTo(-1.069, 2);
    // 2.00 - 1.069.
    const [mended] = findingsOf("tansy-bank-mended", "access/mouth-corner-cut", of);
    expect(mended?.verdict).toBe("met");
    expect(mended?.found?.value).toBeCloseTo(0.931, 2);
  });

  it("has a door that does not open beside the wall, and one that does", () => {
    const fault = faults.at(-1) as Fault;
    const [faulty] = findingsOf("tansy-bank", fault.rule, fault.of);
    expect(faulty?.grade).toBe("must");
    expect(faulty?.found?.value).toBeCloseTo(0.45, 3);
    // 23.45 - 0.15 - 22.25 = 1.05 to the wall now; 0.65 to the pickup in the next bay, 20.45 - 19.80, which is advised to be 0.90.
    const [mended] = findingsOf("tansy-bank-mended", fault.rule, fault.of);
    expect(mended?.grade).toBe("should");
    expect(mended?.found?.value).toBeCloseTo(0.65, 3);
  });

  it("has children where the lorry turns, and none in the twin", () => {
    const rule = "access/people-where-it-drives";
    expect(findingsOf("tansy-bank", rule, ["feed comes", "sand pit"])[0]?.verdict).toBe("not-met");
    expect(
      findingsOf("tansy-bank-mended", rule, ["feed comes", "sand pit"]).map(({ verdict }) => verdict),
    ).not.toContain("not-met");
  });

  it("says how much more yard would let the lorry turn, and draws it", async () => {
    const [finding] = findingsOf("tansy-bank", "access/no-room-to-turn", ["feed comes"]);
    const [first] = finding?.remedies ?? [];
    expect(first?.words).toContain('Carry the south side of surface "yard"');
    expect(first?.sure).toBeGreaterThan(0.9);
    // The twin's yard has 2.50 m more there, and the lorry turns with room to spare.
    expect(first?.sure).toBeLessThan(2);
    const svg = await printed(inspectionOf("tansy-bank"), ".svg");
    expect(svg).toContain(">As drawn<");
    expect(svg).toContain(">With one change<");
  });

  it("says that the blocks should wait for the yard", () => {
    const [finding] = findingsOf("tansy-bank", "access/no-room-to-turn", ["blocks come"]);
    expect(finding?.remedies[0]?.words).toContain('Have surface "yard" made before it comes');
  });
});
