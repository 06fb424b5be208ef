// A manoeuvre that does not go, side by side with what would let it: the same ground twice on one sheet, as it is drawn and
// with the first change that was found by search.

import type { Finding, RemedyFound } from "../model/finding.ts";
import type { Picture, PictureMark } from "../model/picture.ts";
import type { Witness } from "../model/reading.ts";
import { sentence } from "./clean.ts";
import type { Numbered } from "./grouping.ts";
import { element, joined, paperLines, plain, type Markup } from "./markup.ts";
import { hatchDefinitions, ink, paper } from "./svg-hatch.ts";
import { letteringMarkup } from "./svg-lettering.ts";
import { pathOf } from "./svg-lines.ts";
import { marksMarkup } from "./svg-marks.ts";
import { type Box, drawable, panelSheet, type Sheet } from "./svg-paper.ts";
import { coveredMarkup, pathMarkup, showsPath, touches } from "./svg-path.ts";
import { shapeOf, stone, stoneHalf } from "./svg-stones.ts";

/** A finding with the first of its remedies that can be drawn. */
interface Pair {
  readonly one: Numbered;
  readonly remedy: RemedyFound;
}

const page = { width: 297, height: 210, edge: 9 };
const top = 26;
const caption = 17;
const foot = 14;
const gap = 7;
const letter = 3;
const lineHeight = 3.9;
/** Most sheets of this sort for one drawing. */
const mostPairs = 3;

/** Sheets for the told findings that carry a remedy which can be drawn. */
export function pairSheets(picture: Picture, told: readonly Numbered[], id: string): readonly Markup[] {
  return pairsOf(told).map((pair, index) => pairMarkup(picture, pair, `${id}-pair-${index + 1}`));
}

/** The told findings that are drawn as they are and with a change. */
export function pairsOf(told: readonly Numbered[]): readonly Pair[] {
  return told
    .flatMap((one): Pair[] => {
      const remedy = one.finding.remedies.find(({ witness = [] }) => showsPath(witness));
      return remedy ? [{ one, remedy }] : [];
    })
    .slice(0, mostPairs);
}

function pairMarkup(picture: Picture, { one, remedy }: Pair, id: string): Markup {
  const { finding } = one;
  const witness = [...finding.witness, ...(remedy.witness ?? [])].filter(drawable);
  const width = (page.width - 2 * page.edge - gap) / 2;
  const boxAt = (index: number): Box => ({
    x: page.edge + index * (width + gap),
    y: top + caption,
    width,
    height: page.height - top - caption - foot - page.edge,
  });
  const sheets = [0, 1].map((index) => panelSheet(boxAt(index), witness, `${id}-${index}`)) as [Sheet, Sheet];
  const now = { title: "As drawn", words: shortfall(finding), witness: finding.witness, tightest: roomNow(finding) };
  const then = { title: "With one change", words: remedy.words, witness: remedy.witness ?? [], tightest: "tightest" };
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: `${page.width}mm`,
      height: `${page.height}mm`,
      viewBox: `0 0 ${page.width} ${page.height}`,
      role: "img",
      "aria-labelledby": `${id}-title`,
      "font-family": "Helvetica, Arial, 'Liberation Sans', sans-serif",
    },
    element("title", { id: `${id}-title` }, plain(`${sentence(finding.sentence)} ${sentence(remedy.words)}`)),
    element("rect", { x: 0, y: 0, width: page.width, height: page.height, fill: paper }),
    headMarkup(one),
    panelMarkup(picture, now, sheets[0]),
    panelMarkup({ ...picture, marks: redrawn(picture.marks, remedy) }, then, sheets[1]),
    footMarkup(sheets[0]),
  );
}

function headMarkup({ number, finding }: Numbered): Markup {
  const lines = paperLines(sentence(finding.sentence), { width: page.width - 2 * page.edge - 12, size: 4.2, most: 3 });
  return joined([
    stone([page.edge + stoneHalf, 11], shapeOf(finding), String(number)),
    ...lines.map((line, index) => text([page.edge + 8, 11 + index * 5.2], line, { size: 4.2, weight: "bold" })),
  ]);
}

interface Panel {
  readonly title: string;
  readonly words: string;
  readonly witness: readonly Witness[];
  readonly tightest: string;
}

function panelMarkup(picture: Picture, { title, words, witness, tightest }: Panel, sheet: Sheet): Markup {
  const { sketch, id } = sheet;
  const shown = witness.filter(drawable);
  const near = { ...picture, marks: picture.marks.filter((mark) => drawable(mark) && touches(mark, sheet)) };
  const lines = paperLines(words, { width: sketch.width - 2, size: letter, most: 3 });
  const clip = element(
    "clipPath",
    { id: `${id}-sketch` },
    element("rect", { x: sketch.x, y: sketch.y, width: sketch.width, height: sketch.height }),
  );
  return joined([
    element("defs", {}, clip, hatchDefinitions(id)),
    text([sketch.x, top + 1], title, { size: 3.8, weight: "bold" }),
    ...lines.map((line, index) => text([sketch.x, top + 5.6 + index * lineHeight], line, { size: letter })),
    element(
      "g",
      { "clip-path": `url(#${id}-sketch)` },
      coveredMarkup(shown, sheet),
      marksMarkup(near, sheet),
      takenMarkup(shown, sheet),
      letteringMarkup(near, [], sheet),
      pathMarkup(shown, sheet, tightest),
    ),
    element("rect", { ...sketch, fill: "none", stroke: ink, "stroke-width": 0.3 }),
  ]);
}

/** The ground that is newly taken: heavy outline, and a slant hatch of its own. */
function takenMarkup(witness: readonly Witness[], sheet: Sheet): Markup {
  const taken = witness.find(({ part, form }) => part === "found" && form === "outline");
  if (!taken) return joined([]);
  const d = pathOf(taken.points.map(sheet.at), "closed");
  return element("path", { d, fill: ink, "fill-opacity": 0.28, stroke: ink, "stroke-width": 0.8 });
}

/** Marks without the thing that the remedy draws anew. */
function redrawn(marks: readonly PictureMark[], { redrawn: name }: RemedyFound): readonly PictureMark[] {
  return name === undefined ? marks : marks.filter((mark) => mark.name !== name);
}

/** `0.44 m short of the room that is wanted`. */
function shortfall({ found, wanted }: Finding): string {
  if (!found || !wanted || typeof wanted.value !== "number") return "";
  const short = wanted.value - found.value;
  return short > 0 ? `${short.toFixed(2)} m short of the room that is wanted all round.` : "Too close to tell.";
}

function roomNow({ found }: Finding): string {
  if (!found) return "tightest";
  return found.value < 0 ? `${(-found.value).toFixed(2)} m too little` : `${found.value.toFixed(2)} m`;
}

function footMarkup(sheet: Sheet): Markup {
  const y = page.height - page.edge - foot + 8;
  const step = [1, 2, 5, 10].find((metres) => sheet.long(metres) >= 14) ?? 20;
  const long = sheet.long(step);
  return joined([
    element("path", {
      d: `M${page.edge},${y - 1}v2.2h${long.toFixed(2)}v-2.2`,
      fill: "none",
      stroke: ink,
      "stroke-width": 0.4,
    }),
    text([page.edge + long + 2, y + 1.2], `${step} m, 1 : ${sheet.scale}`, { size: letter }),
    text(
      [page.edge + long + 34, y + 1.2],
      "Tint: ground that the body covers. Rear tyres: dots forwards, dashes backwards. Numbers: where each move begins, in order; the line across a body is by its nose.",
      { size: 2.7 },
    ),
    text(
      [page.edge + long + 34, y + 5],
      "Ring: where it is tightest. Dark: what is newly taken. At walking pace, by a driver who makes no mistake. Nobody on foot in the tinted ground.",
      { size: 2.7 },
    ),
  ]);
}

function text(
  [x, y]: readonly [number, number],
  words: string,
  { size, weight }: { readonly size: number; readonly weight?: string },
): Markup {
  return element("text", { x, y, "font-size": size, "font-weight": weight, fill: ink }, plain(words));
}
