// Whatever stands in the data, the resolver answers with a plan and problems, never with an exception.

import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { resolvePlan } from "../../src/plan/resolve-plan.ts";
import { kindTable, sourceOf } from "./resolved.ts";

const sample = sourceOf(readFileSync(new URL("../tables/sample-plan.yaml", import.meta.url), "utf8"), "sample.yaml");

/** Seeded random numbers from 0 to 1 (mulberry32). */
function uniforms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const junk: readonly unknown[] = [
  null,
  true,
  false,
  0,
  -1,
  1e308,
  -1e-300,
  "",
  "P1",
  "P1 to P1",
  "yard corner 99",
  "±",
  "1 ± 2 ± 3",
  "left of",
  [],
  {},
  [[]],
  [1],
  [1, 2, 3, 4],
  { at: { at: { at: "P1" } } },
  { run: "x" },
  "to",
  " to ",
  "goat fence",
  ["goat fence", "goat fence"],
  { __proto__x: 1 },
  "constructor",
  "toString",
  12,
];

type Holder = Record<string | number, unknown>;

/** Every place in the data that can be put out of order. */
function placesIn(data: unknown, found: [Holder, string | number][] = []): [Holder, string | number][] {
  if (typeof data !== "object" || data === null) return found;
  for (const key of Object.keys(data)) {
    found.push([data as Holder, Array.isArray(data) ? Number(key) : key]);
    placesIn((data as Holder)[key], found);
  }
  return found;
}

it("never throws on mutated data", () => {
  const random = uniforms(7);
  for (let i = 0; i < 400; i += 1) {
    const data = structuredClone(sample.data);
    for (let k = 0; k < 1 + Math.floor(random() * 4); k += 1) {
      const places = placesIn(data);
      const [holder, key] = places[Math.floor(random() * places.length)] as [Holder, string];
      const what = junk[Math.floor(random() * junk.length)];
      if (random() < 0.2) delete holder[key];
      else if (random() < 0.15 && !Array.isArray(holder)) {
        holder[String(what)] = holder[key];
      } else holder[key] = structuredClone(what);
    }
    const option = random() < 0.1 ? { option: "any" } : {};
    const { plan, problems } = resolvePlan({ source: { ...sample, data }, broken: [] }, kindTable, option);
    expect(Array.isArray(plan.features) && Array.isArray(problems)).toBe(true);
    for (const one of problems) expect(one.expected.length * one.got.length * one.hint.length).toBeGreaterThan(0);
    for (const value of plan.numbers.values) expect(Number.isFinite(value)).toBe(true);
  }
});

it("takes any data at all", () => {
  for (const data of [
    ...junk,
    undefined,
    { survey: 3 },
    { survey: { stations: [1] } },
    { walls: ["a"] },
    { options: 3, changes: [], stages: {} },
  ]) {
    expect(resolvePlan({ source: { ...sample, data }, broken: [] }, kindTable, {}).plan.stages.length).toBeGreaterThan(
      0,
    );
  }
});

it("passes over broken nodes", () => {
  const broken = [["walls", "march wall", "height"], ["trees", "ash"], ["survey", "stations", "K1"], []] as const;
  const whole = resolvePlan({ source: sample, broken: broken.slice(0, 3) }, kindTable).plan;
  expect(whole.features.some((feature) => feature.name === "ash")).toBe(false);
  expect(whole.features.find((feature) => feature.name === "march wall")?.properties["height"]).toBeUndefined();
  expect(whole.pegs.has("K1")).toBe(false);
  expect(resolvePlan({ source: sample, broken }, kindTable).plan.file).toBe("sample.yaml");
});

it("says nothing more of what is passed over, and of what hangs on it", () => {
  const broken = [
    ["fences", "goat fence"],
    ["survey", "stations", "P3", "ties"],
    ["buildings", "bunkhouse"],
    ["chambers", "inspection 1"],
  ];
  const { plan, problems } = resolvePlan({ source: sample, broken }, kindTable);
  expect(problems).toEqual([]);
  expect(plan.features.find((feature) => feature.name === "foot gate")?.shape).toBeNull();
  expect(plan.features.find((feature) => feature.name === "march wall")?.shape).not.toBeNull();
});

it("follows no endless chain of things placed by things", () => {
  const links = Array.from({ length: 3000 }, (_, i) => [
    `f${i}`,
    i === 0
      ? {
          line: [
            [0, 0],
            [9, 0],
          ],
        }
      : { beside: `f${i - 1}`, left: 1 },
  ]);
  const fences = Object.fromEntries(links.reverse());
  const { plan, problems } = resolvePlan({ source: { ...sample, data: { fences } }, broken: [] }, kindTable);
  expect(plan.features.length).toBe(3000);
  expect(problems.length).toBeGreaterThan(0);
});
