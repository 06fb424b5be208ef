// The project's own sample plan: it resolves without a problem, its book closes, its spare tape agrees.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { featureOf, numberOf, planOf, pointOf, resolveText, spotsOf, uOf, valueOf } from "./resolved.ts";

const text = readFileSync(new URL("../tables/sample-plan.yaml", import.meta.url), "utf8");
const { plan, problems } = resolveText(text);

const apart = ([a, b]: readonly [number, number], [c, d]: readonly [number, number]): number =>
  Math.hypot(c - a, d - b);

describe("the sample plan", () => {
  it("resolves without a problem", () => {
    expect(problems).toEqual([]);
  });

  it("gives every feature and peg of the text", () => {
    expect(plan.features.length).toBe(29);
    expect([...plan.pegs.keys()]).toEqual(["P1", "P2", "P3", "B1", "B2", "B3", "B4", "K1", "WL"]);
    const shapeless = plan.features.filter((feature) => feature.shape === null).map((feature) => feature.kind);
    expect(new Set(shapeless)).toEqual(new Set(["animals", "vehicle", "manoeuvre"]));
  });

  it("computes the spare tape P3 to B1 as 21.717 from the other measurements", () => {
    // COMPUTED: P3 from ties 31.20 and 28.86 on a base of 42.35, B1 at run 6.10, left 7.42.
    const plain = planOf(text.replace(/^ {2}checks:\n(?: {4}- .*\n)+/m, ""));
    const at = (name: string) => pointOf(plain, plain.pegs.get(name) as never);
    expect(apart(at("P3"), at("B1"))).toBeCloseTo(21.717, 3);
    const x = (31.2 ** 2 - 28.86 ** 2 + 42.35 ** 2) / (2 * 42.35);
    expect(at("P3")[0]).toBeCloseTo(x, 6);
    expect(at("P3")[1]).toBeCloseTo(Math.sqrt(31.2 ** 2 - x ** 2), 6);
  });

  it("closes the level book at 100.003 in two set-ups and takes 3 mm out of it", () => {
    const [run] = plan.surveyFacts?.levelRuns ?? [];
    expect(run?.setUps).toBe(2);
    expect(run?.misclosure).toBeCloseTo(0.003, 9);
    // COMPUTED: four readings at u 2 mm (plus_minus 4 mm): sqrt(4) x 2 mm.
    expect(run?.u).toBeCloseTo(0.004, 9);
    const level = (name: string) => plan.pegs.get(name)?.level;
    expect(valueOf(plan, level("P1") as never)).toBe(100);
    // COMPUTED: 100 + 1.412 - 1.105 = 100.307, less half of 3 mm after one of two set-ups.
    expect(valueOf(plan, level("B1") as never)).toBeCloseTo(100.3055, 9);
    // COMPUTED: 101.412 - 2.705 + 2.880 - 2.172 = 99.415, less 3 mm.
    expect(valueOf(plan, numberOf(featureOf(plan, "inspection 1"), "invert"))).toBeCloseTo(99.412, 9);
  });

  it("sets the trunk behind its near face", () => {
    // COMPUTED: the ties end at the bark, so the middle is girth / 2 pi farther than the tapes read.
    const radius = 1.75 / (2 * Math.PI);
    const at = (name: string) => pointOf(plan, plan.pegs.get(name) as never);
    expect(apart(at("K1"), at("P3"))).toBeCloseTo(9.27 + radius, 2);
    expect(apart(at("K1"), at("B2"))).toBeCloseTo(7.58 + radius, 2);
  });

  it("runs the fence 1.5 m beside the wall and names the nodes of a drain", () => {
    const fence = spotsOf(featureOf(plan, "goat fence")).map((spot) => pointOf(plan, spot));
    const wall = spotsOf(featureOf(plan, "march wall")).map((spot) => pointOf(plan, spot));
    const [a, b] = [wall[0] as [number, number], wall[1] as [number, number]];
    const along = [(b[0] - a[0]) / apart(a, b), (b[1] - a[1]) / apart(a, b)] as const;
    for (const [east, north] of fence.slice(0, 2))
      expect((north - a[1]) * along[0] - (east - a[0]) * along[1]).toBeCloseTo(1.5, 9);
    expect(spotsOf(featureOf(plan, "kitchen")).map((spot) => spot.name)).toEqual(["B3", "inspection 1", "tank"]);
  });

  it("lets two things on one peg share its numbers", () => {
    expect(spotsOf(featureOf(plan, "bunkhouse"))[1]?.east).toBe(spotsOf(featureOf(plan, "house supply"))[1]?.east);
  });

  it("gives the well the doubt of its compass and its paced tape", () => {
    // COMPUTED: 48 m at 1 deg (half of 2 deg) across, 0.5 m (half of 1.0) along; P3 adds 10 mm.
    const well = plan.pegs.get("WL");
    const along = Math.hypot(uOf(plan, well?.east as never), uOf(plan, well?.north as never));
    expect(along).toBeCloseTo(Math.hypot((48 * Math.PI) / 180, 0.5), 2);
  });

  it("spans stages and manoeuvres", () => {
    const span = (name: string) => [featureOf(plan, name).from, featureOf(plan, name).until];
    expect(span("muck")).toEqual([0, 1]);
    expect(span("goat fence")).toEqual([2, null]);
    expect(span("stone comes")).toEqual([1, 2]);
  });

  it("is the same every time", () => {
    const strings = (one: typeof plan) =>
      JSON.stringify([one.features, one.numbers.values, one.numbers.sways.map((sway) => [...sway])]);
    expect(strings(planOf(text))).toBe(strings(plan));
  });
});
