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
