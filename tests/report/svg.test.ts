// The drawing: true to scale, harmless whatever the names, the same bytes each time.

import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Picture, PictureMark } from "../../src/model/picture.ts";
import type { Point } from "../../src/model/reading.ts";
import { numbered } from "../../src/report/grouping.ts";
import { placesAround, Taken } from "../../src/report/svg-labels.ts";
import { beside, lengthOf, stations } from "../../src/report/svg-lines.ts";
import { shapeOf } from "../../src/report/svg-stones.ts";
import { drawing } from "../../src/report/svg.ts";
import { emptyPicture, inventedPicture, smallPicture } from "./invented-picture.ts";
import { invented, inventedReport, quietReport } from "./invented-report.ts";

/** Names of the elements of a text of markup in order; throws where it is not well formed (XML 1.0, 3.1: tags pair up). */
function elementsOf(markup: string): readonly string[] {
  const open: string[] = [];
  const seen: string[] = [];
  const body = markup.replace(/^<\?xml [^>]*\?>\n/, "");
  const rest = body.replace(
    /<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>/g,
    (_tag, close: string, name: string, _attributes, single: string) => {
      if (close === "/") {
        if (open.pop() !== name) throw new Error(`</${name}> closes nothing`);
      } else {
        seen.push(name);
        if (single === "") open.push(name);
      }
      return "";
    },
  );
  if (open.length > 0) throw new Error(`${open.join()} left open`);
  if (/[<>]/.test(rest)) throw new Error("a stray bracket");
  if (/&(?!amp;|lt;|gt;|quot;|#39;)/.test(body)) throw new Error("a stray ampersand");
  return seen;
}

const square = (side: number): PictureMark => ({
  kind: "building",
  name: "square",
  label: "square",
  form: "outline",
  points: [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ],
  existing: false,
});
const picture = (marks: readonly PictureMark[]): Picture => ({ title: "t", stage: "now", marks, trueNorth: null });

/** Scale that a drawing says it has. */
const scaleOf = (svg: string) => Number(/1 : (\d+) on/.exec(svg)?.[1]);

describe("the drawing", () => {
  it("looks as the kept sheets", async () => {
    await expect(drawing(inventedPicture, inventedReport)).toMatchFileSnapshot("golden/yard.svg");
    await expect(drawing(smallPicture, quietReport)).toMatchFileSnapshot("golden/gate.svg");
    await expect(drawing(emptyPicture, quietReport)).toMatchFileSnapshot("golden/empty.svg");
  });

  // A side of s metres is 1000 s / N millimetres on paper at 1 : N (COMPUTED).
  it.each([4, 10, 24, 60, 300])("draws a square of %d m at the scale it says", (side) => {
    const svg = drawing(picture([square(side)]), quietReport);
    const d = /<path d="(M[^"]*Z)" fill="url\(#sr-building\)"/.exec(svg)?.[1] ?? "";
    const [a, b] = [...d.matchAll(/[ML]([\d.]+),([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
    const side1 = Math.hypot((b?.[0] ?? 0) - (a?.[0] ?? 0), (b?.[1] ?? 0) - (a?.[1] ?? 0));
    expect(Math.abs(side1 - (1000 * side) / scaleOf(svg))).toBeLessThan(0.02);
    expect(svg).toMatch(/width="(297|420)mm" height="(210|297)mm" viewBox="0 0 \1 \2"/);
  });

  it("has north up: what lies further north stands higher", () => {
    const at = (north: number): PictureMark => ({
      kind: "peg",
      name: "p",
      label: "",
      form: "point",
      points: [[0, north]],
      existing: true,
    });
    const svg = drawing(picture([at(0), at(10)]), quietReport);
    const heights = [...svg.matchAll(/<g [^>]*><title>peg[^<]*<\/title><path d="M[\d.]+,([\d.]+)/g)].map(([, y]) =>
      Number(y),
    );
    expect(heights).toHaveLength(2);
    expect(heights[1]).toBeLessThan(heights[0] ?? 0);
  });

  it("is well formed, without style, script, link or event, and with numbers of at most two decimals", () => {
    for (const svg of [drawing(inventedPicture, inventedReport), drawing(emptyPicture, inventedReport)]) {
      const names = new Set(elementsOf(svg));
      expect([...names].sort()).toEqual(expect.arrayContaining(["svg", "text", "title"]));
      for (const name of ["script", "style", "foreignObject", "image", "a", "use"])
        expect(names.has(name), name).toBe(false);
      expect(svg).not.toMatch(/<[^>]*\s(style|on\w+|href|xlink:href|src)=/);
      expect(svg).not.toMatch(/\d\.\d{3}/);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  it("gives the same bytes for the same picture and report", () => {
    expect(drawing(structuredClone(inventedPicture), structuredClone(inventedReport))).toBe(
      drawing(inventedPicture, inventedReport),
    );
  });

  it("numbers its stones as the text report does, and tells each at the foot", () => {
    const svg = drawing(inventedPicture, inventedReport);
    for (const { number, finding } of numbered(inventedReport).filter(({ finding }) =>
      finding.stages.includes("yard"),
    )) {
      expect(svg).toContain(`>${number}</text>`);
      if (finding.witness.length > 0) expect(svg.split(`>${number}</text>`).length).toBeGreaterThan(2);
    }
  });

  it("leaves out findings of other stages, and says which they are", () => {
    const svg = drawing(inventedPicture, inventedReport);
    const others = numbered(inventedReport).filter(({ finding: { stages } }) => !stages.includes("yard"));
    expect(others.length).toBeGreaterThan(0);
    const [first] = others;
    const stage = first?.finding.stages[0] ?? "";
    const there = others.filter(({ finding }) => (finding.stages[0] ?? "") === stage).map(({ number }) => number);
    const lead = stage === "" ? "At other stages" : `At stage &quot;${stage}&quot;`;
    expect(svg).toContain(`${lead}: ${there.join(", ")}.`);
    expect(svg).not.toContain("goat paddock&quot; can be jumped");
  });

  it("writes the number of a finding beside its line once, whatever the rules that find it", () => {
    const line = { part: "found", form: "line", points: [[0, 0], [3.2, 0]], label: "narrowest" } as const; // prettier-ignore
    const finding = invented({
      rule: "a/b",
      verdict: "not-met",
      sentence: "it is narrow",
      stages: [smallPicture.stage],
      found: { value: 3.2, unit: "m", doubt: 0.01, method: "computed" },
      witness: [line],
    });
    const svg = drawing(smallPicture, { ...quietReport, findings: [finding, { ...finding, rule: "a/c" }] });
    expect(svg.split(">narrowest 3.20 m<")).toHaveLength(2);
  });

  it("sets a stone on the thing where nothing else shows the finding", () => {
    const [thing] = smallPicture.marks;
    const feature = { kind: thing?.kind ?? "", name: thing?.name ?? "", role: "thing" };
    const at = (name: string) =>
      drawing(smallPicture, {
        ...quietReport,
        findings: [
          invented({
            rule: "a/b",
            verdict: "not-met",
            sentence: "it",
            stages: [smallPicture.stage],
            features: [{ ...feature, name }],
          }),
        ],
      });
    const stones = (svg: string) => svg.split(">1</text>").length;
    expect(stones(at(feature.name)) - stones(at("no such thing"))).toBe(1);
  });

  it.each([
    ["not-met", "square"],
    ["undecided", "ring"],
    ["not-given", "open ring"],
    ["departure", "dash"],
  ] as const)("a stone of %s is a %s", (verdict, shape) => {
    expect(shapeOf(invented({ rule: "a/b", verdict, sentence: "it" }))).toBe(shape);
  });

  it("tells how many findings had no room at the foot", () => {
    const findings = Array.from({ length: 60 }, (_, index) =>
      invented({ rule: `a/${index}`, verdict: "not-met", sentence: `fault ${index}` }),
    );
    const svg = drawing(smallPicture, { ...quietReport, findings });
    const told = [...svg.matchAll(/>Fault \d+\.</g)].length;
    expect(svg).toContain(`and ${60 - told} more: see the report`);
  });

  const name = fc.oneof(
    fc.string({ unit: "binary" }),
    fc.constantFrom("<b>", "\"&'", "\u001b[2J", "]]>", "\u202e", "x".repeat(3000), "url(#x)"),
  );
  const coordinate = fc.oneof(
    fc.double({ min: -200, max: 200 }),
    fc.constantFrom(0, 1e12, -1e300, Number.NaN, Infinity),
  );
  const anyMark = fc.record({
    kind: fc.oneof(fc.constantFrom("wall", "walls", "trees", "drain run", "surface", "constructor", "__proto__"), name),
    name,
    label: name,
    form: fc.constantFrom("point" as const, "line" as const, "outline" as const, "circle" as const),
    points: fc.array(fc.tuple(coordinate, coordinate), { maxLength: 6 }),
    radius: coordinate,
    width: coordinate,
    existing: fc.boolean(),
  });
  it("stays well formed and finite for any picture", () => {
    fc.assert(
      fc.property(fc.array(anyMark, { maxLength: 8 }), name, coordinate, (marks, title, trueNorth) => {
        const findings = [
          invented({
            rule: "a/b",
            verdict: "not-met",
            sentence: title,
            stages: [title],
            witness: marks.map(({ form, points, radius, label }) => ({
              part: "found" as const,
              form,
              points,
              radius,
              label,
            })),
          }),
        ];
        const svg = drawing({ title, stage: title, marks, trueNorth }, { ...quietReport, findings });
        const [first] = elementsOf(svg);
        // oxlint-disable-next-line no-control-regex
        return first === "svg" && !/NaN|Infinity|[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/.test(svg);
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });
});

describe("words on the drawing", () => {
  it("never lie upon each other or beyond the sketch", () => {
    const size = fc.record({ width: fc.integer({ min: 2, max: 40 }), height: fc.integer({ min: 2, max: 7 }) });
    const point = fc.tuple(fc.integer({ min: 0, max: 120 }), fc.integer({ min: 0, max: 90 }));
    fc.assert(
      fc.property(fc.array(fc.tuple(point, size), { maxLength: 40 }), (wishes) => {
        const taken = new Taken({ x: 0, y: 0, width: 120, height: 90 });
        const boxes = wishes.flatMap(
          ([at, room]) => taken.place(room, placesAround(at, room, [1, 4, 9, 20]))?.box ?? [],
        );
        const clear = boxes.every((a, index) =>
          boxes
            .slice(index + 1)
            .every(
              (b) => a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y,
            ),
        );
        return (
          clear &&
          boxes.every((box) => box.x >= 0 && box.y >= 0 && box.x + box.width <= 120 && box.y + box.height <= 90)
        );
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });

  it("rather stand clear of a line than on it", () => {
    const taken = new Taken({ x: 0, y: 0, width: 100, height: 100 });
    taken.addLine([
      [50, 0],
      [50, 100],
    ]);
    const size = { width: 20, height: 3 };
    const box = taken.place(size, placesAround([50, 50], size, [1, 4]))?.box;
    expect(box === undefined || box.x >= 50 || box.x + 20 <= 50).toBe(true);
  });
});

describe("lines on paper", () => {
  const bend: readonly Point[] = [
    [0, 0],
    [30, 0],
    [30, 40],
  ];
  // 30 + 40 = 70 long; 7 places 10 apart, the first 5 in (COMPUTED).
  it("cut a line into equal steps", () => {
    expect(lengthOf(bend)).toBe(70);
    expect(stations(bend, 10).map(({ at }) => at)).toEqual([
      [5, 0],
      [15, 0],
      [25, 0],
      [30, 5],
      [30, 15],
      [30, 25],
      [30, 35],
    ]);
  });

  // On paper y runs down, so the right of a line towards x is +y; the mitre of a right angle lies on both offset lines (COMPUTED).
  it("run beside a line at the distance asked for, mitred at a corner", () => {
    expect(beside(bend, 2)).toEqual([
      [0, 2],
      [28, 2],
      [28, 40],
    ]);
    expect(beside(bend, -2)).toEqual([
      [0, -2],
      [32, -2],
      [32, 40],
    ]);
  });
});
