// How deep to dig at a peg: to the formation under the layers or to an invert, with the doubt of the levels round it.

import { describe, expect, it } from "vitest";
import { setOutSheet } from "../../src/sheets/setout.ts";
import { planOf } from "../plan/resolved.ts";
import { seeded } from "../seeded.ts";

/** Ground z = 100 + 0.02 east - 0.01 north, levelled at the corners of 30 by 20 m; levels good to ± 10 mm. */
const text = (layers: string) => `
stages: [now, yard]
survey:
  tape: {length: 60, plus_minus: 10 mm}
  levelling: {plus_minus: 10 mm}
  coordinates: {plus_minus: 0 mm}
  stations:
    A: {at: [0, 0], level: 100.00 ± 0.010}
    B: {line_to: A, tape: 30.00, level: 100.60 ± 0.010}
    C: {at: [30, 20], level: 100.40 ± 0.010}
    D: {at: [0, 20], level: 99.80 ± 0.010}
surfaces:
  yard: {outline: [[6, 4], [18, 4], [18, 12], [6, 12]], finished: {level: 100.10}, ${layers} from: yard}
drains:
  pipe: {line: [[3, 4], [23, 4]], carries: rain, bore: 100 mm, inverts: {A: 99.4}, fall: 1 in 100, from: yard}
`;
const row = (layers: string, peg: string) => {
  const plan = planOf(text(layers));
  const { columns, rows } = setOutSheet(plan).table;
  const found = rows.find((one) => one[2] === peg) ?? [];
  return { plan, ...Object.fromEntries(columns.map((name, k) => [name, found[k] ?? ""])) } as Readonly<
    Record<string, string | number>
  > & { readonly plan: ReturnType<typeof planOf> };
};
const twoLayers = "layers: [{of: crushed rock, thickness: 75 mm}, {of: broken concrete, thickness: 150 mm}],";

describe("the dig at a corner", () => {
  it("goes to the formation: ground less finished top, and the layers on top of that", () => {
    // Ground at (18, 4): 100 + 0.36 - 0.04 = 100.32; formation 100.10 - 0.225 = 99.875 (COMPUTED).
    const found = row(twoLayers, "yard 2");
    expect([found["top"], found["dig_to"], found["bottom"], found["dig"]]).toEqual([
      100.1,
      "the formation",
      99.875,
      0.45,
    ]);
  });
  it("goes to the finished top where the plan has no layers, or not all of their thickness", () => {
    expect(row("", "yard 2")["dig"]).toBe(0.22);
    const unknown = "layers: [{of: crushed rock}, {of: broken concrete, thickness: 150 mm}],";
    expect([row(unknown, "yard 2")["dig_to"], row(unknown, "yard 2")["dig"]]).toEqual(["the finished top", 0.22]);
    const notes = setOutSheet(planOf(text(unknown))).parts.flatMap(({ entries }) =>
      entries.flatMap((one) => one.notes),
    );
    expect(notes.some((note) => note.includes("a layer has no thickness"))).toBe(true);
  });
  it("is a fill below 0", () => {
    // Ground at (6, 12): 100 + 0.12 - 0.12 = 100.00 against 100.10.
    expect(row("", "yard 4")["dig"]).toBe(-0.1);
  });
  it("is good to what drawing the levels at random gives, with the roughness of the ground and the peg on its slope", () => {
    const found = row(twoLayers, "yard 2");
    const { plan } = found;
    const draw = seeded(5);
    const z = () => Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
    const level = (name: string, causes: readonly number[]) => {
      const id = plan.pegs.get(name)?.level?.id ?? -1;
      return [...(plan.numbers.sways[id] ?? [])].reduce(
        (sum, [cause, by]) => sum + by * (causes[cause] as number),
        plan.numbers.values[id] as number,
      );
    };
    // (18, 4) lies in triangle A B C or A B D, whichever way the net's diagonal runs: its weights by plane geometry.
    const drawn = Array.from({ length: 20_000 }, () => {
      const causes = plan.numbers.causes.map(() => z());
      const [a, b, c, d] = ["A", "B", "C", "D"].map((name) => level(name, causes)) as [number, number, number, number];
      return { byC: a * (1 - 0.6) + b * (0.6 - 0.2) + c * 0.2, byD: a * (1 - 0.6 - 0.2) + b * 0.6 + d * 0.2 };
    });
    const deviation = (pick: "byC" | "byD") => {
      const mean = drawn.reduce((sum, one) => sum + one[pick], 0) / drawn.length;
      return Math.sqrt(drawn.reduce((sum, one) => sum + (one[pick] - mean) ** 2, 0) / drawn.length);
    };
    const pegU = Number(found["good_to_mm"]) / 2000;
    const slope = Math.hypot(0.02, 0.01);
    const half = (u: number) => 2 * Math.hypot(u, 0.01, slope * pegU) + Math.abs(0.45 - 0.445);
    const stated = Number(found["dig_good_to_mm"]) / 1000;
    // Rounded up to whole millimetres; 20 000 draws leave 0.5 % (JCGM 101, MEMORY).
    expect(Math.min(...["byC", "byD"].map((pick) => Math.abs(stated - half(deviation(pick as "byC")))))).toBeLessThan(
      0.0015,
    );
  });
});

describe("the dig of a drain", () => {
  it("goes to the invert along its fall", () => {
    const plan = planOf(text("").replace("[3, 4], [23, 4]", "A, [23, 4]"));
    const { columns, rows } = setOutSheet(plan).table;
    const cell = (peg: string, name: string) =>
      rows.find((one) => one[0] !== "mark" && one[2] === peg)?.[columns.indexOf(name)];
    // 99.40 less 1 in 100 over hypot(23, 4) = 23.345 m: 99.167; ground 100 + 0.46 - 0.04 = 100.42 (COMPUTED).
    expect([cell("A", "bottom"), cell("A", "dig")]).toEqual([99.4, 0.6]);
    expect([cell("pipe 2", "dig_to"), cell("pipe 2", "bottom"), cell("pipe 2", "dig")]).toEqual([
      "the invert",
      99.167,
      1.25,
    ]);
  });
  it("is not given where no levels were taken", () => {
    const plan = planOf(text("").replaceAll(/, level: \S+ ± 0.010/g, ""));
    const entries = setOutSheet(plan).parts.flatMap((part) => part.entries);
    expect(
      entries.some(({ notes }) => notes.includes("no levels were taken round it: how deep to dig is not known")),
    ).toBe(true);
  });
});
