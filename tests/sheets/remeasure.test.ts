// The list to take outside: what it asks for, in which order, and how good it must be.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { main } from "../../src/cli/main.ts";
import { inspect, remeasureSheet, sheetText } from "../../src/index.ts";

const folder = mkdtempSync(join(tmpdir(), "sightrail-sheets-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** A fence that must keep wolves out: 0.19 m of gap where at most 0.20 m is wanted, known to a hand's width. */
const plan = {
  sightrail: 1,
  title: "The night pen",
  place: ["germany"],
  as_of: "2026-11-25",
  stages: ["now"],
  survey: {
    stations: {
      A: { at: [0, 0] },
      B: { line_to: "A", tape: 30 },
      C: { ties: { A: 20, B: 22 }, side: "left of A to B" },
      K: { ties: { A: 40, B: 35 }, side: "left of A to B" },
    },
  },
  fences: {
    "night pen": { line: ["A", "B"], bottom_gap: "0.19 ± 0.03", keep_out: ["wolf"], existing: true },
    "day pen": { line: ["A", "C"], keep_out: ["wolf"], existing: true },
  },
};
const text = JSON.stringify(plan);
const sheet = () => {
  const [worked] = inspect([{ file: "pen.yaml", text }], { asOf: "2026-11-25", remedies: false }).worked;
  if (!worked) throw new Error("nothing was worked out");
  return { made: remeasureSheet(worked), worked };
};

describe("the list", () => {
  const { made, worked } = sheet();
  const again = made.parts.find(({ heading }) => heading.startsWith("MEASURE AGAIN"));
  it("asks for the accuracy that decides: gap / 1.645, twice that as ±", () => {
    const entry = again?.entries.find(({ words }) => words.includes("night pen"));
    expect(entry?.words).toContain('Fence "night pen": the measurements cannot say');
    // 0.01 / 1.645 x 2 = 12.2 mm (COMPUTED); u = 15 mm, so ± 30 mm.
    expect(entry?.notes[0]).toBe("It is good to ± 30 mm; ± 12 mm would decide it.");
    expect(entry?.notes[1]).toMatch(/carries 100 parts in 100 of the doubt; ± 12 mm of it alone would decide$/);
    // The pegs have no part in this doubt, so that no tape between them is spoken of.
    expect(entry?.notes.length).toBe(2);
  });
  it("asks gap / 3.09 where somebody can be hurt", () => {
    for (const one of worked.deciding) {
      const finding = worked.findings.find(({ fingerprint }) => fingerprint === one.fingerprint);
      const by = finding?.stakes === "safety" && one.gap > 0 ? 3.0902323 : 1.6448536;
      expect(one.wantedU).toBeCloseTo(Math.abs(one.gap) / by, 7);
    }
    expect(worked.deciding.length).toBeGreaterThan(0);
  });
  it("lists what is missing, what can hurt first", () => {
    const first = made.parts.find(({ heading }) => heading.startsWith("MEASURE FOR THE FIRST TIME"));
    const words = first?.entries.map((entry) => entry.words) ?? [];
    expect(words).toContain('the gap at the bottom of fence "day pen" (m); 1 check waits');
    const harm = words.map((one) => one.includes("somebody can be hurt"));
    expect(harm).toEqual([...harm].sort((a, b) => Number(b) - Number(a)));
  });
  it("names the one more tape that helps most, where the doubt is that of the pegs", () => {
    const finding = worked.findings.find(
      ({ verdict, decided_by }) => verdict === "undecided" && decided_by === "survey",
    );
    if (!finding) throw new Error("nothing is undecided");
    // The reading hangs on where K stands to the north, two weak tapes away: its own sways stand for it.
    const sway = worked.plan.numbers.sways[worked.plan.pegs.get("K")?.north.id ?? -1] ?? new Map();
    const u = Math.hypot(...sway.values());
    const deciding = [{ fingerprint: finding.fingerprint, gap: 0.01, u, wantedU: u / 2, contributions: sway }];
    const told = remeasureSheet({ ...worked, findings: [finding], needs: [], deciding });
    const note = told.parts[0]?.entries[0]?.notes.at(-1);
    // C (13.60, 14.66) and K (21.25, 33.89) by the law of cosines, so 20.69 m apart (COMPUTED).
    expect(note).toBe(
      "One more tape would help most: C to K, about 20.69 m; then it is good to ± 18 mm, not enough by itself.",
    );
    expect(told.table.rows.at(-1)?.slice(1, 3)).toEqual(["one more tape", "C to K"]);
  });
  it("has a row of the table for every entry", () => {
    const entries = made.parts.flatMap((part) => part.entries).length;
    expect(new Set(made.table.rows.map(([order]) => order)).size).toBe(entries);
    expect(made.table.rows.every((row) => row.length === made.table.columns.length)).toBe(true);
  });
  it("prints no line wider than asked", () => {
    expect(
      Math.max(
        ...sheetText(made, 72)
          .split("\n")
          .map((line) => line.length),
      ),
    ).toBeLessThanOrEqual(72);
  });
});

describe("the commands", () => {
  const run = async (args: readonly string[]) => {
    const said = { out: "", err: "" };
    const code = await main(args, {
      out: (more) => (said.out += more),
      err: (more) => (said.err += more),
      readInput: () => text,
      today: "2026-11-25",
      columns: 100,
      colour: false,
    });
    return { code, ...said };
  };
  it.each(["remeasure", "setout", "ground"])("%s prints and saves text and CSV", async (command) => {
    const [txt, csv] = [join(folder, `${command}.txt`), join(folder, `${command}.csv`)];
    const { code, out, err } = await run([command, "-", "--save", txt, "--save", csv]);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("THE NIGHT PEN");
    expect(readFileSync(txt, "utf8")).toContain("THE NIGHT PEN");
    expect(readFileSync(csv, "utf8")).toMatch(/^(?:order|row),/);
  });
  it("exit 2 where the plan cannot be read, or the file cannot be written", async () => {
    const bad = join(folder, "bad.yaml");
    writeFileSync(bad, "sightrail: [");
    expect((await run(["setout", bad])).code).toBe(2);
    expect((await run(["remeasure", join(folder, "none.yaml")])).err).toContain("no such file");
    expect((await run(["setout", "-", "--save", "sheet.pdf"])).err).toContain(".csv");
    expect((await run(["setout", "-", "--save", join(folder, "no", "sheet.csv")])).code).toBe(2);
  });
});
