// A trailer's wheels and body count where a vehicle passes a drop or people, not its towing vehicle's alone.

import { describe, expect, it } from "vitest";
import { planWith, valuesIn } from "./rig.ts";

/** Straight along a track beside a ditch, or round a corner past a door; with a trailer of a width (m), or none. */
function passing(width: number | null, more: Readonly<Record<string, unknown>>) {
  const trailers = {
    trailers: { box: { width, hitch_to_axle: 3.6, hitch_to_front: 1.2, rear_overhang: 1.2, greatest_angle: "60 deg" } },
  };
  return planWith({
    vehicles: {
      pickup: {
        length: 5.3,
        wheelbase: 3.15,
        front_overhang: 0.95,
        width: 1.9,
        turning_circle: { across: 12.4, between: "kerbs" },
        hitch: 1.2,
      },
    },
    ...(width === null ? {} : trailers),
    ...more,
  });
}

const manoeuvre = (width: number | null, by: Readonly<Record<string, unknown>>) => ({
  through: {
    vehicle: "pickup",
    does: "drive through",
    moves: 1,
    clear: 0.3,
    ...by,
    ...(width === null ? {} : { with_trailer: "box" }),
  },
});

const existing = true;

describe("a trailer beside a drop", () => {
  const fromDrop = (width: number | null): number => {
    const plan = passing(width, {
      surfaces: {
        track: {
          centre_line: [
            [-40, 0],
            [40, 0],
          ],
          width: 6,
          for: ["vehicles"],
          existing,
        },
      },
      survey: { stations: { P1: { at: [-100, 0] }, P2: { line_to: "P1", tape: 1000 } } },
      banks: {
        drop: {
          crest: [
            [-40, -4],
            [40, -4],
          ],
          toe: [
            [-40, -6],
            [40, -6],
          ],
          height: 1.2,
          wet: false,
          existing,
        },
      },
      manoeuvres: manoeuvre(width, {
        comes_in_by: "track",
        on: ["track"],
        start: { at: [-10, 0], heading: "towards P2" },
        end: { at: [20, 0], heading: "towards P2" },
      }),
    });
    return valuesIn(plan, { measure: "wheels-from-drop", subject: { manoeuvre: "through", edge: "drop" } })[0]!;
  };

  // Both drive along the middle of the track; a path may miss its end by 2 cm, and bend a little on the way there.
  it("40 cm more of width brings its wheels 20 cm nearer (COMPUTED: half the width)", () => {
    expect(fromDrop(2.1) - fromDrop(2.5)).toBeCloseTo(0.2, 1);
  });
  it("comes nearer than its towing vehicle alone", () => {
    expect(fromDrop(2.5)).toBeLessThan(fromDrop(null) - 0.2);
  });
});

describe("a trailer past people", () => {
  const fromPeople = (width: number | null): number => {
    const plan = passing(width, {
      surfaces: {
        track: {
          centre_line: [
            [-30, 4],
            [20, 4],
          ],
          width: 8,
          for: ["vehicles"],
          existing,
        },
        lane: {
          centre_line: [
            [16, 40],
            [16, 1],
          ],
          width: 8,
          for: ["vehicles"],
          existing,
        },
        bench: {
          outline: [
            [8, 9],
            [10, 9],
            [10, 11],
            [8, 11],
          ],
          for: ["people"],
          existing,
        },
      },
      manoeuvres: manoeuvre(width, { comes_in_by: "track", goes_out_by: "lane", on: ["track", "lane"] }),
    });
    return valuesIn(plan, { measure: "swept-clear-of", subject: { manoeuvre: "through", other: "bench" } })[0]!;
  };

  it("is wider than its towing vehicle and cuts the corner", () => {
    expect(fromPeople(2.5)).toBeLessThan(fromPeople(null) - 0.2);
  });
});
