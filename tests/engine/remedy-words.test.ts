// A remedy names what it would spoil and by how much; for other programs the titles of the rules stay a list of their own.

import { describe, expect, it } from "vitest";
import { spoiledSentence } from "../../src/engine/spoiled.ts";
import { checkPlan } from "../../src/index.ts";

// A field of 10 m by 4 m, 48 m from the well: 50 m are advised. Moved 2.10 m to the east its corner comes to (60.1, 2),
// sqrt(2.9^2 + 3^2) = 4.17 m from the oak at (63, 5) (COMPUTED); 12 x 1.5 m / pi = 5.73 m are wanted there (COMPUTED).
const plan = {
  sightrail: 1,
  title: "a field, a well and a tree",
  place: ["ireland"],
  stages: ["now", "works"],
  water: { well: { kind: "well", at: [0, 0], existing: true } },
  trees: { oak: { at: [63, 5], girth: 1.5, existing: true } },
  drainage_fields: {
    bed: {
      outline: [
        [48, -2],
        [58, -2],
        [58, 2],
        [48, 2],
      ],
      from: "works",
    },
  },
};

describe("what a remedy would spoil", () => {
  const report = checkPlan({ file: "bed.yaml", text: JSON.stringify(plan) }, { asOf: "2026-11-25" });
  const [remedy] =
    report.findings.find(
      ({ rule, features, remedies }) => features.length === 2 && rule.startsWith("separation/") && remedies.length > 0,
    )?.remedies ?? [];

  it("is told with the thing and the distance", () => {
    expect(remedy?.words).toContain('Move drainage field "bed" 2.10 m to the east');
    expect(remedy?.words).toContain('(it comes within 4.17 m of the stem of tree "oak"; at least 5.73 m is wanted)');
  });

  it("stays a list of titles for other programs", () => {
    expect(remedy?.would_then_fail).toEqual(["works lie in a tree's root zone"]);
  });

  it("reads as a sentence, of one fault or of several", () => {
    expect(spoiledSentence([])).toBe("");
    expect(spoiledSentence([{ title: "a", words: "" }])).toBe(" But that would bring a new fault: a.");
    expect(spoiledSentence(["a", "b"].map((title) => ({ title, words: "x" })))).toBe(
      " But that would bring new faults: a (x); and b (x).",
    );
  });
});
