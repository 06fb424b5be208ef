// Names, figures and stones on the sketch: stones first, then the figures of findings, then names, none upon another.

import type { Picture, PictureMark } from "../model/picture.ts";
import type { Point } from "../model/reading.ts";
import type { Numbered } from "./grouping.ts";
import { element, joined, paperLines, plain, textWidth, type Markup } from "./markup.ts";
import { ink, paper } from "./svg-hatch.ts";
import { nearestOf, placeOn, placesAround, Taken, type Candidate, type Placed, type Size } from "./svg-labels.ts";
import { centreOf, lengthOf, middleOf, pathOf, stations } from "./svg-lines.ts";
import { drawable, type Box, type Sheet } from "./svg-paper.ts";
import { shapeOf, stone, stoneHalf } from "./svg-stones.ts";
import { anchorOf, figureWords } from "./svg-witness.ts";

const letter = 2.6;
const widestLabel = 46;
/** A label further than this from its thing gets a line to it. */
const leaderFrom = 2.6;
/** Most names on one sheet; the rest would be a blot. */
const mostNames = 400;

/** Stones, figures and names, placed in that order. */
export function letteringMarkup(picture: Picture, told: readonly Numbered[], sheet: Sheet): Markup {
  const taken = new Taken(sheet.sketch);
  for (const mark of picture.marks.slice(0, mostNames * 2)) taken.addLine(lineOf(mark, sheet));
  for (const mark of picture.marks) addSign(mark, sheet, taken);
  for (const { finding } of told)
    for (const one of finding.witness.filter(drawable)) taken.addLine(one.points.map(sheet.at));
  const stones = told.flatMap((one) => stoneMarkup(one, picture, { sheet, taken }));
  const figures = figuresOf(told, sheet).flatMap((one) => figureMarkup(one, taken));
  const names = namesFirst(picture.marks).flatMap((mark) => nameMarkup(mark, sheet, taken));
  return joined([...names, ...figures, ...stones], "\n");
}

/** Half the room that a sign takes, millimetres: words keep off it. */
const signHalf = { peg: 0.8, other: 1.4 } as const;

function addSign(mark: PictureMark, sheet: Sheet, taken: Taken): void {
  if (mark.form !== "point" && !(mark.form === "circle" && mark.kind.startsWith("tree"))) return;
  const half = mark.kind === "peg" ? signHalf.peg : signHalf.other;
  for (const [x, y] of mark.points.map(sheet.at))
    taken.addBox({ x: x - half, y: y - half, width: 2 * half, height: 2 * half });
}

function lineOf(mark: PictureMark, sheet: Sheet): readonly Point[] {
  const points = mark.points.map(sheet.at);
  const [first] = points;
  if (mark.form === "outline" && first) return [...points, first];
  if (mark.form !== "circle" || !first) return points;
  const radius = sheet.long(mark.radius ?? 0);
  return Array.from({ length: 17 }, (_, index): Point => {
    const angle = (index * Math.PI) / 8;
    return [first[0] + radius * Math.cos(angle), first[1] + radius * Math.sin(angle)];
  });
}

function stoneMarkup(
  one: Numbered,
  { marks }: Picture,
  { sheet, taken }: { readonly sheet: Sheet; readonly taken: Taken },
): readonly Markup[] {
  const anchor = anchorOf(one, sheet, marks);
  if (!anchor) return [];
  const size = { width: 2 * stoneHalf + 0.6, height: 2 * stoneHalf + 0.6 };
  const placed = taken.place(size, placesAround(anchor, size, [3, 6, 10, 15, 22, 30, 40]));
  if (!placed) return [];
  const { box } = placed;
  const centre: Point = [box.x + box.width / 2, box.y + box.height / 2];
  const drawn = stone(centre, shapeOf(one.finding), String(one.number));
  return [leader(centre, anchor), sheet.linked ? linkedStone(drawn, one.number, sheet) : drawn];
}

/** A stone that leads to its note, and can be pointed at from there. */
function linkedStone(drawn: Markup, number: number, { id }: Sheet): Markup {
  return element("a", { id: `${id}-stone-${number}`, href: `#finding-${number}` }, drawn);
}

interface Figure {
  readonly at: Point;
  readonly text: string;
}

/** The figures of all findings; one that stands at the same place with the same words is written once. */
function figuresOf(told: readonly Numbered[], sheet: Sheet): readonly Figure[] {
  const figures = new Map<string, Figure>();
  for (const one of told)
    for (const witness of one.finding.witness.filter(drawable)) {
      const points = witness.points.map(sheet.at);
      const at = witness.form === "outline" ? centreOf(points) : middleOf(points)?.at;
      const text = figureWords(one, witness);
      if (!at || text === "") continue;
      const key = `${text} ${Math.round(at[0])} ${Math.round(at[1])}`;
      if (!figures.has(key)) figures.set(key, { at, text });
    }
  return [...figures.values()];
}

function figureMarkup({ at, text }: Figure, taken: Taken): readonly Markup[] {
  const candidates = (size: Size) => placesAround(at, size, [1.2, 3, 6, 10, 16]);
  return placedWords(text, { candidates, weight: "bold" }, taken);
}

/** Large things are named first: they have room inside; pegs last. */
function namesFirst(marks: readonly PictureMark[]): readonly PictureMark[] {
  const rank = (mark: PictureMark) =>
    mark.form === "outline" ? 0 : mark.form === "circle" ? 1 : mark.form === "line" ? 2 : mark.kind === "peg" ? 4 : 3;
  return marks
    .map((mark, index) => ({ mark, index }))
    .sort((a, b) => rank(a.mark) - rank(b.mark) || a.index - b.index)
    .map(({ mark }) => mark)
    .slice(0, mostNames);
}

function nameMarkup(mark: PictureMark, sheet: Sheet, taken: Taken): readonly Markup[] {
  const points = mark.points.map(sheet.at);
  if (points.length === 0) return [];
  const reach = mark.form === "line" ? sheet.long(mark.width ?? 0) / 2 : 0;
  const anchors = mark.form === "line" ? alongLine(points) : [{ at: centreOf(points), cost: 0 }];
  const within = mark.form === "outline" || mark.form === "circle";
  const candidates = (size: Size): readonly Candidate[] =>
    anchors.flatMap(({ at, cost }) => [
      ...(within ? [placeOn(at, size)] : []),
      ...placesAround(
        at,
        size,
        [1.5, 4, 8, 14, 22].map((off) => off + reach),
      ).map((one) => ({ ...one, cost: one.cost + cost })),
    ]);
  return placedWords(mark.label, { candidates, reach }, taken);
}

const placesOnLine = 7;

/** Places along a line at which it may be named, the middle first. */
function alongLine(points: readonly Point[]): readonly { readonly at: Point; readonly cost: number }[] {
  const step = lengthOf(points) / placesOnLine;
  if (!(step > 0)) return [{ at: points[0] ?? [0, 0], cost: 0 }];
  return stations(points, step).map(({ at }, index) => ({ at, cost: Math.abs(index - (placesOnLine - 1) / 2) * 0.6 }));
}

interface Wish {
  readonly candidates: (size: Size) => readonly Candidate[];
  readonly weight?: "bold";
  /** How far the thing itself reaches from the point that it is named at. */
  readonly reach?: number;
}

function placedWords(text: string, wish: Wish, taken: Taken): readonly Markup[] {
  const lines = paperLines(text, { width: widestLabel, size: letter, most: 2 }).filter((line) => line !== "");
  if (lines.length === 0) return [];
  const width = Math.max(...lines.map((line) => textWidth(line, letter))) + 0.8;
  const size = { width, height: lines.length * letter * 1.18 + 0.5 };
  const placed = taken.place(size, wish.candidates(size));
  if (!placed) return [];
  const lettered = lines.map((line, index) => words(line, placed.box, { index, weight: wish.weight }));
  return [...leaderTo(placed, wish.reach ?? 0), ...lettered];
}

function leaderTo({ box, to }: Placed, reach: number): readonly Markup[] {
  const near = nearestOf(box, to);
  return Math.hypot(near[0] - to[0], near[1] - to[1]) > leaderFrom + reach ? [leader(near, to)] : [];
}

function leader(from: Point, to: Point): Markup {
  return element("path", { d: pathOf([from, to]), fill: "none", stroke: ink, "stroke-width": 0.18 });
}

/** Words with a halo of paper, so that a line under them does not cross them out. */
function words(text: string, box: Box, line: { readonly index: number; readonly weight: "bold" | undefined }): Markup {
  return element(
    "text",
    {
      x: box.x + box.width / 2,
      y: box.y + letter * 0.95 + line.index * letter * 1.18,
      "font-size": letter,
      "font-weight": line.weight,
      "text-anchor": "middle",
      fill: ink,
      stroke: paper,
      "stroke-width": 0.9,
      "stroke-linejoin": "round",
      "paint-order": "stroke",
    },
    plain(text),
  );
}
