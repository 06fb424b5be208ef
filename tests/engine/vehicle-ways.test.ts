// Where each vehicle goes at each stage is told in words, whether it has the room or not.

import { describe, expect, it } from "vitest";
import { inspectionOf } from "../examples/scene.ts";

const told = (name: string): readonly string[] => inspectionOf(name).report.plans.flatMap(({ goes = [] }) => goes);

describe("Tansy Bank", () => {
  it("tells of every vehicle, at every stage that it comes in", () => {
    const all = told("tansy-bank");
    expect(all.filter((line) => line.startsWith("WHERE"))).toEqual(
      ["now", "yard", "finished"].map((stage) => `WHERE VEHICLES GO at stage "${stage}":`),
    );
    expect(all[1]).toContain(
      '-  pickup ("tools come") goes out over "drive", backwards out by "drive": it has the room',
    );
    expect(all[3]).toContain(
      '-  lorry ("blocks come") delivers and turns over "drive" and "yard", forwards in and out by "drive": it has not the room that is wanted',
    );
    const finished = all.slice(4).join("\n");
    expect(all.length).toBe(10);
    for (const words of [
      'stage "finished"',
      'lorry ("feed comes") turns round over "drive" and "yard", forwards in and out by "drive": it has not the room that is wanted',
      'pickup ("pickup turns") turns round over "drive" and "yard", forwards in and out by "drive": it has the room that is wanted',
      'pickup ("park pickup") parks in "west bay" over "drive" and "yard", in by "drive"',
      'low car ("park car") parks in "east bay"',
      'low car with box trailer ("trailer turns") turns round over "drive" and "yard", forwards in and out by "drive": it has the room',
    ])
      expect(finished).toContain(words);
  });
  it("says of the mended twin that the lorry has its room", () => {
    expect(told("tansy-bank-mended").join(" ")).toContain(
      'lorry ("blocks come") delivers and turns over "drive" and "yard", forwards in and out by "drive": it has the room that is wanted',
    );
  });
});

it("a plan without vehicles tells of none", () => {
  expect(told("sallow-yard")).toEqual([]);
});
