// The numbered stones: one for each told finding. The shape says what came of it, so that it reads without colour.

import type { Finding } from "../model/finding.ts";
import type { Point } from "../model/reading.ts";
import { amount, scaleOf } from "./amounts.ts";
import { capital, clean, sentence } from "./clean.ts";
import { marginWords } from "./found-words.ts";
import { standingVerdict, type Numbered } from "./grouping.ts";
import { element, joined, paperLines, plain, type Markup } from "./markup.ts";
import { ink, paper } from "./svg-hatch.ts";
import { requirementWords } from "./standing-words.ts";
import type { Box } from "./svg-paper.ts";

/** Half the width of a stone, millimetres. */
export const stoneHalf = 2.6;
const letter = 2.7;
const lineHeight = 3.2;
const gap = 6;
const mostRows = 7;
const linesEach = 2;
/** Narrowest a column of the foot may be. */
const narrowest = 80;

type Shape = "square" | "ring" | "open ring" | "dash";

/** Square: not met. Ring: cannot be said. Open ring: not in the plan. Dash: an agreed departure. */
export function shapeOf(finding: Finding): Shape {
  const verdict = standingVerdict(finding);
  if (verdict === "not-met") return "square";
  if (verdict === "departure") return "dash";
  return verdict === "not-given" ? "open ring" : "ring";
}

/** What each shape means, for the key. */
export const shapeWords: readonly (readonly [Shape, string])[] = [
  ["square", "not met"],
  ["ring", "cannot be said"],
  ["open ring", "not known"],
  ["dash", "departure"],
];

/** A stone around a point, with its number or without. */
export function stone([x, y]: Point, shape: Shape, number: string): Markup {
  const size = [2.9, 2.9, 2.5, 2][number.length] ?? 1.6;
  const text = element(
    "text",
    {
      x,
      y: y + size * 0.36,
      "font-size": size,
      "font-weight": "bold",
      "text-anchor": "middle",
      fill: shape === "square" ? paper : ink,
    },
    plain(number),
  );
  return joined(number === "" ? [outline([x, y], shape)] : [outline([x, y], shape), text]);
}

function outline([x, y]: Point, shape: Shape): Markup {
  const half = stoneHalf;
  switch (shape) {
    case "square":
      return element("rect", { x: x - half, y: y - half, width: 2 * half, height: 2 * half, rx: 0.5, fill: ink });
    case "dash":
      return joined([
        element("rect", { x: x - half, y: y - half, width: 2 * half, height: 2 * half, fill: paper }),
        element("path", {
          d: `M${(x - half).toFixed(2)},${(y + half - 0.4).toFixed(2)}h${(2 * half).toFixed(2)}`,
          stroke: ink,
          "stroke-width": 0.9,
        }),
      ]);
    case "ring":
      return element("circle", { cx: x, cy: y, r: half - 0.2, fill: paper, stroke: ink, "stroke-width": 0.6 });
    case "open ring":
      return element("circle", {
        cx: x,
        cy: y,
        r: half - 0.2,
        fill: paper,
        stroke: ink,
        "stroke-width": 0.6,
        "stroke-dasharray": "2.2 1.58",
      });
  }
  return joined([]);
}

interface Rows {
  readonly columns: number;
  readonly rows: number;
  readonly shown: number;
}

function rowsFor(count: number, width: number): Rows {
  const columns = Math.max(1, Math.floor((width + gap) / (narrowest + gap)));
  const rows = Math.min(mostRows, Math.ceil(count / columns));
  const all = count <= rows * columns;
  return { columns, rows, shown: all ? count : rows * columns - 1 };
}

const rowHeight = Math.max(2 * stoneHalf + 1.2, linesEach * lineHeight + 1.2);
const lastLine = 5;

/** Height of the foot for so many stones. */
export function footHeight(count: number, width: number): number {
  return rowsFor(count, width).rows * rowHeight + lastLine + 2;
}

export interface FootRoom {
  readonly foot: Box;
  /** How many things have no place that can be drawn. */
  readonly leftOut: number;
  /** What is told at another stage only. */
  readonly others: readonly Numbered[];
}

/** The foot: each stone with its sentence, column by column, and what this drawing is not. */
export function footMarkup(told: readonly Numbered[], room: FootRoom): Markup {
  const { foot, leftOut, others } = room;
  const { columns, rows, shown } = rowsFor(told.length, foot.width);
  const width = (foot.width - (columns - 1) * gap) / columns;
  const cellAt = (index: number): Point => [
    foot.x + Math.floor(index / rows) * (width + gap),
    foot.y + (index % rows) * rowHeight + 1,
  ];
  const entries = told.slice(0, shown).map((one, index) => entry(one, cellAt(index), width));
  const [restX, restY] = cellAt(shown);
  const rest =
    told.length > shown ? [words([restX, restY + lineHeight], `and ${told.length - shown} more: see the report`)] : [];
  const elsewhere = elsewhereWords(others);
  const none = told.length === 0 ? "No finding is told at this stage. " : "";
  const lost =
    leftOut === 0 ? "" : `${leftOut} ${leftOut === 1 ? "thing has" : "things have"} no place that can be drawn. `;
  const last = words(
    [foot.x, foot.y + foot.height - 1],
    `${none}${elsewhere}${lost}Drawn from the plan to scale. What is not drawn was not looked at. Sure of the measurement, never of the ground.`,
  );
  return joined([...entries, ...rest, last], "\n");
}

/** `At stage "shed": 1, 2, 3. `: which stage shows the numbers that are not here. */
function elsewhereWords(others: readonly Numbered[]): string {
  const byStage = new Map<string, number[]>();
  for (const { number, finding } of others) {
    const stage = clean(finding.stages[0] ?? "");
    byStage.set(stage, [...(byStage.get(stage) ?? []), number]);
  }
  const at = (stage: string) => (stage === "" ? "At other stages" : `At stage "${stage}"`);
  return [...byStage].map(([stage, numbers]) => `${at(stage)}: ${numbers.join(", ")}. `).join("");
}

/** The longest way to say a finding that fits: whole, without what stands in brackets, else the thing and its numbers. */
function fitting(finding: Finding, fit: { readonly width: number; readonly size: number; readonly most: number }) {
  const whole = sentence(finding.sentence);
  const [thing] = finding.features;
  const name = thing ? `${thing.kind} "${thing.name}"` : "";
  const numbers = numberWords(finding);
  const ways = [
    whole,
    whole.replace(/ \([^()]*\)/g, ""),
    ...(name === "" || numbers === "" ? [] : [`${capital(clean(name))}: ${numbers}.`]),
    whole.replace(/, so nobody can say whether.*$/, "."),
  ];
  const told = ways.map((way) => paperLines(way, fit));
  return told.find((lines) => !lines.some((line) => line.endsWith("..."))) ?? told[0] ?? [];
}

/** `clear width 3.12 m; at least 3.10 m is wanted`; below 0 only how far off it is. */
function numberWords(finding: Finding): string {
  const { found, reading, grade } = finding;
  const scale = scaleOf(finding);
  const wanted = requirementWords(finding);
  if (!found || !scale || wanted === "") return "";
  const value = found.value < 0 ? marginWords(finding) : amount(found.value, scale, found.doubt);
  const open = standingVerdict(finding) === "undecided" ? "; too near to call" : "";
  return `${clean(reading)} ${value}${open}; ${wanted} is ${grade === "should" ? "advised" : "wanted"}`;
}

function entry({ number, finding }: Numbered, [x, y]: Point, width: number): Markup {
  const lines = fitting(finding, {
    width: width - 2 * stoneHalf - 2.5,
    size: letter,
    most: linesEach,
  });
  const top = lines.length === 1 ? y + stoneHalf + 1 : y + lineHeight - 0.6;
  const at = (index: number): Point => [x + 2 * stoneHalf + 2, top + index * lineHeight];
  return element(
    "g",
    {},
    stone([x + stoneHalf, y + stoneHalf], shapeOf(finding), String(number)),
    ...lines.map((line, index) => words(at(index), line)),
  );
}

function words([x, y]: Point, text: string): Markup {
  return element("text", { x, y, "font-size": letter, fill: ink }, plain(text));
}
