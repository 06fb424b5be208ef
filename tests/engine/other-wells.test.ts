// One well that is drawn says nothing of the neighbour's. PRACTICE; the distances stand in the cards.

import { describe, expect, it } from "vitest";
import { checkPlan } from "../../src/index.ts";

const asked = (body: string, { place = "england", none = "[]" } = {}) => {
  const text = `sightrail: 1\ntitle: wells\nplace: [${place}]\nas_of: 2026-11-25\nstages: [now]\nnone: ${none}\n${body}`;
  return checkPlan({ file: "wells.yaml", text }, { asOf: "2026-11-25" }).needs.filter(({ asks }) =>
    asks.includes("besides"),
  );
};
const well = "water:\n  well: {at: [400, 0], kind: well, existing: true}\n";
const muck = "heaps:\n  muck: {circle: {at: [0, 0], across: 4}, of: manure, existing: true}\n";

describe("wells besides those drawn", () => {
  it("are asked for once, with the farthest distance of the place, though the drawn one lies far off", () => {
    const [need, ...more] = asked(`${well}${muck}`);
    expect(more).toEqual([]);
    expect(need?.asks).toBe(
      'whether there are wells, boreholes or springs besides water "well" within 50 m of heap "muck", a neighbour\'s too: draw them, or put "other wells" under none if they were looked for and are not there',
    );
    expect(need).toMatchObject({ stakes: "safety", waits: ["separation/heap-near-well"], reason: "unsaid" });
  });

  it("are looked for farther where a place asks for more: 250 ft in the United States", () => {
    expect(asked(`${well}${muck}`, { place: "united states" })[0]?.asks).toContain("within 77 m of");
  });

  it.each([
    ["they were looked for", `${well}${muck}`, "[other wells]"],
    [
      "nothing is there that fouls water",
      `${well}heaps:\n  stone: {circle: {at: [0, 0], across: 4}, of: stone, existing: true}\n`,
      "[]",
    ],
    ["no well is drawn: the rules themselves ask", muck, "[]"],
  ])("are not asked for where %s", (_, body, none) => {
    expect(asked(body, { none })).toEqual([]);
  });

  it("are asked for by a shed with sprays, and by many things at once", () => {
    const shed = "buildings:\n  shed: {outline: [[0, 0], [3, 0], [3, 3]], holds: [sprays], existing: true}\n";
    expect(asked(`${well}${shed}`)[0]?.asks).toContain('of building "shed"');
    const tanks =
      "septic_tanks:\n  tank: {at: [9, 9], existing: true}\nanimals:\n  pigs: {outline: [[20, 0], [30, 0], [30, 9]], species: pig, existing: true}\ntanks:\n  store: {circle: {at: [40, 0], across: 8}, holds: slurry, existing: true}\n";
    expect(asked(`${well}${shed}${muck}${tanks}`)).toHaveLength(1);
    expect(asked(`${well}${shed}${muck}${tanks}`)[0]?.asks).toContain("of what can foul water");
  });
});
