// Nearest known words. Distances of the published pairs: Damerau 1964 names the four slips (MEMORY); "kitten" to
// "sitting" is three, the usual textbook pair for Levenshtein's distance (MEMORY).

import { describe, expect, test } from "vitest";
import { nearestWord, slipsBetween } from "../../src/reading/nearest-word.ts";

describe("slips between two words", () => {
  test.each([
    ["kitten", "sitting", 3],
    ["saturday", "sunday", 3],
    ["height", "heigth", 1],
    ["ca", "abc", 3],
    ["", "abc", 3],
    ["fence", "fence", 0],
  ])("%s and %s: %i", (a, b, slips) => {
    expect(slipsBetween(a, b)).toBe(slips);
    expect(slipsBetween(b, a)).toBe(slips);
  });
});

describe("the word that was meant", () => {
  const known = ["height", "length", "thickness", "line", "on_wall", "keep_in", "keep_out", "septic_tanks"];
  test.each([
    ["heigth", "height"],
    ["HEIGHT", "height"],
    ["heights", "height"],
    ["on-wall", "on_wall"],
    ["on wall", "on_wall"],
    ["keepout", "keep_out"],
    ["septic_tank", "septic_tanks"],
    ["thicknes", "thickness"],
    ["colour", null],
    ["li", null],
    ["", null],
    ["x".repeat(5_000), null],
  ])("%s means %s", (written, meant) => {
    expect(nearestWord(written, known)).toBe(meant);
  });

  test("a synonym stands before a likeness, whatever its case and number", () => {
    const synonyms = { dry_well: "soakaways", linen: "height" };
    expect(nearestWord("Dry wells", known, synonyms)).toBe("soakaways");
    expect(nearestWord("linen", known, synonyms)).toBe("height");
  });
});
