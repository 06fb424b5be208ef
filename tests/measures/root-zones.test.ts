// Root zones of four countries against the published rows, through the cards and the measures.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { checkPlan, type Finding } from "../../src/index.ts";
import { structuralRadius } from "../../src/measures/beyond-structural-roots.ts";
import { sharedWithCircle } from "../../src/geometry/circle.ts";

const tableOf = (name: string): unknown =>
  parse(readFileSync(new URL(`../tables/${name}.yaml`, import.meta.url), "utf8"));

/** The root-zone finding of a tree and a wall that stands `off` metres east of it. */
function rootFinding(place: string, tree: object, limit: string, off = 3): Finding {
  const plan = {
    sightrail: 1,
    title: "roots",
    place: [place],
    as_of: "2026-11-25",
    stages: ["works"],
    none: ["veteran trees"],
    trees: { tree: { at: [0, 0], existing: true, ...tree } },
    walls: {
      wall: {
        line: [
          [off, -9],
          [off, 9],
        ],
        height: 1,
        from: "works",
      },
    },
  };
  const { findings, problems } = checkPlan({ file: "roots.yaml", text: JSON.stringify(plan) }, { asOf: "2026-11-25" });
  expect(problems).toEqual([]);
  const found = findings.find(
    (finding) => finding.rule === "trees/works-in-root-zone" && finding.wanted?.limit === limit,
  );
  if (!found) throw new Error(`no finding of ${limit}`);
  return found;
}
const wanted = (finding: Finding): number => Number(finding.wanted?.value);

interface Stems {
  readonly rows: readonly {
    readonly id: string;
    readonly stems: readonly number[];
    readonly r: number;
    readonly area: number;
    readonly tolerance?: number;
  }[];
  readonly tolerance: number;
  readonly girth: {
    readonly rows: readonly { readonly girth: number; readonly r: number }[];
    readonly tolerance: number;
  };
}
describe("England, BS 5837:2012 (12 D, cap 15 m; stems READ second-hand, more than five MEMORY)", () => {
  const table = tableOf("roots.bs-5837") as Stems;
  it.each(table.rows)("$id: stems $stems", ({ stems, r, area, tolerance }) => {
    const tree = stems.length === 1 ? { stem: stems[0] } : { stems };
    const radius = wanted(rootFinding("england", tree, "bs-single"));
    expect(Math.abs(radius - r)).toBeLessThanOrEqual(table.tolerance);
    expect(Math.abs(Math.PI * radius ** 2 - area)).toBeLessThanOrEqual(Math.max(table.tolerance * 2, tolerance ?? 0));
  });
  it.each(table.girth.rows)("a girth of $girth m", ({ girth, r }) => {
    expect(Math.abs(wanted(rootFinding("england", { girth }, "bs-single")) - r)).toBeLessThanOrEqual(
      table.girth.tolerance,
    );
  });
});

interface As {
  readonly protection_zone: {
    readonly rows: readonly { readonly id: string; readonly D: number; readonly tpz: number }[];
  };
  readonly structural_root_zone: {
    readonly tolerance: number;
    readonly rows: readonly { readonly id: string; readonly D: number; readonly srz: number }[];
  };
  readonly straight_cut: {
    readonly tolerance: number;
    readonly rows: readonly {
      readonly r: number;
      readonly cut: number;
      readonly area: number;
      readonly share: number;
    }[];
  };
  readonly tenth: { readonly rows: readonly { readonly r: number; readonly share: number; readonly cut: number }[] };
}
describe("Australia, AS 4970-2009 (formulas READ, bounds of 2 and 15 m MEMORY)", () => {
  const table = tableOf("roots.as-4970") as As;
  it.each(table.structural_root_zone.rows)("$id: structural roots of D $D", ({ D, srz }) => {
    expect(Math.abs(structuralRadius(D) - srz)).toBeLessThanOrEqual(table.structural_root_zone.tolerance);
  });
  it.each(table.protection_zone.rows)("$id: zone of D $D, by the area it makes", ({ D, tpz }) => {
    const plan = {
      sightrail: 1,
      title: "roots",
      place: ["australia"],
      stages: ["works"],
      trees: { tree: { at: [0, 0], stem: D, stem_at_base: D, existing: true } },
      surfaces: {
        pad: {
          outline: [
            [0, -30],
            [30, -30],
            [30, 30],
            [0, 30],
          ],
          for: ["parking"],
          from: "works",
        },
      },
    };
    const { findings } = checkPlan({ file: "roots.yaml", text: JSON.stringify(plan) }, { asOf: "2026-11-25" });
    const share = findings.find((finding) => finding.wanted?.limit === "as-share");
    expect(share?.found?.value).toBeCloseTo(0.5, 6);
    const zone = share?.witness.find((mark) => mark.label === "root zone");
    expect(zone?.radius).toBeCloseTo(tpz, 9);
  });
  const beyond = (cut: number) => ({
    outline: [
      [cut, -50],
      [50, -50],
      [50, 50],
      [cut, 50],
    ] as const,
    holes: [],
  });
  it.each(table.straight_cut.rows)("a straight cut $cut m off takes $area m2", ({ r, cut, area, share }) => {
    const taken = sharedWithCircle({ centre: [0, 0], radius: r }, beyond(cut));
    expect(Math.abs(taken - area)).toBeLessThanOrEqual(table.straight_cut.tolerance);
    expect(taken / (Math.PI * r * r)).toBeCloseTo(share, 4);
  });
  it.each(table.tenth.rows)("a tenth of r $r is cut at $cut", ({ r, share, cut }) => {
    expect(sharedWithCircle({ centre: [0, 0], radius: r }, beyond(cut)) / (Math.PI * r * r)).toBeCloseTo(share, 3);
  });
});

interface Published {
  readonly feet_per_inch: {
    readonly tolerance: number;
    readonly rows: readonly { readonly inches: number; readonly factor: number; readonly r: number }[];
  };
  readonly veteran: {
    readonly rows: readonly { readonly D: number; readonly crown_radius: number; readonly r: number }[];
  };
  readonly crown_edge: {
    readonly rows: readonly { readonly crown_radius: number; readonly columnar: boolean; readonly r: number }[];
  };
}
describe("United States, Germany, and veterans in England", () => {
  const table = tableOf("roots.published") as Published;
  it.each(table.feet_per_inch.rows)("$inches inches at $factor feet each", ({ inches, factor, r }) => {
    const limit = factor === 1 ? "foot-per-inch" : "half-more-per-inch";
    const off = factor === 1 ? 3 : 7;
    expect(
      Math.abs(wanted(rootFinding("united states", { stem: `${inches} in` }, limit, off)) - r),
    ).toBeLessThanOrEqual(table.feet_per_inch.tolerance);
  });
  it.each(table.veteran.rows)("a veteran of $D m keeps $r m", ({ D, crown_radius, r }) => {
    const tree = { stem: D, veteran: true, crown: { radius: crown_radius } };
    const stem = wanted(rootFinding("england", tree, "veteran-stem"));
    const crown = crown_radius + wanted(rootFinding("england", tree, "veteran-crown"));
    expect(Math.max(stem, crown)).toBeCloseTo(r, 9);
  });
  it.each(table.crown_edge.rows)(
    "Germany: crown $crown_radius m, columnar $columnar, keeps $r m",
    ({ crown_radius, columnar, r }) => {
      const tree = { stem: 0.3, crown: { radius: crown_radius }, columnar };
      const limit = columnar ? "crown-edge-columnar" : "crown-edge";
      expect(crown_radius + wanted(rootFinding("germany", tree, limit))).toBeCloseTo(r, 9);
    },
  );
});
