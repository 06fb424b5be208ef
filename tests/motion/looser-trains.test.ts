import { describe, expect, it } from "vitest";
import { compareLooserTrains } from "./looser-trains.ts";

describe("trains: larger ground, smaller bodies, more moves, smaller margin, a hitch that allows more", () => {
  it("take a checked path over, and every path holds when it is driven a second way", () => {
    const seen = compareLooserTrains(
      Array.from({ length: 12 }, (_, i) => i),
      1,
    );
    expect(seen.falsePossible).toEqual([]);
    expect(seen.worse).toEqual([]);
    expect(seen.loosened).toBeGreaterThan(60);
  });
});
