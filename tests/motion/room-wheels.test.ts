// A road between two kerbs over which the body may hang: only the wheels must stay between them.

import { describe, expect, it } from "vitest";
import type { ManoeuvreQuestion } from "../../src/motion/manoeuvre.ts";
import { turnQuestion } from "../../src/motion/room-layout.ts";
import { noneBelow, smallestSize } from "../../src/motion/room-size.ts";
import { sceneVehicles } from "./published-vehicles.ts";

const far = 60;
/** The same road, with nothing beside it. */
function betweenKerbs(name: keyof typeof sceneVehicles): (deep: number) => ManoeuvreQuestion {
  const who = { vehicle: sceneVehicles[name], clearance: 0, changes: 2 };
  return (deep) => {
    const question = turnQuestion({ form: "road" }, { long: 0, deep }, who);
    return {
      ...question,
      clear: {
        rings: [
          [
            [-far, -far],
            [far, -far],
            [far, far],
            [-far, far],
          ],
        ],
      },
    };
  };
}

describe("three moves between two kerbs, the body free to hang over", () => {
  it.each([
    // Three full-lock arcs, closed form for the tyres (COMPUTED by another program, split headings on a 0.02 rad grid).
    ["compact", 5.35],
    ["P", 7.0],
    ["van", 6.2],
    ["tipper", 6.71],
  ] as const)("%s: the search brackets %d m", (name, closed) => {
    const ask = betweenKerbs(name);
    const found = smallestSize(ask, { from: 3, to: 12 });
    if (!found) throw new Error("nothing found");
    // Below: a first swing the other way, and the coarse grid of splits, 3 cm each. Above: the squeeze and one rounding.
    expect(found.size).toBeGreaterThan(closed - 0.06);
    expect(found.size).toBeLessThan(closed + 0.1);
    const none = noneBelow(ask, found.size, 3) ?? 0;
    expect(none).toBeLessThan(closed);
    expect(none).toBeGreaterThan(closed - 0.5);
  });
});
