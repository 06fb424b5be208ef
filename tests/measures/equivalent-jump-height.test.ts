// The leap from a stand against the table of closed forms, and against a search over launch angles.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { jumpAskedFor } from "../../src/measures/equivalent-jump-height.ts";
import { seeded } from "../seeded.ts";

interface Row {
  readonly id: string;
  readonly H?: number;
  readonly D?: number;
  readonly d?: number;
  readonly H_eq?: number;
  readonly h0?: number;
  readonly F?: number;
  readonly h1?: number;
  readonly h2?: number;
  readonly w?: number;
  readonly s?: number;
}
interface Part {
  readonly tolerance: number;
  readonly rows: readonly Row[];
}
const file = new URL("../tables/jump.own-calculation.yaml", import.meta.url);
const table = parse(readFileSync(file, "utf8")) as Readonly<Record<string, Part>>;
const part = (name: string): Part => table[name] as Part;
const close = (got: number, wanted: number, tolerance: number) =>
  expect(Math.abs(got - wanted)).toBeLessThanOrEqual(tolerance + 1e-12);

/** Gap at which the leap asks for exactly H: d* = 2 sqrt(H (H - D)) (COMPUTED; inverse of the measure). */
function gapAsking(rise: number, difference: number): number {
  return difference >= rise ? 0 : 2 * Math.sqrt(rise * (rise - difference));
}

/**
 * Least rise H = v^2 / (2 g) of any launch from the stand's edge that passes the point (d, D): the launch at angle a
 * asks v^2 = g d^2 / (2 cos^2 a (d tan a - D)), so H = d^2 / (4 cos^2 a (d tan a - D)); searched over a.
 */
function searched(gap: number, difference: number): number {
  const rise = (angle: number): number => {
    const room = gap * Math.tan(angle) - difference;
    return room <= 0 ? Infinity : gap ** 2 / (4 * Math.cos(angle) ** 2 * room);
  };
  let best = { angle: 0, rise: Infinity };
  let low = Math.atan2(difference, gap);
  let high = Math.PI / 2;
  for (let turn = 0; turn < 4; turn++) {
    const step = (high - low) / 400;
    for (let i = 1; i < 400; i++) {
      const angle = low + i * step;
      const asked = rise(angle);
      if (asked < best.rise) best = { angle, rise: asked };
    }
    [low, high] = [best.angle - step, best.angle + step];
  }
  return best.rise;
}

describe("closed forms", () => {
  const tolerance = part("height_asked").tolerance;
  it.each(part("height_asked").rows)("$id: D $D, d $d asks $H_eq", (row) => {
    close(jumpAskedFor(row.d ?? 0, row.D ?? 0), row.H_eq ?? Number.NaN, tolerance);
  });
  it.each(part("gap_needed").rows)("$id: at its gap $d a leap over D $D asks for H $H", (row) => {
    close(gapAsking(row.H ?? 0, row.D ?? 0), row.d ?? Number.NaN, part("gap_needed").tolerance);
    close(jumpAskedFor(gapAsking(row.H ?? 0, row.D ?? 0), row.D ?? 0), row.H ?? Number.NaN, 1e-9);
  });
  it.each(part("round_trip").rows)("$id: there and back, H $H, D $D", (row) => {
    close(
      jumpAskedFor(gapAsking(row.H ?? 0, row.D ?? 0), row.D ?? 0),
      row.H ?? Number.NaN,
      part("round_trip").tolerance,
    );
  });
  it.each(part("fence_needed").rows)("$id: a fence of $F m asks for H $H over d $d from a stand of $h0 m", (row) => {
    const asked = jumpAskedFor(row.d ?? 0, (row.F ?? 0) - (row.h0 ?? 0));
    close(asked, row.H ?? Number.NaN, part("fence_needed").tolerance);
  });
  it.each(part("double_fence").rows)("$id: two fences in one leap, h1 $h1, h2 $h2, w $w", (row) => {
    // Seen from the top of the first: its height is gained besides the leap from there to the second.
    const asked = (row.h1 ?? 0) + jumpAskedFor(row.w ?? 0, (row.h2 ?? 0) - (row.h1 ?? 0));
    close(asked, row.H_eq ?? Number.NaN, part("double_fence").tolerance);
  });
  it("counts its samples", () => {
    const used = ["height_asked", "gap_needed", "round_trip", "fence_needed", "double_fence"].map(
      (name) => part(name).rows.length,
    );
    expect(used.reduce((sum, count) => sum + count, 0)).toBeGreaterThanOrEqual(15);
  });
});

describe("a search over launch angles", () => {
  it("agrees on 2 000 seeded layouts to 1 mm", () => {
    const random = seeded(7);
    let worst = 0;
    for (let layout = 0; layout < 2000; layout++) {
      const gap = 0.05 + 6 * random();
      const difference = -2 + 4 * random();
      worst = Math.max(worst, Math.abs(searched(gap, difference) - jumpAskedFor(gap, difference)));
    }
    expect(worst).toBeLessThan(0.001);
  });
});

describe("edges", () => {
  it("asks for the difference of height hard against the stand, and for nothing from above", () => {
    expect(jumpAskedFor(0, 0.8)).toBeCloseTo(0.8, 12);
    expect(jumpAskedFor(0, -0.5)).toBe(0);
    expect(jumpAskedFor(-0.3, 0.8)).toBeCloseTo(0.8, 12);
  });
});
