// `room` as a person types it.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { main } from "../src/cli/main.ts";

const folder = mkdtempSync(join(tmpdir(), "sightrail-room-"));
afterAll(() => rmSync(folder, { recursive: true }));

async function run(...args: readonly string[]) {
  let out = "";
  let err = "";
  const code = await main(["room", ...args], {
    out: (text) => (out += text),
    err: (text) => (err += text),
    readInput: () => "",
    today: "2026-11-25",
    columns: 100,
    colour: false,
  });
  return { code, out, err };
}

const plan = join(folder, "plan.yaml");
writeFileSync(
  plan,
  `sightrail: 1
title: One car
place: [england]
vehicles:
  own car: {length: 4.5, width: 1.8, wheelbase: 2.6, front_overhang: 0.9, turning_circle: {across: 10.8, between: kerbs}}
`,
);

describe("room", () => {
  it("tells the room of a vehicle of the library and saves drawing, page, table and JSON", async () => {
    const files = ["a.svg", "a.html", "a.csv", "a.json", "a.txt"].map((name) => join(folder, name));
    const { code, out } = await run("B85 car", "--length", "12", ...files.flatMap((file) => ["--save", file]));
    expect(code).toBe(0);
    expect(out).toContain("B85 CAR: ROOM TO TURN ROUND");
    for (const file of files) expect(readFileSync(file, "utf8").length, file).toBeGreaterThan(200);
  });
  it("takes a vehicle of a plan, with the plan's own figures", async () => {
    const { code, out } = await run("--plan", plan, "--length", "12", "--moves", "5");
    expect(code).toBe(0);
    expect(out).toContain("OWN CAR: ROOM TO TURN ROUND");
    expect(out.replace(/\s+/g, " ")).toContain("turning circle: your own figures");
  });
  it("takes lengths in feet and inches, and lays them over those of the library", async () => {
    const { code, out } = await run("b85 car", "--vehicle-width", "6 ft", "--length", "40 ft");
    expect(code).toBe(0);
    expect(out).toContain("PEG THIS: 12.19 m long");
    expect(out).toContain("1.83 m wide");
  });
  it("takes a vehicle by its lengths alone", async () => {
    const own = ["--vehicle-length", "4.5", "--vehicle-width", "1.8", "--wheelbase", "2.6", "--front-overhang", "0.9"];
    const { code, out } = await run(...own, "--turning-circle", "10.8", "--shape", "gate", "--lane", "4");
    expect(code).toBe(0);
    expect(out).toContain("YOUR VEHICLE: GATE OFF A LANE");
  });
  it("takes a trailer of the library, and a gate with it on", async () => {
    const { code, out } = await run("pickup", "--trailer", "plant trailer", "--shape", "gate", "--lane", "5");
    expect(code).toBe(0);
    expect(out).toContain("PICKUP WITH PLANT TRAILER: ROOM WITHOUT REVERSING");
    expect(out.replace(/\s+/g, " ")).toContain(
      "hitched 1.20 m behind the rear axle of the vehicle (Common trade practice",
    );
  });
  it("writes no drawing of several into one file, and says so", async () => {
    const file = join(folder, "several.svg");
    const { code, err } = await run("b85 car", "german car", "--shape", "gate", "--save", file);
    expect(code).toBe(2);
    expect(err).toContain("a file holds one drawing");
  });
  it.each([
    [[], "Which vehicle?"],
    [["picup"], 'did you mean "pickup"?'],
    [["big lorry"], 'The library has no vehicle "big lorry". It has:\n  german small lorry\n  german large lorry\n'],
    [["hovercraft"], 'The library has no vehicle "hovercraft". It has:\n  aashto p\n'],
    [
      ["--vehicle-length", "5.1", "--vehicle-width", "1.87", "--wheelbase", "2.95", "--turning-circle", "11.8"],
      "the front axle to the front end",
    ],
    [["pickup", "--moves", "4"], "odd number of moves"],
    [["pickup", "--moves", "many"], "--moves: expected a whole number"],
    [["pickup", "--trailer", "cart"], "--trailer: expected farm trailer"],
    [["pickup", "--trailer", "livestock trailer"], "the rear axle back to the hitch"],
    [["pickup", "--walls", "high"], "--walls: expected none, ground, all"],
    [["pickup", "--shape", "star"], "--shape: expected rectangle"],
    [["pickup", "--entry", "side"], "--entry: expected middle"],
    [["pickup", "--clear", "wide"], "--clear: expected a length"],
    [["pickup", "--save", "a.doc"], "--save: expected a file ending in .txt"],
    [["--plan", "nowhere.yaml"], "no such file"],
    [["lorry", "--plan", plan], 'it has "own car"'],
    [["pickup", "b85 car", "--wheelbase", "3"], "one vehicle at a time"],
  ])("exits 2 and says what is wrong: %j", async (args, words) => {
    const { code, err } = await run(...args);
    expect(code).toBe(2);
    expect(err).toContain(words);
  });
});
