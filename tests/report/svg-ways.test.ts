// Where vehicles go: a small picture for every way that was found, with its clearance, its moves and what it drives over.

import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/model/finding.ts";
import type { Point, Witness } from "../../src/model/reading.ts";
import { drawing, sheetsOf } from "../../src/report/svg.ts";
import { smallPicture } from "./invented-picture.ts";
import { found, invented, quietReport, wanted } from "./invented-report.ts";

const box = (west: number, south: number, east: number, north: number): readonly Point[] => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
];

const path: readonly Witness[] = [
  { part: "found", form: "line", points: [[4, 5], [4, 5.2]], label: "tightest" }, // prettier-ignore
  { part: "thing", form: "outline", points: box(1, 1, 5, 3) },
  { part: "wanted", form: "outline", points: box(0, 0, 10, 5) },
  { part: "thing", form: "outline", points: box(0, 1, 4, 3), label: "move 1" },
  { part: "thing", form: "outline", points: box(6, 1, 10, 3), label: "move 2" },
  { part: "thing", form: "outline", points: box(0, 1, 4, 3) },
  { part: "thing", form: "line", points: [[0, 1], [10, 1]], gear: "forward" }, // prettier-ignore
  { part: "thing", form: "line", points: [[10, 1], [0, 1]], gear: "reverse" }, // prettier-ignore
];

const way = (name: string, more: Partial<Finding> = {}): Finding =>
  invented({
    rule: "access/no-room-to-turn",
    verdict: "met",
    sentence: `Manoeuvre "${name}" has the room it needs.`,
    stages: [smallPicture.stage],
    features: [{ kind: "manoeuvre", name, role: "manoeuvre" }],
    found: found(0.41, 0.02),
    wanted: wanted({ value: 0.3 }),
    witness: path,
    ...more,
  });

const sheet = (...findings: readonly Finding[]) => {
  const plan = { file: "p", title: "t", stages: [], stage: null, features: 1, goes: ['-  cart ("hay comes") turns.'] };
  const sheets = sheetsOf([smallPicture], { ...quietReport, plans: [plan], findings });
  return sheets.map(({ markup }) => markup).find((markup) => markup.includes("Where vehicles go")) ?? "";
};
const words = (markup: string) => markup.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ");

describe("a way that has its room", () => {
  const markup = sheet(way("hay comes"));
  it("is shown with vehicle, clearance, what is wanted and the number of moves", () => {
    expect(markup).toContain(">cart: hay comes<");
    expect(words(markup)).toContain(
      "It has the room that is wanted: 0.41 m at the tightest place, 0.30 m wanted; 2 moves.",
    );
    expect(markup).toContain(">0.41 m<");
  });
  it("tells the two gears apart, each in a layer with a name", () => {
    expect(markup).toMatch(/id="sr-ways-1-1-path"/);
    expect(markup).toContain('stroke-dasharray="0 0.9"');
    expect(markup).toContain('stroke-dasharray="1.5 0.9"');
    expect(markup).toContain(">end<");
  });
  it("is true to the scale of its bar", () => {
    const [, metres, bar] = [">5 m<", 5, Number(/v1\.6h([\d.]+)v-1\.6/.exec(markup)?.[1])];
    const tint = /<path d="M([\d.]+),[\d.]+L([\d.]+),[^"]*" fill="#cfc6ad"/.exec(markup);
    const long = Number(tint?.[2]) - Number(tint?.[1]);
    const step = Number(/>(\d+) m<\/text>/.exec(markup.slice(markup.indexOf("v-1.6")))?.[1] ?? metres);
    // The covered ground is ten metres long.
    expect(Math.abs(long / 10 - (bar ?? 0) / step)).toBeLessThan(0.01);
  });
});

describe("what is shown", () => {
  it("is four to a sheet, whatever their verdict, and a stone where something is wrong", () => {
    const five = ["a", "b", "c", "d", "e"].map((name) => way(name));
    const sheets = sheetsOf([smallPicture], { ...quietReport, findings: five }).map(({ markup }) => markup);
    expect(sheets.filter((markup) => markup.includes("Where vehicles go"))).toHaveLength(2);
    const failing = sheet(way("hay comes", { verdict: "not-met", found: found(-0.14, 0.02) }));
    expect(failing).toContain(">0.14 m too little<");
    expect(words(failing)).toContain("It has not the room that is wanted");
  });
  it("is nothing where no path was found, nor another rule's path", () => {
    const none = way("hay comes", { witness: [{ part: "found", form: "point", points: [[1, 1]], label: "comes in here" }] }); // prettier-ignore
    expect(sheet(none)).toBe("");
    expect(sheet(way("hay comes", { rule: "access/other" }))).toBe("");
  });
  it("is shown once where it is driven at several stages, with those of an earlier stage alone if that is all there is", () => {
    const earlier = { ...smallPicture, stage: "before", shows: "ways" } as const;
    const both = way("hay comes", { stages: ["before", smallPicture.stage] });
    const only = way("muck goes", { stages: ["before"] });
    const text = drawing({ ...smallPicture, earlier: [earlier] }, { ...quietReport, findings: [both, only] });
    expect(text.match(/>hay comes</g)).toHaveLength(1);
    expect(
      text.match(/Where vehicles go at stage &quot;before&quot;<|Where vehicles go at stage "before"</g),
    ).toHaveLength(1);
    expect(text.match(/>muck goes</g)).toHaveLength(1);
    // Only its ways are drawn: three sheets, not four.
    expect(text.match(/role="img"/g)).toHaveLength(3);
  });
});
