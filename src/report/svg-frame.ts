// What stands around the sketch: title, stage tab, north, scale bar, key, and the crosses of the ten-metre net.

import type { Picture } from "../model/picture.ts";
import type { Point } from "../model/reading.ts";
import { element, figure, joined, paperLines, plain, textWidth, type Markup } from "./markup.ts";
import { ink, paper } from "./svg-hatch.ts";
import { pathOf } from "./svg-lines.ts";
import type { Sheet } from "./svg-paper.ts";
import { shapeWords, stone } from "./svg-stones.ts";

const small = 2.6;

/** Ground of the page, title at the left, stage as a tab of paper at the top edge. */
export function headMarkup(picture: Picture, sheet: Sheet, asOf: string): Markup {
  const [title = ""] = paperLines(picture.title, { width: sheet.width * 0.6, size: 5.4, most: 1 });
  return joined(
    [
      element("rect", { x: 0, y: 0, width: sheet.width, height: sheet.height, fill: paper }),
      words([sheet.sketch.x, 11.5], title, { size: 5.4, weight: "bold" }),
      words([sheet.sketch.x, 16], asOf, { size: small }),
      ...stageTab(picture.stage, sheet),
    ],
    "\n",
  );
}

function stageTab(stage: string, sheet: Sheet): readonly Markup[] {
  const [line = ""] = paperLines(stage === "" ? "all stages" : `stage: ${stage}`, { width: 80, size: 3.8, most: 1 });
  if (line === "") return [];
  const width = textWidth(line, 3.8) + 8;
  const right = sheet.width - 16;
  const left = right - width;
  const d = pathOf([
    [left - 3, 0],
    [left, 9],
    [right, 9],
    [right + 3, 0],
  ]);
  return [
    element("path", { d, fill: "#efe7cf", stroke: ink, "stroke-width": 0.35 }),
    words([left + 4, 6.2], line, { size: 3.8 }),
  ];
}

/** Metres between the crosses of the net. */
function netStep(sheet: Sheet): number {
  return [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000].find((metres) => sheet.long(metres) >= 18) ?? 10_000;
}

/** Small crosses at equal steps from the plan's first point, to measure by. */
export function netMarkup(sheet: Sheet): Markup {
  const step = netStep(sheet);
  const { sketch, at } = sheet;
  const [originX, originY] = at([0, 0]);
  const gap = sheet.long(step);
  const marks: string[] = [];
  const first = (start: number, origin: number) => origin + Math.ceil((start + 2 - origin) / gap) * gap;
  for (let x = first(sketch.x, originX); x < sketch.x + sketch.width - 2; x += gap)
    for (let y = first(sketch.y, originY); y < sketch.y + sketch.height - 2; y += gap)
      marks.push(`M${figure(x - 0.9)},${figure(y)}h1.8m-0.9,-0.9v1.8`);
  return element("path", { d: marks.join(""), fill: "none", stroke: ink, "stroke-width": 0.1 });
}

/** The strip under the sketch: north, scale bar with true lengths, key to weights and stones. */
export function stripMarkup(picture: Picture, sheet: Sheet): Markup {
  const { strip } = sheet;
  const north = northMarkup([strip.x + 6, strip.y + 7], picture.trueNorth);
  const bar = barMarkup([strip.x + 34, strip.y + 6], sheet);
  const key = keyMarkup([strip.x + strip.width - 132, strip.y + 4.6], picture);
  const rule = element("path", {
    d: pathOf([
      [strip.x, strip.y + strip.height - 0.6],
      [strip.x + strip.width, strip.y + strip.height - 0.6],
    ]),
    stroke: ink,
    "stroke-width": 0.25,
  });
  return joined([north, bar, key, rule], "\n");
}

function northMarkup([x, y]: Point, trueNorth: number | null): Markup {
  const known = trueNorth !== null && Number.isFinite(trueNorth);
  const turn = known ? (trueNorth * 180) / Math.PI : 0;
  const arrow = element(
    "g",
    {
      transform: `rotate(${figure(turn)} ${figure(x)} ${figure(y)})`,
      stroke: ink,
      "stroke-width": 0.3,
      "stroke-linejoin": "round",
    },
    element("path", {
      d: pathOf(
        [
          [x, y - 5.5],
          [x - 1.9, y + 4.5],
          [x, y + 2.6],
        ],
        "closed",
      ),
      fill: ink,
    }),
    element("path", {
      d: pathOf(
        [
          [x, y - 5.5],
          [x + 1.9, y + 4.5],
          [x, y + 2.6],
        ],
        "closed",
      ),
      fill: paper,
    }),
  );
  const lines = known ? ["true north"] : ["north of the", "plan is up"];
  return joined([arrow, ...lines.map((line, index) => words([x + 4.5, y + 0.5 + index * 3.2], line, { size: small }))]);
}

/** Lengths on offer for one part of the scale bar. */
const parts = [0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000];
const partsOfBar = 4;

function barMarkup([x, y]: Point, sheet: Sheet): Markup {
  const part = parts.find((metres) => sheet.long(metres) >= 9) ?? 5000;
  const long = sheet.long(part);
  const boxes = Array.from({ length: partsOfBar }, (_, index) =>
    element("rect", {
      x: x + index * long,
      y,
      width: long,
      height: 1.5,
      fill: index % 2 === 0 ? ink : paper,
      stroke: ink,
      "stroke-width": 0.2,
    }),
  );
  const marks = Array.from({ length: partsOfBar + 1 }, (_, index) => {
    const text = `${Number((part * index).toFixed(1))}${index === partsOfBar ? " m" : ""}`;
    return words([x + index * long, y - 1], text, {
      size: small,
      anchor: index === partsOfBar ? "start" : "middle",
      shift: index === partsOfBar ? -0.7 : 0,
    });
  });
  const scale = words(
    [x, y + 5],
    `1 : ${sheet.scale} on ${sheet.name} paper (${sheet.width} x ${sheet.height} mm). Crosses every ${netStep(sheet)} m. Check the bar with a rule.`,
    { size: small },
  );
  return joined([...boxes, ...marks, scale]);
}

function keyMarkup([x, y]: Point, picture: Picture): Markup {
  const line = (atX: number, weight: number, dash?: string) =>
    element("path", {
      "stroke-dasharray": dash,
      d: pathOf([
        [atX, y - 0.9],
        [atX + 7, y - 0.9],
      ]),
      stroke: ink,
      "stroke-width": weight,
    });
  const has = (kind: string): boolean => picture.marks.some((mark) => mark.kind === kind);
  const weights = [
    line(x, 0.2),
    words([x + 8.5, y], "there already", { size: small }),
    line(x + 30, 0.6),
    words([x + 38.5, y], "to be built", { size: small }),
    ...(has("contour") ? [line(x + 58, 0.11), words([x + 66.5, y], "one level", { size: small })] : []),
    ...(has("runoff") ? [line(x + 83, 0.3, "0.5 0.9"), words([x + 91.5, y], "way of the water", { size: small })] : []),
  ];
  const lefts = shapeWords.map(
    (_, index) => x + shapeWords.slice(0, index).reduce((sum, [, words]) => sum + textWidth(words, small) + 9, 0),
  );
  const stones = shapeWords.flatMap(([shape, meaning], index) => {
    const left = lefts[index] ?? x;
    const place = `translate(${figure(left + 1.6)} ${figure(y + 5.2)}) scale(0.6)`;
    const reduced = element("g", { transform: place }, stone([0, 0], shape, ""));
    return [reduced, words([left + 4.4, y + 6.1], meaning, { size: small })];
  });
  return joined([...weights, ...stones]);
}

interface Lettering {
  readonly size: number;
  readonly weight?: "bold";
  readonly anchor?: "start" | "middle";
  readonly shift?: number;
}

function words([x, y]: Point, text: string, lettering: Lettering): Markup {
  return element(
    "text",
    {
      x: x + (lettering.shift ?? 0),
      y,
      "font-size": lettering.size,
      "font-weight": lettering.weight,
      "text-anchor": lettering.anchor === "middle" ? "middle" : undefined,
      fill: ink,
    },
    plain(text),
  );
}
