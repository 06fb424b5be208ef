// Runs of drains against closed forms and published rows (tests/tables/drains.published.yaml).

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { parseQuantity } from "../../src/model/units.ts";
import { askedIn, findIn, planWith, valuesIn } from "./rig.ts";

interface Small {
  readonly id: string;
  readonly to: number;
  readonly from?: number;
  readonly tolerance: number;
}
const table = parse(readFileSync(new URL("../tables/drains.published.yaml", import.meta.url), "utf8")) as {
  small: { rows: readonly Small[] };
};
const row = (id: string): Small => table.small.rows.find((one) => one.id === id) as Small;

const straight = (more: object, metres = 18) =>
  planWith({
    survey: { stations: { P1: { at: [0, 0] }, P2: { at: [metres, 0] } } },
    drains: { d: { line: ["P1", "P2"], bore: "100 mm", from: "works", ...more } },
  });
const run = { run: "d, P1 to P2" };

describe("fall of a run", () => {
  it("T22: 18 m at 1 in 80 from 50.000 ends at 49.775 (COMPUTED)", () => {
    const plan = straight({ fall: "1 in 80", inverts: { P1: 50 } });
    const [drop] = valuesIn(plan, { measure: "drop-of-run", subject: run });
    expect(Math.abs(50 - (drop ?? 0) - row("T22").to)).toBeLessThanOrEqual(row("T22").tolerance);
  });
  it("from the inverts, whatever else is stated", () => {
    const plan = straight({ fall: "1 in 40", inverts: { P1: 50, P2: 49.775 } });
    expect(valuesIn(plan, { measure: "fall-of-run", subject: run })[0]).toBeCloseTo(0.0125, 12);
  });
  it("is below 0 uphill", () => {
    expect(
      valuesIn(straight({ inverts: { P1: 50, P2: 50.09 } }), { measure: "fall-of-run", subject: run })[0],
    ).toBeCloseTo(-0.005, 12);
  });
  it("goes along the bends of the line", () => {
    const plan = planWith({
      drains: {
        d: {
          line: [
            [0, 0],
            [3, 4],
            [3, 14],
          ],
          fall: "2 %",
          from: "works",
        },
      },
    });
    expect(valuesIn(plan, { measure: "drop-of-run", subject: { run: "d, point 1 to point 3" } })[0]).toBeCloseTo(
      0.3,
      12,
    );
  });
  it.each([
    ["T23a", "1/4 in per ft"],
    ["T23b", "1/8 in per ft"],
    ["T23c", "1/16 in per ft"],
  ])("%s: %s (READ)", (id, written) => {
    const parsed = parseQuantity(written, "slope");
    expect(parsed.ok && Math.abs(parsed.value - row(id).to)).toBeLessThanOrEqual(row(id).tolerance);
  });
  it("asks for the inverts that lack, of the chamber where there is one", () => {
    const plan = planWith({
      chambers: { ic: { at: [10, 0], existing: true } },
      drains: { d: { line: [[0, 0], "ic"], from: "works" } },
    });
    expect(askedIn(plan, { measure: "fall-of-run", subject: { run: "d, point 1 to ic" } })).toEqual([
      "d/inverts.point 1",
      "ic/invert",
    ]);
  });
  it("takes a chamber's invert below its cover, a tank's inlet and an outfall's level", () => {
    const plan = planWith({
      chambers: { ic: { at: [0, 0], cover: 100.1, depth: 1.1, existing: true } },
      septic_tanks: { tank: { at: [10, 0], inlet: 98.8, outlet: 98.7, existing: true } },
      outfalls: { end: { at: [20, 0], level: 98.5, existing: true } },
      drains: { a: { line: ["ic", "tank"], from: "works" }, b: { line: ["tank", "end"], from: "works" } },
    });
    expect(valuesIn(plan, { measure: "drop-of-run", subject: { run: "a, ic to tank" } })[0]).toBeCloseTo(0.2, 9);
    expect(valuesIn(plan, { measure: "drop-of-run", subject: { run: "b, tank to end" } })[0]).toBeCloseTo(0.2, 9);
  });
});

describe("joints", () => {
  const joined = (lower: object, upper: object = {}) =>
    planWith({
      survey: { stations: { P1: { at: [0, 0] }, P2: { at: [9, 0] }, P3: { at: [18, 0] } } },
      drains: {
        a: { line: ["P1", "P2"], bore: "150 mm", inverts: { P1: 99.2, P2: 99.1 }, from: "works", ...upper },
        b: { line: ["P2", "P3"], bore: "100 mm", inverts: { P2: 99.15, P3: 98.9 }, from: "works", ...lower },
      },
    });
  const end = { run: "a, P1 to P2" };
  it("step up where the next pipe begins higher", () => {
    expect(valuesIn(joined({}), { measure: "invert-step", subject: end })[0]).toBeCloseTo(-0.05, 9);
  });
  it("shrink where the next pipe is narrower", () => {
    expect(valuesIn(joined({}), { measure: "bore-step", subject: end })[0]).toBeCloseTo(-0.05, 9);
  });
  it("ask for a bore that lacks", () => {
    expect(askedIn(joined({ bore: undefined }), { measure: "bore-step", subject: end })).toEqual(["b/bore"]);
  });
  it("do not bear where nothing takes the water", () => {
    expect(findIn(joined({}), { measure: "bore-step", subject: { run: "b, P2 to P3" } }).is).toBe("does-not-bear");
  });
  it("tell whether the water comes out anywhere", () => {
    const plan = joined({});
    expect(valuesIn(plan, { measure: "leads-on", subject: end })).toEqual([1]);
    expect(valuesIn(plan, { measure: "leads-on", subject: { run: "b, P2 to P3" } })).toEqual([0]);
  });
});

describe("cover over a pipe", () => {
  it("is ground less invert less bore at pegs that have levels", () => {
    const plan = planWith({
      survey: { stations: { P1: { at: [0, 0], level: 100 }, P2: { at: [10, 0], level: 99.5 } } },
      drains: { d: { line: ["P1", "P2"], bore: "100 mm", inverts: { P1: 99.2, P2: 99.0 }, existing: true } },
    });
    expect(valuesIn(plan, { measure: "cover-over-pipe", subject: run })[0]).toBeCloseTo(0.4, 9);
    expect(valuesIn(plan, { measure: "cover-over-pipe", subject: run }).at(-1)).toBeCloseTo(0.7, 9);
  });
  it("is found in the hollow between its ends", () => {
    // COMPUTED: ground 100 at both ends, 99.5 at the hollow half way; invert 99.2 to 99.0: 99.5 - 99.1 - 0.1 = 0.3.
    const plan = planWith({
      survey: {
        stations: {
          P1: { at: [0, 0], level: 100 },
          P2: { at: [20, 0], level: 100 },
          H1: { at: [10, 5], level: 99.5 },
          H2: { at: [10, -5], level: 99.5 },
        },
      },
      drains: { d: { line: ["P1", "P2"], bore: "100 mm", inverts: { P1: 99.2, P2: 99.0 }, existing: true } },
    });
    expect(valuesIn(plan, { measure: "cover-over-pipe", subject: run })[0]).toBeCloseTo(0.3, 9);
  });
  it("asks where no ground is levelled", () => {
    expect(askedIn(straight({ inverts: { P1: 50, P2: 49 } }), { measure: "cover-over-pipe", subject: run })).toEqual([
      "d/cover",
    ]);
  });
});

describe("rodding", () => {
  it("adds the runs between two openings", () => {
    const plan = planWith({
      survey: { stations: { P2: { at: [12, 0] } } },
      chambers: {
        a: { at: [0, 0], kind: "manhole", existing: true },
        b: { at: [30, 0], kind: "manhole", existing: true },
      },
      drains: { d: { line: ["a", "P2", "b"], inverts: { P2: 99 }, from: "works" } },
    });
    expect(valuesIn(plan, { measure: "rodding-length", subject: { run: "d, P2 to b" } })[0]).toBeCloseTo(30, 9);
    expect(findIn(plan, { measure: "rodding-length", subject: { run: "d, a to P2" } }).is).toBe("does-not-bear");
  });
});

describe("a trench beside a footing", () => {
  const beside = (off: number, invert: number) =>
    planWith({
      survey: { stations: { P1: { at: [0, off] }, P2: { at: [10, off] } } },
      buildings: {
        barn: {
          outline: [
            [0, 0],
            [10, 0],
            [10, -6],
            [0, -6],
          ],
          foundation: { underside: 99 },
          existing: true,
        },
      },
      drains: { d: { line: ["P1", "P2"], bore: "100 mm", inverts: { P1: invert, P2: invert }, from: "works" } },
    });
  it("is distance less the depth under the footing (COMPUTED: 2.0 - (99.0 - (98.1 - 0.1)) = 1.0)", () => {
    const question = {
      measure: "depth-beside",
      subject: { thing: "d, P1 to P2", other: "barn" },
      parameters: { bed: 0.1 },
    };
    expect(valuesIn(beside(2, 98.1), question)[0]).toBeCloseTo(1, 9);
    expect(valuesIn(beside(0.5, 98.1), question)[0]).toBeCloseTo(-0.5, 9);
    expect(valuesIn(beside(2, 98.1), { ...question, measure: "depth-below-footing" })[0]).toBeCloseTo(1, 9);
  });
});

describe("what comes to a tank", () => {
  it("is followed through chambers", () => {
    const plan = planWith({
      chambers: { ic: { at: [10, 0], existing: true } },
      septic_tanks: { tank: { at: [20, 0], existing: true } },
      drains: {
        house: { line: [[0, 0], "ic", "tank"], carries: "foul", from: "works" },
        gully: { line: [[0, 9], "ic"], carries: "rain", from: "works" },
      },
    });
    expect(valuesIn(plan, { measure: "takes-no", subject: { tank: "tank" } })).toEqual([0]);
  });
});
