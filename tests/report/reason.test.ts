// A rule in words: every number with its unit and unrounded, the figures of a table, places by their names.

import { describe, expect, it } from "vitest";
import { reasonText, rulebook } from "../../src/index.ts";

const book = rulebook();
const reason = (id: string): string => {
  const card = book.cards.find((one) => one.id === id);
  return card ? reasonText(card, book).replace(/\s+/g, " ") : "";
};

describe("a rule in words", () => {
  it("rounds no limit: 75 mm stays 75 mm", () => {
    const text = reason("drains/pipe-too-small"); // READ second-hand: Approved Document H1, table 6 note
    expect(text).toContain("the bore must be at least 75 mm");
    expect(text).toContain("the bore must be at least 125 mm");
  });
  it("gives the edges of a condition with their unit", () => {
    const text = reason("drains/too-flat");
    expect(text).toContain("the bore of the run is over 90 mm and up to 115 mm");
    expect(text).toContain("peak flow is over 1 l/s");
    expect(text).not.toMatch(/\d\.\d{5}/);
  });
  it("gives the figures of a table, not only its name", () => {
    expect(reason("fences/jumped-in-from-stand")).toMatch(/rise ordinary: .*fox 1\.2 m/u);
  });
  it("says how fast ground soaks in a unit that can be read: 1e-6 m/s is 3.6 mm/h", () => {
    expect(reason("drains/soaks-too-slowly")).toContain("at least 3.6 mm/h"); // COMPUTED: 1e-6 m/s x 3600 s/h
  });
  it("names places as people do", () => {
    const text = reason("trees/works-in-root-zone");
    expect(text).toContain("The United Kingdom");
    expect(text).not.toContain("United kingdom");
  });
  it("names what a plan must say for a limit to hold, by the plan's own words", () => {
    const text = reason("works/trench-not-supported");
    expect(text).toContain('where "somebody goes in" holds and "supported" is not: the depth must be at most 0 m');
    expect(text).toContain("What is found: depth.");
  });
  it("keeps within 100 columns", () => {
    const widest = book.cards.map((card) =>
      Math.max(
        ...reasonText(card, book)
          .split("\n")
          .map((line) => line.length),
      ),
    );
    expect(Math.max(...widest)).toBeLessThanOrEqual(100);
  });
  it("says of a yes or no that it must be so", () => {
    expect(reason("fences/live-wire-barbed")).not.toContain("at least 1");
  });
  it.each(book.cards.map((card) => card.id))("%s has no missing words and no stray figures", (id) => {
    expect(reason(id)).not.toMatch(/what the plan says must|undefined|NaN|\d\.\d{5}/u);
  });
});
