// The drawing: to scale, in ink on pale paper, with the findings as numbered stones. Pure: the same picture and report
// give the same bytes (coordinates are rounded to a hundredth of a millimetre).

import type { Report } from "../model/finding.ts";
import type { Picture } from "../model/picture.ts";
import { sentence } from "./clean.ts";
import { dateWords } from "./dates.ts";
import { numbered, type Numbered } from "./grouping.ts";
import { element, figure, joined, plain, type Markup } from "./markup.ts";
import { headMarkup, netMarkup, stripMarkup } from "./svg-frame.ts";
import { hatchDefinitions } from "./svg-hatch.ts";
import { letteringMarkup } from "./svg-lettering.ts";
import { marksMarkup, onGround } from "./svg-marks.ts";
import { drawable, sheetFor, type Sheet } from "./svg-paper.ts";
import { pairHeight, pairSheets, pairWidth } from "./svg-pair.ts";
import { footHeight, footMarkup } from "./svg-stones.ts";
import { witnessMarkup } from "./svg-witness.ts";

const letters = "Helvetica, Arial, 'Liberation Sans', sans-serif";

/** A drawing of one stage as an SVG page of A4 or A3, at the scale it says, in millimetres. */
export function drawing(picture: Picture, report: Report): string {
  const [first, pairs] = [drawingMarkup(picture, report), pairsMarkup(picture, report)];
  const sheets = pairs.length === 0 ? first : stacked(first, pairs);
  return `<?xml version="1.0" encoding="UTF-8"?>\n${sheets.markup}\n`;
}

/** Sheets that show, for manoeuvres without room, the ground as drawn beside what would let them go. */
export function pairsMarkup(picture: Picture, report: Report, id = "sr"): readonly Markup[] {
  return pairSheets({ ...picture, marks: picture.marks.filter(drawable) }, toldAt(picture.stage, numbered(report)), id);
}

/** Sheets one below the other. */
function stacked(first: Markup, more: readonly Markup[]): Markup {
  const [, width = 0, height = 0] = (/ width="([\d.]+)mm" height="([\d.]+)mm"/.exec(first.markup) ?? []).map(Number);
  const whole = height + more.length * (pairHeight + betweenSheets);
  const moved = more.map((sheet, index) => {
    const y = height + betweenSheets + index * (pairHeight + betweenSheets);
    return { markup: sheet.markup.replace("<svg ", `<svg x="0" y="${figure(y)}" `).replace(/(\d)mm"/g, '$1"') };
  });
  const top = { markup: first.markup.replace(/ (width|height)="([\d.]+)mm"/g, ' $1="$2"') };
  const head = {
    xmlns: "http://www.w3.org/2000/svg",
    width: `${Math.max(width, pairWidth)}mm`,
    height: `${whole}mm`,
    viewBox: `0 0 ${Math.max(width, pairWidth)} ${whole}`,
  };
  return element("svg", head, top, ...moved);
}

/** Free paper between sheets, mm. */
const betweenSheets = 6;

/** The drawing as one `svg` element, for a page that holds it; `id` keeps the names inside two drawings apart, and its stones lead to the notes. */
export function drawingMarkup(whole: Picture, report: Report, id?: string): Markup {
  return onSheet(whole, report, { id: id ?? "sr", linked: id !== undefined });
}

function onSheet(whole: Picture, report: Report, page: { readonly id: string; readonly linked: boolean }): Markup {
  const { id } = page;
  const picture = { ...whole, marks: whole.marks.filter(drawable) };
  const leftOut = whole.marks.length - picture.marks.length;
  const all = numbered(report);
  const told = toldAt(picture.stage, all);
  const others = all.filter((one) => !told.includes(one));
  const witness = told.flatMap(({ finding }) => finding.witness.filter(drawable));
  const sheet = sheetFor(picture, witness, { ...page, footHeight: (width) => footHeight(told.length, width) });
  const { sketch } = sheet;
  const head = {
    xmlns: "http://www.w3.org/2000/svg",
    width: `${sheet.width}mm`,
    height: `${sheet.height}mm`,
    viewBox: `0 0 ${sheet.width} ${sheet.height}`,
    role: "img",
    "aria-labelledby": `${id}-title ${id}-words`,
    "font-family": letters,
  };
  const clip = element(
    "clipPath",
    { id: `${id}-sketch` },
    element("rect", { x: sketch.x, y: sketch.y, width: sketch.width, height: sketch.height }),
  );
  const parts = [
    element(
      "title",
      { id: `${id}-title` },
      plain(`${picture.title}, ${picture.stage === "" ? "all stages" : `stage ${picture.stage}`}`),
    ),
    element("desc", { id: `${id}-words` }, wordsFor(picture, told, sheet)),
    element("defs", {}, clip, hatchDefinitions(id)),
    headMarkup(picture, sheet, `as of ${dateWords(report.as_of)}`),
    element(
      "g",
      { "clip-path": `url(#${id}-sketch)` },
      netMarkup(sheet),
      marksMarkup(picture, sheet),
      ...told.map((one) => witnessMarkup(one, sheet)),
    ),
    letteringMarkup(picture, told, sheet),
    stripMarkup(picture, sheet),
    footMarkup(told, { foot: sheet.foot, leftOut, others }),
  ];
  return element(
    "svg",
    head,
    joined(
      parts.filter(({ markup }) => markup !== ""),
      "\n",
    ),
  );
}

/** The told findings that hold at a stage, with the numbers they have in the text report. */
function toldAt(stage: string, all: readonly Numbered[]): readonly Numbered[] {
  const known = all.some(({ finding }) => finding.stages.includes(stage));
  return known ? all.filter(({ finding }) => finding.stages.length === 0 || finding.stages.includes(stage)) : all;
}

function wordsFor(picture: Picture, told: readonly Numbered[], sheet: Sheet): Markup {
  const things = picture.marks.filter(({ kind }) => !onGround.has(kind));
  const counted = plain(`${things.length} things drawn at 1 to ${figure(sheet.scale)}.`);
  const findings = told.map(({ number, finding }) => plain(`${number}: ${sentence(finding.sentence)}`));
  return joined([counted, ...findings], " ");
}
