// What a plan leaves unsaid is asked for once, only where the answer would change a verdict, and never taken as the lax answer.

import { describe, expect, it } from "vitest";
import { checkPlan } from "../../src/index.ts";

const head = { sightrail: 1, title: "a newcomer's plan", place: ["anywhere"], as_of: "2026-11-25" };
const look = (plan: object, options: { readonly option?: string } = {}) => {
  const report = checkPlan(
    { file: "plan.yaml", text: JSON.stringify({ ...head, ...plan }) },
    { asOf: "2026-11-25", remedies: false, ...options },
  );
  expect(report.problems).toEqual([]);
  const of = (rule: string) => report.findings.filter((finding) => finding.rule === rule);
  return { report, of, needs: report.needs };
};
const line = (east: number) => [
  [east, -5],
  [east, 5],
];
const ash = { ash: { at: [0, 0], stem: "500 mm" } };

describe("a plan that does not say what stands and what is new", () => {
  it("is asked once, of all things at once, and only where it matters", () => {
    const { needs, of } = look({
      trees: ash,
      walls: { near: { line: line(3) }, far: { line: line(20) } },
      drains: { foul: { line: line(4), carries: "foul", bore: "100 mm" } },
    });
    const [asked, ...more] = needs.filter(({ asks }) => asks.includes("there already"));
    expect(more).toEqual([]);
    expect(asked?.asks).toContain('drain "foul"');
    expect(asked?.asks).toContain('wall "near"');
    expect(asked?.asks).not.toContain('wall "far"');
    expect(of("trees/works-in-root-zone").map(({ verdict }) => verdict)).toContain("not-given");
  });
  it("is answered by existing: true, by existing: false, and by from", () => {
    const verdict = (said: object) =>
      look({ stages: ["now", "works"], trees: ash, walls: { near: { line: line(3), ...said } } }).of(
        "trees/works-in-root-zone",
      )[0]?.verdict;
    expect(verdict({ existing: true })).toBeUndefined();
    expect(verdict({ existing: false })).toBe("not-met");
    expect(verdict({ from: "works" })).toBe("not-met");
  });
  it("takes what an option adds for new", () => {
    const plan = { trees: ash, options: { walled: { add: { walls: { near: { line: line(3) } } } } } };
    expect(look(plan, { option: "walled" }).of("trees/works-in-root-zone")[0]?.verdict).toBe("not-met");
  });
});

describe("hazards that nobody has spoken of", () => {
  it("are one need and one finding a rule", () => {
    const { needs, report } = look({
      gates: {
        gate: {
          between: [
            [0, 0],
            [3, 0],
          ],
          clear: 3,
          for: ["vehicles"],
          existing: true,
        },
      },
    });
    const asked = needs.filter(({ path }) => path === "none");
    expect(asked.length).toBe(1);
    expect(asked[0]?.asks).toContain("overhead lines");
    const unsaid = report.findings.filter(({ features }) => features.length === 0);
    for (const { rule } of unsaid) expect(asked[0]?.waits).toContain(rule);
  });
});

describe("a list of uses that is left out", () => {
  it("is asked for where rows look through it", () => {
    const { needs, of } = look({
      surfaces: {
        yard: {
          outline: [
            [0, 0],
            [9, 0],
            [9, 9],
            [0, 9],
          ],
          of: "gravel",
          existing: true,
        },
      },
      walls: {
        terrace: {
          line: [
            [-1, 9.5],
            [9, 9.5],
          ],
          build: "brick",
          retains: { side: "right", height: 1 },
          existing: true,
        },
      },
    });
    expect(of("walls/load-behind")[0]?.verdict).toBe("not-given");
    expect(needs.find(({ waits }) => waits.includes("walls/load-behind"))?.path).toBe("surfaces/yard/for");
  });
});
