// Points of files beside the plan become stations: where, how well known, and what is told of them.

import { describe, expect, it } from "vitest";
import { checkPlan, wants } from "../../src/index.ts";
import { pointFileText } from "../../src/plan/point-files.ts";
import { pointOf, resolveText, sourceOf, uOf } from "./resolved.ts";

const plan = (survey: string, more = "") => `
survey:
  stations:
    P1: {at: [0, 0]}
${survey}
${more}`;

function resolved(text: string, file: string, content: string) {
  const { checked, problems } = pointFileText({ file, text: content }, sourceOf(text));
  const whole = resolveText(text, { includes: [checked] });
  const place = (name: string) => {
    const spot = whole.plan.pegs.get(name);
    if (!spot) throw new Error(`no ${name}`);
    return { at: pointOf(whole.plan, spot), u: uOf(whole.plan, spot.east) };
  };
  return { problems: [...problems, ...whole.problems], place, plan: whole.plan };
}

describe("a CSV beside the plan", () => {
  const text = plan("  coordinates: {files: [{file: pegs.csv, prefix: T, plus_minus: 30 mm}]}");
  it("gives stations with the doubt of the file, and their levels", () => {
    const { place, problems, plan: whole } = resolved(text, "pegs.csv", "name,east,north,level\nA1,12.5,-3.25,99.8\n");
    expect(problems).toEqual([]);
    expect(place("TA1").at).toEqual([12.5, -3.25]);
    expect(place("TA1").u).toBeCloseTo(0.015, 9);
    expect(whole.levels.length).toBe(1);
  });
  it("is asked for, and is missed where it is not handed in", () => {
    expect(wants({ file: "plan.yaml", text })).toEqual(["pegs.csv"]);
    expect(resolveText(text).problems.map(({ code }) => code)).toEqual(["file-not-found"]);
  });
  it("puts its problems at its own lines", () => {
    const report = checkPlan(
      {
        file: "plan.yaml",
        text: `sightrail: 1\ntitle: t\n${text}`,
        includes: [{ file: "pegs.csv", text: "name,east,north\nB,1;2,3\n" }],
      },
      { asOf: "2026-11-25" },
    );
    expect(report.problems.map(({ file, line, code }) => [file, line, code])).toContainEqual([
      "pegs.csv",
      2,
      "not-a-number",
    ]);
  });
});

describe("points on the earth", () => {
  // At 45 degrees one degree of latitude is 111131.777 m and one of longitude 78846.835 m (COMPUTED from the series of
  // the ellipsoid); a thousandth of each is taken here, where the tangent plane differs by less than a millimetre.
  const waypoint = '<gpx version="1.1"><wpt lat="45.001" lon="7.001"><name>W</name></wpt></gpx>';
  const tie = (north: string) => `earth: {station: P1, latitude: 45, longitude: 7, north: ${north}}`;
  const files = "  coordinates: {files: [{file: walk.gpx, plus_minus: 40 mm}]}";
  it("come to the plan's plane by its earth tie", () => {
    const { place, problems } = resolved(plan(files, tie("0 deg")), "walk.gpx", waypoint);
    expect(problems).toEqual([]);
    expect(place("W").at[0]).toBeCloseTo(78.846, 2);
    expect(place("W").at[1]).toBeCloseTo(111.132, 2);
    expect(place("W").u).toBeCloseTo(0.02, 9);
  });
  it("turn with the plan's north: with north a quarter turn to the east, true north is the plan's west", () => {
    const { place } = resolved(plan(files, tie("90 deg")), "walk.gpx", waypoint);
    expect(place("W").at[0]).toBeCloseTo(-111.132, 2);
    expect(place("W").at[1]).toBeCloseTo(78.846, 2);
  });
  it("are left out where nobody says how good they are: a phone decides no distance", () => {
    const { problems, plan: whole } = resolved(
      plan(files.replace(", plus_minus: 40 mm", ""), tie("0 deg")),
      "walk.gpx",
      waypoint,
    );
    expect(problems.map(({ code }) => code)).toEqual(["missing-key"]);
    expect(whole.pegs.size).toBe(1);
  });
  it("are left out, with a word, where the plan is not tied to the earth", () => {
    const { problems, plan: whole } = resolved(plan(files), "walk.gpx", waypoint);
    expect(problems.map(({ code }) => code)).toEqual(["no-earth-tie"]);
    expect(whole.pegs.size).toBe(1);
  });
});

describe("a file with a grid of its own", () => {
  // The plan's A, B, C at (0, 0), (24, 0), (6, 15); the file's grid is turned by 30 degrees and moved by (500, 700):
  // E = 500 + x cos 30 - y sin 30, N = 700 + x sin 30 + y cos 30 (COMPUTED).
  const turn = Math.PI / 6;
  const own = (x: number, y: number) =>
    [500 + x * Math.cos(turn) - y * Math.sin(turn), 700 + x * Math.sin(turn) + y * Math.cos(turn)] as const;
  const line = (name: string, x: number, y: number, level = "") =>
    `${name},${own(x, y)
      .map((value) => value.toFixed(5))
      .join(",")},${level}\n`;
  const text = (through: string) =>
    plan(
      `    B: {line_to: P1, tape: 24.000}\n    C: {ties: {P1: 16.155, B: 23.431}, side: left of P1 to B}\n` +
        `  coordinates: {files: [{file: own.csv, plus_minus: 20 mm, through: ${through}}]}`,
    );
  const file = `name,east,north,level\n${line("T1", 0, 0)}${line("T2", 24, 0)}${line("T3", 6, 15)}${line("W", 10, 7, "99.5")}`;

  it("is brought onto the plan through the pegs that both have, within millimetres", () => {
    const { place, problems, plan: whole } = resolved(text("{T1: P1, T2: B, T3: C}"), "own.csv", file);
    expect(problems).toEqual([]);
    expect(Math.hypot(place("W").at[0] - 10, place("W").at[1] - 7)).toBeLessThan(0.003);
    // ± 20 mm in the file, against a line with two ends as well known: u is some more than 10 mm.
    expect(place("W").u).toBeGreaterThan(0.01);
    expect(place("W").u).toBeLessThan(0.025);
    expect(whole.levels.length).toBe(1);
    expect(whole.surveyFacts?.measurements.filter(({ check }) => check).length).toBe(3);
  });
  it("shows where the file and the tapes do not fit", () => {
    const wrong = file.replace(line("T3", 6, 15), line("T3", 6, 15.4));
    const { plan: whole } = resolved(text("{T1: P1, T2: B, T3: C}"), "own.csv", wrong);
    expect(whole.surveyFacts?.probability).toBeLessThan(1e-6);
  });
  it("wants two points that both have", () => {
    const { problems } = resolved(text("{T1: P1, T9: B}"), "own.csv", file);
    expect(problems.map(({ code, got }) => [code, got])).toEqual([
      ["bad-geometry", "fewer of those that stand under through"],
    ]);
  });
  it("needs no earth tie for points of a receiver, but their ±", () => {
    const gps =
      '<gpx version="1.1"><wpt lat="52" lon="-3"><name>T1</name></wpt><wpt lat="52" lon="-2.99965"><name>T2</name></wpt><wpt lat="52.0001" lon="-2.9998"><name>W</name></wpt></gpx>';
    const asked = plan(
      "    B: {line_to: P1, tape: 24.03}\n  coordinates: {files: [{file: walk.gpx, plus_minus: 50 mm, through: {T1: P1, T2: B}}]}",
    );
    const { problems, place } = resolved(asked, "walk.gpx", gps);
    expect(problems).toEqual([]);
    // 0.0001 deg of latitude is 11.127 m at 52 degrees, 0.0002 of longitude 13.73 m (COMPUTED, series of the ellipsoid).
    expect(Math.abs(place("W").at[1] - 11.127)).toBeLessThan(0.05);
    expect(Math.abs(place("W").at[0] - 13.73)).toBeLessThan(0.05);
    const bare = asked.replace(" plus_minus: 50 mm,", "");
    expect(resolved(bare, "walk.gpx", gps).problems.map(({ code }) => code)).toEqual(["missing-key"]);
  });
});
