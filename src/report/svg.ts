// The drawing: to scale, in ink on pale paper, with the findings as numbered stones. Pure: the same picture and report
// give the same bytes (coordinates are rounded to a hundredth of a millimetre).

import type { Finding, Report } from "../model/finding.ts";
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
import { pairSheets } from "./svg-pair.ts";
import { footHeight, footMarkup } from "./svg-stones.ts";
import { waySheets } from "./svg-ways.ts";
import { witnessMarkup } from "./svg-witness.ts";

const letters = "Helvetica, Arial, 'Liberation Sans', sans-serif";

/**
 * The drawing of a plan as an SVG page of A4 or A3, at the scale it says, in millimetres; below it, each a sheet of its own,
 * what would let manoeuvres go, where vehicles go, and the same of the earlier stages that the picture brings.
 */
export function drawing(picture: Picture, report: Report): string {
  const sheets = sheetsOf([picture], report);
  const whole = sheets.length > 1 ? stacked(sheets) : joined(sheets);
  return `<?xml version="1.0" encoding="UTF-8"?>\n${whole.markup}\n`;
}

/** All sheets of some pictures and their earlier stages, in order; a way is shown once, at the last stage that it is driven in. */
export function sheetsOf(pictures: readonly Picture[], report: Report, name?: string): readonly Markup[] {
  const all = numbered(report);
  const each = pictures.flatMap((last) => {
    const shown = new Set<Finding>();
    return [last, ...(last.earlier ?? [])].map((whole) => ({ whole, shown }));
  });
  return each.flatMap(({ whole, shown }, index) => {
    const id = name === undefined ? (index === 0 ? "sr" : `sr-${index + 1}`) : `${name}-${index + 1}`;
    const picture = { ...whole, marks: whole.marks.filter(drawable) };
    const ways = waySheets(picture, report, { told: toldAt(picture.stage, all), shown, id });
    for (const finding of report.findings) if (finding.stages.includes(picture.stage)) shown.add(finding);
    if (whole.shows === "ways") return ways;
    return [onSheet(whole, report, { id, linked: name !== undefined }), ...pairsMarkup(whole, report, id), ...ways];
  });
}

/** Sheets that show, for manoeuvres without room, the ground as drawn beside what would let them go. */
export function pairsMarkup(picture: Picture, report: Report, id = "sr"): readonly Markup[] {
  return pairSheets({ ...picture, marks: picture.marks.filter(drawable) }, toldAt(picture.stage, numbered(report)), id);
}

/** Sheets one below the other, each as large as it is. */
function stacked(sheets: readonly Markup[]): Markup {
  const sizes = sheets.map(({ markup }) => {
    const [, width = 0, height = 0] = (/ width="([\d.]+)mm" height="([\d.]+)mm"/.exec(markup) ?? []).map(Number);
    return { width, height };
  });
  let y = 0;
  const moved = sheets.map(({ markup }, index) => {
    const at = index === 0 ? "" : `x="0" y="${figure(y)}" `;
    y += (sizes[index]?.height ?? 0) + betweenSheets;
    return { markup: markup.replace("<svg ", `<svg ${at}`).replace(/(\d)mm"/g, '$1"') };
  });
  const [width, height] = [Math.max(...sizes.map((size) => size.width)), y - betweenSheets];
  const head = {
    xmlns: "http://www.w3.org/2000/svg",
    width: `${width}mm`,
    height: `${height}mm`,
    viewBox: `0 0 ${width} ${height}`,
  };
  return element("svg", head, ...moved);
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
