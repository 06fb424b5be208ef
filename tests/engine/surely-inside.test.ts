// What is told to be met without its doubt must be what the whole reckoning says: seeded pairs of a way and a thing.

import { expect, test } from "vitest";
import { seeded } from "../seeded.ts";
import { inBand, placeInBand } from "../../src/engine/in-band.ts";
import { doubtsRead, spread } from "../../src/engine/spread.ts";
import { worstPlace } from "../../src/engine/worst-place.ts";
import { clearDistance } from "../../src/measures/clear-distance.ts";
import type { Feature } from "../../src/model/plan.ts";
import type { CandidatePlace, Scene } from "../../src/model/reading.ts";
import { planWith } from "../measures/rig.ts";

function withoutSteepest(place: CandidatePlace): CandidatePlace {
  const { key, value, witness } = place;
  return { key, value, witness };
}

/** Bands whose edge lies at, near and far from a number. */
function bands({ value, u }: { readonly value: number; readonly u: number }) {
  const edges = [0, 0.5, 2, 20, 2000].flatMap((times) => [value - times * u, value + times * u]);
  return edges.flatMap((edge) => [
    { of: "gap", under: edge },
    { of: "gap", upTo: edge },
    { of: "gap", over: edge },
    { of: "gap", from: edge - 1, under: edge },
  ]);
}

test("a bound on the doubt never lies below the doubt, and the verdicts are those of the doubt itself", () => {
  const random = seeded(20261125);
  const between = (low: number, high: number) => low + (high - low) * random();
  let sure = 0;
  const seen = new Set<string>();
  for (let k = 0; k < 120; k++) {
    const turn = between(-2, 2);
    const plan = planWith({
      walls: {
        one: {
          line: [
            [0, 0],
            [between(2, 12), 0],
            [between(14, 20), turn * 4],
          ],
          thickness: between(0.1, 1.2),
        },
      },
      trees: { oak: { at: [between(-5, 25), between(-12, 12)], stem: 0.4 } },
    });
    const [thing, other] = [
      plan.features.find(({ kind }) => kind === "wall"),
      plan.features.find(({ kind }) => kind === "tree"),
    ];
    const read = (quantity: { readonly id: number }) => plan.numbers.values[quantity.id] as number;
    const scene = { read, standing: () => plan.features } as unknown as Scene;
    const found = clearDistance.find({ thing: thing as Feature, other: other as Feature }, scene, {
      point: "",
      less: "",
    });
    if (found.is !== "found") continue;
    const requirement = { sense: "at_least", bound: { value: () => 1, u: 0 } } as const;
    const context = { stakes: "damage", read, book: plan.numbers } as const;
    const bare = found.places.map((place): CandidatePlace => withoutSteepest(place));
    const quick = worstPlace(found.places, requirement, context);
    const whole = worstPlace(bare, requirement, context);
    expect(quick?.verdict).toBe(whole?.verdict);
    expect(quick?.probability).toBeCloseTo(whole?.probability ?? Number.NaN, 9);
    if (quick?.verdict === "met" && (quick.probability ?? 0) === 1) sure++;
    for (const place of found.places) {
      if (place.steepest === undefined) continue;
      const most = place.steepest * doubtsRead(place.value, read, plan.numbers).doubts;
      const number = spread(place.value, read, plan.numbers);
      expect(number.u).toBeLessThanOrEqual(most);
      for (const band of bands(number)) {
        expect(placeInBand(band, place, context)).toBe(inBand(band, number));
        seen.add(inBand(band, number));
      }
    }
  }
  expect(sure).toBeGreaterThan(15);
  expect([...seen].sort()).toEqual(["no", "perhaps", "yes"]);
});
