// A braced quadrilateral through a plan text: coordinates, chi-square, area and its doubt with covariance.

import { describe, expect, it } from "vitest";
import type { Spot } from "../../src/model/quantity.ts";
import { featureOf, planOf, pointOf, spotsOf, spread, uOf } from "./resolved.ts";

const text = `
survey:
  stations:
    A: {at: [0, 0]}
    B: {line_to: A, tape: 24.003}
    C: {ties: {A: 26.395, B: 16.284}, side: left of A to B}
    D: {ties: {A: 14.645, B: 26.346}, side: left of A to B}
  checks:
    - {between: [C, D], tape: 19.052}
surfaces:
  plot: {outline: [A, B, C, D], existing: true}
`;

/** Shoelace area and its slopes by every coordinate: dA/dx_i = (y_next - y_before) / 2, dA/dy_i = (x_before - x_next) / 2. */
function areaOf(plan: ReturnType<typeof planOf>, spots: readonly Spot[]) {
  const at = spots.map((spot) => pointOf(plan, spot));
  const n = at.length;
  let area = 0;
  const slopes = spots.flatMap((spot, i) => {
    const [[xb, yb], [xn, yn], [x, y]] = [at[(i + n - 1) % n], at[(i + 1) % n], at[i]] as [
      [number, number],
      [number, number],
      [number, number],
    ];
    area += (x * yn - xn * y) / 2;
    return [[(yn - yb) / 2, spot.east] as const, [(xb - xn) / 2, spot.north] as const];
  });
  return { area, slopes };
}

describe("a taped quadrilateral", () => {
  // COMPUTED by Gauss-Newton and by SciPy with sigma = 5 mm + 0.2 mm/m, the doubt of common practice.
  const plan = planOf(text);
  const at = (name: string) => pointOf(plan, plan.pegs.get(name) as Spot);

  it("stands where least squares puts it", () => {
    const expected = { B: [24.0008, 0], C: [20.9948, 16.00293], D: [2.00395, 14.506] } as const;
    for (const [name, [east, north]] of Object.entries(expected)) {
      expect(at(name)[0]).toBeCloseTo(east, 4);
      expect(at(name)[1]).toBeCloseTo(north, 4);
    }
    const u = (name: string) =>
      [plan.pegs.get(name)?.east, plan.pegs.get(name)?.north].map((q) => 1000 * uOf(plan, q as never));
    // COMPUTED, mm, to one decimal.
    for (const [found, wanted] of [
      [u("B")[0], 9.1],
      [u("C")[0], 10.6],
      [u("C")[1], 7.8],
      [u("D")[0], 11.0],
      [u("D")[1], 7.6],
    ] as const)
      expect(found).toBeCloseTo(wanted, 1);
  });

  it("has chi-square 0.3728 with one degree of freedom", () => {
    expect(plan.surveyFacts?.chiSquare).toBeCloseTo(0.3728, 3);
    expect(plan.surveyFacts?.degreesOfFreedom).toBe(1);
    expect(plan.surveyFacts?.measurements.filter((one) => one.check).map((one) => one.words)).toEqual(["tape C to D"]);
  });

  it("has an area of 328.282 m2, u 0.126 with covariance and 0.181 without", () => {
    const { area, slopes } = areaOf(plan, spotsOf(featureOf(plan, "plot")));
    expect(area).toBeCloseTo(328.282, 3);
    expect(spread(plan, slopes)).toBeCloseTo(0.126, 3);
    expect(Math.sqrt(slopes.reduce((sum, [slope, of]) => sum + (slope * uOf(plan, of)) ** 2, 0))).toBeCloseTo(0.181, 3);
  });

  it("shows a blunder of 0.10 m in one tape and cannot say which", () => {
    // COMPUTED: chi-square 20.4, all six standardised residuals 4.52.
    const wrong = planOf(text.replace("26.346", "26.446")).surveyFacts;
    expect(wrong?.chiSquare).toBeCloseTo(20.4, 1);
    for (const one of wrong?.measurements.filter(({ standardised }) => standardised !== null) ?? [])
      expect(Math.abs(one.standardised as number)).toBeCloseTo(4.52, 2);
  });

  it("gives all tapes of one reel one shared cause", () => {
    const classed = planOf(text.replace("survey:", "survey:\n  tape: {class: II}"));
    const reels = classed.numbers.causes.filter((cause) => cause.words.includes("tape's own error"));
    expect(reels.length).toBe(1);
    // MPE of class II: 0.3 + 0.2 L mm, L rounded up to whole metres (UK SI 2016/1153 Schedule 1I, READ). Every length
    // of the figure grows nearly alike, so B moves by about E(25 m) / sqrt 3 = 3.06 mm along the first line.
    const sway = classed.numbers.sways[classed.pegs.get("B")?.east.id ?? -1]?.get(reels[0]?.id ?? -1) ?? 0;
    expect(sway).toBeCloseTo(0.0053 / Math.sqrt(3), 4);
    const east = classed.pegs.get("B")?.east as never;
    expect(uOf(classed, east)).toBeCloseTo(Math.hypot(uOf(plan, plan.pegs.get("B")?.east as never), sway), 6);
  });
});
