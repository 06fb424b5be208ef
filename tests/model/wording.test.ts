// How falls are worded: one in so many, percent, degrees.

import { describe, expect, it } from "vitest";
import { words, wordsApart } from "../../src/model/wording.ts";

describe("a fall", () => {
  it.each([
    [1 / 80, "1 in 80"],
    [1 / 94.2, "1 in 94"],
    [1 / 6.5, "1 in 6.5"],
    [1 / 8, "1 in 8"],
    [-1 / 50, "1 in 50 uphill"],
    [0, "level"],
  ])("of %d is %s", (slope, text) => {
    expect(words(slope, "slope", { shownIn: "1 in" })).toBe(text);
  });
  it("in degrees is the angle it makes: 1 in 3 is 18.4, 26.79 % is 15 (READ, mower manuals)", () => {
    expect(words(1 / 3, "slope", { shownIn: "deg", decimals: 1 })).toBe("18.4 deg");
    expect(words(0.26795, "slope", { shownIn: "deg", decimals: 1 })).toBe("15 deg");
    expect(words(Math.PI / 4, "angle", { shownIn: "deg", decimals: 1 })).toBe("45 deg");
  });
  it("is told apart from what is wanted", () => {
    expect(wordsApart(1 / 80.3, 1 / 80, "slope", { shownIn: "1 in" })).toEqual(["1 in 80.3", "1 in 80"]);
    expect(wordsApart(1 / 80, 1 / 80, "slope", { shownIn: "1 in" })).toEqual(["1 in 80", "1 in 80"]);
    expect(wordsApart(1 / 94, 1 / 80, "slope", { shownIn: "1 in" })).toEqual(["1 in 94", "1 in 80"]);
  });
});
