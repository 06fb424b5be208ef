// How much of a change is enough, against plain bisection that asks at every middle (the same answer, to the bit), and against closed forms.

import { describe, expect, test } from "vitest";
import { fine, leastAmount, rememberedMargins } from "../../src/engine/least-amount.ts";
import { slack } from "../../src/engine/judge.ts";
import { seeded } from "../seeded.ts";

type Margin = (amount: number) => number;

function byBisection(margin: Margin, target: number, most: number): number | null {
  const holds = (amount: number) => margin(amount) >= target - slack;
  if (holds(0)) return 0;
  if (!holds(most)) return null;
  let [low, high] = [0, most];
  while (high - low > fine) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const random = seeded(20261125);
/** Margins that grow with the amount: straight, bent, stepped, kinked, and one that ends where nothing is in the way. */
const forms: Readonly<Record<string, (root: number) => Margin>> = {
  straight: (root) => (x) => 0.8 * (x - root),
  square: (root) => (x) => x * x - root * root,
  "flat then steep": (root) => (x) => (x - root) ** 3,
  hypotenuse: (root) => (x) => Math.hypot(x, 2) - Math.hypot(root, 2),
  kinked: (root) => (x) => Math.min(3 * (x - root), 0.1 * (x - root)),
  "a step": (root) => (x) => (x < root ? -0.4 : 0.7),
  "open from somewhere": (root) => (x) => (x < root ? x - root - 0.2 : Infinity),
};

describe("the least amount", () => {
  test.each(Object.keys(forms))("of a margin that is %s is that of plain bisection", (name) => {
    for (let draw = 0; draw < 200; draw++) {
      const margin = (forms[name] as (root: number) => Margin)(20 * random());
      const target = draw % 2 === 0 ? 0 : 0.3 * random();
      expect(leastAmount(margin, { target, most: 20 })).toBe(byBisection(margin, target, 20));
    }
  });

  test("of a straight margin is asked for at few amounts: both ends, two about the root, and none twice", () => {
    let asked = 0;
    const margins = rememberedMargins((x) => {
      asked++;
      return 0.5 * (x - 3.217);
    });
    expect(leastAmount(margins, { target: 0, most: 20 })).toBeCloseTo(3.217, 3);
    expect(asked).toBeLessThanOrEqual(5);
    leastAmount(margins, { target: 0, most: 20 });
    expect(asked).toBeLessThanOrEqual(5);
  });

  test("is nothing where it holds already, and null where the most is not enough or cannot be told", () => {
    expect(leastAmount(() => 1, { target: 0.5, most: 20 })).toBe(0);
    expect(leastAmount((x) => x - 30, { target: 0, most: 20 })).toBeNull();
    expect(leastAmount(() => null, { target: 0, most: 20 })).toBeNull();
  });
});
