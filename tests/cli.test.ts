// The command as a person types it: exit codes, files saved, mistyped words, standard input.

import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { main } from "../src/cli/main.ts";
import { root } from "./house/rule-files.ts";

const folder = mkdtempSync(join(tmpdir(), "sightrail-"));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}
async function run(args: readonly string[], input = ""): Promise<Ran> {
  let out = "";
  let err = "";
  const code = await main(args, {
    out: (text) => (out += text),
    err: (text) => (err += text),
    readInput: () => input,
    today: "2026-11-25",
    columns: 100,
    colour: false,
  });
  return { code, out, err };
}
function fileWith(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const example = join(root, "examples/sallow-yard/plan.yaml");
const quiet = `sightrail: 1
title: One path
place: [england]
surfaces:
  path: {centre_line: [[0, 0], [20, 0]], width: 1, for: [feet], existing: true}
hedges:
  north: {line: [[5, 1.5], [15, 1.5]], height: 1, existing: true}
  south: {line: [[5, -1.5], [15, -1.5]], height: 1, existing: true}
none: [overhead lines, buried services, gas, oil, wells, springs, septic, old tanks and pits, watercourses, ponds, flooding, veteran trees, protected trees, trees, protected animals, asbestos, unknown fill, made ground, rock, high ground water, steep ground, retaining walls, deep digs, neighbours close by, footings close by, public way, children, livestock, rights of way, heritage, boundary dispute, overhead branches, weak bridges, live fences, slurry, invasive plants]
`;

describe("check", () => {
  it("exits 1 where something fails, and prints the report", async () => {
    const { code, out } = await run(["check", example]);
    expect(code).toBe(1);
    expect(out).toContain("SALLOW YARD");
    expect(out).toContain("WILL NOT WORK");
  });
  it("exits 2 with file and line where a plan cannot be read, and checks the rest", async () => {
    const { code, out } = await run(["check", fileWith("bad.yaml", quiet.replace("height: 1,", "heigth: 1,"))]);
    expect(code).toBe(2);
    expect(out).toContain("line 7");
    expect(out).toContain("heigth");
  });
  it("exits 2 where there is no such file, no such option or no such stage", async () => {
    expect((await run(["check", join(folder, "nothing.yaml")])).code).toBe(2);
    expect((await run(["check", example, "--stage", "harvest"])).code).toBe(2);
    expect((await run(["check", example, "--colour-blind"])).code).toBe(2);
    expect((await run(["check", example, "--as-of", "next week"])).code).toBe(2);
    expect((await run(["check", example, "--save", "report.doc"])).code).toBe(2);
  });
  it("tells the plan by its own name and place where a stage or an option is asked for that it has not", async () => {
    const path = fileWith(
      "staged.yaml",
      `${quiet}stages: [now, works]\noptions: {wide: {remove: {hedges: [north]}}}\n`,
    );
    for (const [flag, name, meant] of [
      ["--stage", "wroks", "works"],
      ["--option", "wyde", "wide"],
    ] as const) {
      const { code, out } = await run(["check", path, flag, name]);
      expect(code).toBe(2);
      expect(out).toMatch(/^ONE PATH .*England/s);
      expect(out).toContain(`Did you mean "${meant}"?`);
      expect(out).toContain("Nothing was checked. That says nothing about the plan.");
      expect(out).not.toMatch(/MET:|the rest was checked/);
    }
  });
  it("says where to look next", async () => {
    const { out } = await run(["check", example]);
    expect(out.replace(/\s+/g, " ")).toContain(`What to measure next: sightrail remeasure ${example}`);
  });
  it("wants a day where a day is wanted, whatever the command", async () => {
    for (const args of [
      ["ground", example],
      ["setout", example],
      ["remeasure", example],
      ["reason", "1", example],
    ])
      expect(await run([...args, "--as-of", "tomorrow"])).toMatchObject({
        code: 2,
        out: "",
        err: "--as-of: expected a day such as 2026-11-25, got tomorrow.\n",
      });
  });
  it("reads a plan from standard input", async () => {
    const { out } = await run(["check", "-"], quiet);
    expect(out).toContain("ONE PATH");
  });
  it("saves what is asked for", async () => {
    const files = ["a.json", "a.txt", "a.sarif", "a.svg"].map((name) => join(folder, name));
    await run(["check", example, ...files.flatMap((file) => ["--save", file])]);
    const [json, txt, sarif, svg] = files.map((file) => readFileSync(file, "utf8"));
    expect((JSON.parse(json ?? "") as { sightrail: number }).sightrail).toBe(1);
    expect(txt).toContain("SALLOW YARD");
    expect((JSON.parse(sarif ?? "") as { version: string }).version).toBe("2.1.0");
    expect(svg).toContain("<svg");
  });
  it("writes no metres as degrees: without an earth tie there is no GeoJSON", async () => {
    const file = join(folder, "a.geojson");
    const { code, err } = await run(["check", example, "--save", file]);
    expect(code).toBe(2);
    expect(err).toContain("earth:");
    const tied = `${quiet}survey: {stations: {P1: {at: [0, 0]}}}\nearth: {station: P1, latitude: 52.0831, longitude: -3.1162, north: 4 deg}\n`;
    expect((await run(["check", fileWith("tied.yaml", tied), "--save", file])).code).toBe(0);
    const collection = JSON.parse(readFileSync(file, "utf8")) as {
      type: string;
      features: { geometry: { coordinates: unknown } }[];
    };
    expect(collection.type).toBe("FeatureCollection");
    expect(JSON.stringify(collection.features[0]?.geometry.coordinates)).toContain("-3.11");
  });
  it("reads only its own includes, and only from its own folder", async () => {
    fileWith("more.yaml", "trees:\n  ash: {at: [3, 3], girth: 1.2, existing: true}\n");
    const whole = await run(["check", fileWith("with.yaml", `${quiet}include: [more.yaml]\n`), "--all"]);
    expect(whole.code).toBeLessThan(2);
    const outside = await run(["check", fileWith("out.yaml", `${quiet}include: [../../etc/passwd]\n`)]);
    expect(outside.code).toBe(2);
    expect(outside.out).toContain("folder");
  });
  it("writes no report over a plan", async () => {
    const path = fileWith("plan.json", quiet);
    const { code, err } = await run(["check", path, "--save", path]);
    expect(code).toBe(2);
    expect(err).toContain("is the plan itself");
    expect(readFileSync(path, "utf8")).toBe(quiet);
  });
  it("reads no device", async () => {
    const { code, out } = await run(["check", "/dev/zero"]);
    expect(code).toBe(2);
    expect(out).toContain("got a device");
  });
  it("reads no pipe, nothing larger than a plan, and no name that the disk cannot hold", async () => {
    const pipe = join(folder, "pipe.yaml");
    execFileSync("mkfifo", [pipe]);
    expect((await run(["check", pipe])).out).toContain("got a pipe");
    const long = await run(["check", join(folder, "a".repeat(5000))]);
    expect(long).toMatchObject({ code: 2, err: "" });
    expect(long.out.replace(/\s+/g, " ")).toContain("a name that is too long");
    expect((await run(["check", "-"], "#".repeat(11 * 1024 * 1024))).out).toContain("at most 10 MB");
  });
  it("takes several plans, and the worst of them decides", async () => {
    const { code } = await run(["check", example, join(folder, "nothing.yaml")]);
    expect(code).toBe(2);
  });
});

describe("a name that is not a plan's", () => {
  it.each(["examples/sallow-yard", "examples/sallow-yard/", "examples/sallow-yard/plan"])(
    "%s: the plan that was meant is named",
    async (name) => {
      const { code, out } = await run(["check", join(root, name)]);
      expect(code).toBe(2);
      expect(out.replace(/\s+/g, " ")).toContain(`Give ${example}.`);
      expect(out).not.toMatch(/line 1|MET:/);
    },
  );
  it("says what a folder without one is wanted to hold", async () => {
    const { out } = await run(["check", folder]);
    expect(out.replace(/\s+/g, " ")).toContain("Give the plan in it by its name");
  });
});

describe("reason and rules", () => {
  it("prints a rule whole, with how its source was seen", async () => {
    const { code, out } = await run(["reason", "trees/works-in-root-zone"]);
    expect(code).toBe(0);
    expect(out).toContain("12 times the stem of the tree");
    expect(out).toMatch(/read second-hand|page read/);
  });
  it("tells the rule behind a number of a report", async () => {
    const report = await run(["check", example]);
    const first = / 1\. (\w+ "[^"]+")/.exec(report.out)?.[1] ?? "none";
    const { code, out } = await run(["reason", "1", example]);
    expect(code).toBe(0);
    expect(out.split("\n")[0]).toContain(first);
    expect(out).toMatch(/^Rule [a-z]+\/[a-z-]+, in rules\//m);
    expect(report.out.replace(/\s+/g, " ")).toContain(`More on a number above: sightrail reason NUMBER ${example}`);
  });
  it("asks for the plan of a number, and says where a report has no such number", async () => {
    expect(await run(["reason", "3"])).toMatchObject({
      code: 2,
      err: "Name the plan too: sightrail reason 3 yard.yaml\n",
    });
    const { code, err } = await run(["reason", "99", example]);
    expect(code).toBe(2);
    expect(err).toContain("has no number 99");
  });
  it("names the rules that hold a part of a name", async () => {
    const { code, err } = await run(["reason", "jumped"]);
    expect(code).toBe(2);
    expect(err).toContain("fences/jumped-in-from-stand, fences/jumped-out-from-stand");
  });
  it("asks whether a near rule was meant", async () => {
    const { code, err } = await run(["reason", "tree/works-in-root-zone"]);
    expect(code).toBe(2);
    expect(err).toContain("trees/works-in-root-zone");
  });
  it("lists the rules", async () => {
    const { code, out } = await run(["rules"]);
    expect(code).toBe(0);
    expect(out).toContain("fences/jumped-in-from-stand");
  });
});

describe("cards of one's own", () => {
  const card = `title: A building stands in the county set-back
asks: How far is the building from the boundary?
about: {thing: building}
against: {other: boundary}
within: 40 m
measure: clear-distance
stakes: damage
limits: [{id: county, must: {at_least: 7 m}, where: anywhere, standing: practice}]
fault: stands in the county set-back
cautions: [Ask the county before digging footings.]
`;
  const plan = `${quiet}boundaries:
  lane side: {line: [[-10, -8], [40, -8]], ours: left, beyond: road}
buildings:
  shed: {outline: [[0, -3], [4, -3], [4, -6], [0, -6]], eaves: 2, existing: true}
`;
  it("need no code", async () => {
    const { out } = await run(["check", fileWith("plan.yaml", plan), "--rules", ownCards("set-back.yaml", card)]);
    expect(out).toContain("stands in the county set-back: 2.00 m clear of boundary");
  });
  it("are found behind a link, and a folder without any is a problem", async () => {
    const own = mkdtempSync(join(folder, "rules-"));
    const none = await run(["check", fileWith("plan.yaml", plan), "--rules", own, "--width", "200"]);
    expect(none.code).toBe(2);
    expect(none.out.replace(/\s+/g, " ")).toContain("a folder without any");
    symlinkSync(fileWith("linked.yaml", card), join(own, "set-back.yaml"));
    const { out } = await run(["check", fileWith("plan.yaml", plan), "--rules", own]);
    expect(out).toContain("stands in the county set-back");
  });
  it("are read beside links that lead nowhere, to themselves or to a folder, and each of those is told", async () => {
    const own = ownCards("set-back.yaml", card);
    symlinkSync("b.yaml", join(own, "b.yaml"));
    symlinkSync(".", join(own, "loop"));
    symlinkSync("/", join(own, "root"));
    const { code, out } = await run(["check", fileWith("plan.yaml", plan), "--rules", own, "--width", "200"]);
    expect(code).toBe(2);
    expect(out.replace(/\s+/g, " ")).toContain(
      "b.yaml: expected a file that can be read, got a link that leads back to itself",
    );
    expect(out).toContain("1 thing could not be read");
    expect(out).toContain("stands in the county set-back");
  });
  it("say so where they stand in the stead of a built-in rule", async () => {
    const own = mkdtempSync(join(folder, "rules-"));
    mkdirSync(join(own, "access"));
    const text = readFileSync(join(root, "rules/access/passage-too-narrow.yaml"), "utf8");
    writeFileSync(join(own, "access", "passage-too-narrow.yaml"), text);
    const { out } = await run(["check", fileWith("plan.yaml", plan), "--rules", own, "--width", "200"]);
    expect(out.replace(/\s+/g, " ")).toContain("access/passage-too-narrow is a card of your own, in the stead of");
  });
  it("are answered with line and hint where they are wrong", async () => {
    const { code, out } = await run([
      "check",
      fileWith("plan.yaml", plan),
      "--rules",
      ownCards("set-back.yaml", card.replace("clear-distance", "clear-distanse")),
    ]);
    expect(code).toBe(2);
    expect(out).toContain("line 6");
    expect(out).toContain("clear-distance");
  });
});

function ownCards(name: string, text: string): string {
  const own = mkdtempSync(join(folder, "rules-"));
  writeFileSync(join(own, name), text);
  return own;
}

describe("help", () => {
  it("exits 0 for help and version, 2 for an unknown command", async () => {
    expect((await run(["--help"])).code).toBe(0);
    expect((await run(["--version"])).code).toBe(0);
    expect((await run(["chek", example])).code).toBe(2);
  });
});
