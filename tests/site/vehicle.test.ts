// The vehicle of a plan: four ways to say how it turns, and what is asked for.

import { describe, expect, it } from "vitest";
import { readPlain, spread } from "../../src/engine/spread.ts";
import { rulebook } from "../../src/index.ts";
import { liveVehicle, looksSlipped } from "../../src/site/vehicle.ts";
import { featureOf, planOf, resolveText } from "../plan/resolved.ts";

const vehicles = rulebook().tables.get("vehicles");

function vehicle(properties: string) {
  const text = `sightrail: 1\ntitle: t\nplace: [anywhere]\nvehicles: {car: {${properties}}}\n`;
  const plan = planOf(text, vehicles ? { vehicles } : {});
  const live = liveVehicle(featureOf(plan, "car"));
  return { plan, live, read: readPlain(plan.numbers) };
}

const at = (properties: string) => {
  const { live, read } = vehicle(properties);
  if ("missing" in live) throw new Error(live.missing.map(({ property }) => property).join(" "));
  return live(read);
};

describe("the smallest radius of the rear axle", () => {
  // B85 car of AS/NZS 2890.1 appendix B (MEMORY); radii COMPUTED from r = 4.194: Rw 6.34, ri 3.26.
  const lengths = "length: 4.91, wheelbase: 2.80, front_overhang: 0.92, width: 1.87, track: 1.77";
  it.each([
    ["between kerbs, a diameter", "turning_circle: {across: 11.60, between: kerbs}"],
    ["between walls, a diameter", "turning_circle: {across: 12.68, between: walls}"],
    ["to the outer front tyre", "turning_radius: {radius: 5.80, to: outer front tyre}"],
    ["to the outer front corner", "turning_radius: {radius: 6.34, to: outer front corner}"],
    ["to the front axle's middle", "turning_radius: {radius: 5.043, to: front axle centre}"],
    ["to the inner side at the rear", "turning_radius: {radius: 3.259, to: inner rear body}"],
    ["to the rear axle's middle", "turning_radius: {radius: 4.194, to: rear axle centre}"],
    ["by the lock of the front wheels", "full_lock: 33.73 deg"],
  ])("is the same however it is said: %s", (_, turns) => {
    // 6 mm: the published radii are rounded to a centimetre.
    expect(Math.abs((at(`${lengths}, ${turns}`)?.rearAxleRadius ?? 0) - 4.194)).toBeLessThan(6e-3);
  });
  it("is nothing where the lengths contradict the circle", () => {
    expect(at(`${lengths}, turning_circle: {across: 5.0, between: kerbs}`)).toBeNull();
  });
  it.each([
    ["a diameter written as the radius", "turning_radius: {radius: 11.60, to: outer front tyre}", true],
    ["a radius written as the diameter", "turning_circle: {across: 6.6, between: kerbs}", true],
    ["the right figure", "turning_circle: {across: 11.60, between: kerbs}", false],
  ])("looks like a slip by the factor two, or does not: %s", (_, turns, slipped) => {
    const car = at(`${lengths}, ${turns}`);
    expect(car !== null && looksSlipped(car)).toBe(slipped);
  });
  it.each(["aashto p", "aashto su-9", "pickup"])("no published vehicle looks like one: %s", (like) => {
    const one = at(`like: ${like}`);
    expect(one && looksSlipped(one)).toBe(false);
  });
  it("takes the rear overhang from the whole length", () => {
    expect(at(`${lengths}, full_lock: 33 deg`)?.rearOverhang).toBeCloseTo(1.19, 9);
  });
});

describe("what is not said", () => {
  it("is asked for", () => {
    const { live } = vehicle("length: 4.91, width: 1.87");
    expect("missing" in live && live.missing.map(({ property }) => property)).toEqual([
      "wheelbase",
      "front_overhang",
      "turning_circle",
    ]);
  });
});

describe("a vehicle like a published one", () => {
  it("turns as published: AASHTO P 21.0 ft at the front axle (MEMORY), so 17.89 ft at the rear (COMPUTED)", () => {
    expect((at("like: aashto p")?.rearAxleRadius ?? 0) / 0.3048).toBeCloseTo(Math.sqrt(21 ** 2 - 11 ** 2), 6);
  });
  it("keeps what the plan says of itself, and lets the rest follow from it", () => {
    const own = at("like: pickup, length: 5.6, turning_circle: {across: 13.0, between: kerbs}");
    expect(own?.wheelbase).toBeCloseTo(3.2, 9);
    expect(own?.rearOverhang).toBeCloseTo(5.6 - 3.2 - 0.95, 9);
    expect(own?.rearAxleRadius).toBeCloseTo(Math.sqrt(6.5 ** 2 - 3.2 ** 2) - 1.9 / 2, 9);
  });
  it("carries the spread of the table as its doubt: 6.35 give or take 0.15 m for a pickup (PRACTICE)", () => {
    const { plan, live, read } = vehicle("like: pickup");
    if ("missing" in live) throw new Error("missing");
    const { u, contributions } = spread((now) => live(now)?.rearAxleRadius ?? 0, read, plan.numbers);
    // dr/dRk = Rk / sqrt(Rk^2 - L^2) = 1.158, dr/dL = -0.583; u(Rk) 0.075, u(L) 0.05.
    expect(u).toBeCloseTo(Math.hypot(1.158 * 0.075, 0.583 * 0.05), 3);
    expect([...contributions.keys()].map((id) => plan.numbers.causes[id]?.sort)).toEqual(["table", "table"]);
  });
  it.each([
    "uk large car",
    "uk estate car",
    "uk panel van 3.5 t",
    "uk panel van 7.5 t",
    "uk box lorry 7.5 t",
    "refuse lorry",
  ])(
    "%s is whole, and says how little is known of its front overhang (PRACTICE; COMPUTED for the refuse lorry)",
    (like) => {
      const { plan, live, read } = vehicle(`like: ${like}`);
      if ("missing" in live) throw new Error("missing");
      const { u } = spread((now) => live(now)?.frontOverhang ?? 0, read, plan.numbers);
      // 0.1 m and more, 19 times in 20, is a standard uncertainty of 0.05 m and more.
      expect(u).toBeGreaterThan(0.045);
      expect(live(read)?.rearOverhang).toBeGreaterThan(0.5);
    },
  );
  it("is a problem where no such vehicle is published, with the nearest one", () => {
    const text = "sightrail: 1\ntitle: t\nplace: [anywhere]\nvehicles: {car: {like: aashto su9}}\n";
    const { problems } = resolveText(text, vehicles ? { vehicles } : {});
    expect(problems).toMatchObject([{ code: "unknown-name", line: 4, hint: 'did you mean "aashto su-9"?' }]);
  });
});
