// Where vehicles go: for every manoeuvre whose path was found, with room or without, a small picture of the way it is driven.

import type { Finding, Report, Verdict } from "../model/finding.ts";
import type { Picture, PictureMark } from "../model/picture.ts";
import { clean } from "./clean.ts";
import { standingVerdict, type Numbered } from "./grouping.ts";
import { element, joined, paperLines, plain, type Markup } from "./markup.ts";
import { hatchDefinitions, ink, paper } from "./svg-hatch.ts";
import { letteringMarkup } from "./svg-lettering.ts";
import { marksMarkup } from "./svg-marks.ts";
import { type Box, drawable, panelSheet, type Sheet } from "./svg-paper.ts";
import { pairsOf } from "./svg-pair.ts";
import { coveredMarkup, pathMarkup, showsPath, touches } from "./svg-path.ts";
import { shapeOf, stone, stoneHalf } from "./svg-stones.ts";

/** The rule whose findings hold the found paths. */
const roomRule = "access/no-room-to-turn";

const page = { width: 297, height: 210, edge: 9 };
const top = 22;
const caption = 15;
const foot = 9;
const gap = 6;
/** Most pictures on a sheet, and the ways to lay them out. */
const most = 4;
const grids = [
  [1, 1],
  [2, 1],
  [3, 1],
  [4, 1],
  [2, 2],
] as const;
const letter = 2.7;
const lineHeight = 3.5;

/** Whether a finding holds the found path of a manoeuvre. */
export function isWay({ rule, witness }: Finding): boolean {
  return rule === roomRule && showsPath(witness);
}

/** Sheets of small pictures, six on each, for the manoeuvres that are done at the stage of a picture. */
export function waySheets(picture: Picture, report: Report, at: WaysAt): readonly Markup[] {
  const paired = new Set(pairsOf(at.told).map(({ one }) => one.finding));
  const ways = report.findings.filter(
    (finding) =>
      !paired.has(finding) &&
      (finding.stages.length === 0 || finding.stages.includes(picture.stage)) &&
      !at.shown.has(finding) &&
      isWay(finding),
  );
  return Array.from({ length: Math.ceil(ways.length / most) }, (_, i) =>
    sheetMarkup(picture, ways.slice(i * most, (i + 1) * most), { report, told: at.told, id: `${at.id}-ways-${i + 1}` }),
  );
}

/** What is told at the stage, what was shown at another one, and the name that keeps drawings apart. */
export interface WaysAt {
  readonly told: readonly Numbered[];
  readonly shown: ReadonlySet<Finding>;
  readonly id: string;
}

interface OnSheet {
  readonly report: Report;
  readonly told: readonly Numbered[];
  readonly id: string;
}

function sheetMarkup(picture: Picture, ways: readonly Finding[], { report, told, id }: OnSheet): Markup {
  const sheets = laidOut(ways, id);
  const stage = picture.stage === "" ? "" : ` at stage "${clean(picture.stage)}"`;
  const words = ways.map((finding) => `${titleOf(finding, report)}: ${outcomeOf(finding)}.`);
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: `${page.width}mm`,
      height: `${page.height}mm`,
      viewBox: `0 0 ${page.width} ${page.height}`,
      role: "img",
      "aria-labelledby": `${id}-title ${id}-words`,
      "font-family": "Helvetica, Arial, 'Liberation Sans', sans-serif",
    },
    element("title", { id: `${id}-title` }, plain(`${clean(picture.title)}: where vehicles go${stage}`)),
    element("desc", { id: `${id}-words` }, plain(words.join(" "))),
    element("rect", { x: 0, y: 0, width: page.width, height: page.height, fill: paper }),
    text([page.edge, 12], `Where vehicles go${stage}`, { size: 5, weight: "bold" }),
    text([page.edge, 17], clean(picture.title), { size: 3.2 }),
    ...ways.map((finding, i) => {
      const known = told.find((one) => one.finding === finding);
      const sheet = sheets[i];
      return sheet === undefined
        ? joined([])
        : panelMarkup(picture, finding, { sheet, title: titleOf(finding, report), number: known?.number ?? null });
    }),
    keyMarkup(),
  );
}

/** A panel for each way, in the grid in which they come out largest. */
function laidOut(ways: readonly Finding[], id: string): readonly Sheet[] {
  const shown = ways.map(({ witness }) => witness.filter(drawable));
  const laid = grids
    .filter(([across, down]) => across * down >= ways.length)
    .map((grid) => shown.map((witness, i) => panelSheet(boxOf(grid, i), witness, `${id}-${i + 1}`)));
  const coarsest = (sheets: readonly Sheet[]) => Math.max(...sheets.map(({ scale }) => scale));
  return laid.reduce((best, sheets) => (coarsest(sheets) < coarsest(best) ? sheets : best), laid[0] ?? []);
}

function boxOf([across, down]: readonly [number, number], i: number): Box {
  const width = (page.width - 2 * page.edge - (across - 1) * gap) / across;
  const height = (page.height - top - foot - page.edge - (down - 1) * gap) / down;
  return {
    x: page.edge + (i % across) * (width + gap),
    y: top + Math.floor(i / across) * (height + gap) + caption,
    width,
    height: height - caption,
  };
}

interface Panel {
  readonly sheet: Sheet;
  readonly title: string;
  readonly number: number | null;
}

function panelMarkup(picture: Picture, finding: Finding, { sheet, title, number }: Panel): Markup {
  const { sketch, id } = sheet;
  const shown = finding.witness.filter(drawable);
  const near = { ...picture, marks: picture.marks.filter((mark) => drawable(mark) && touches(mark, sheet)) };
  const aside = number === null ? 0 : 2 * stoneHalf + 2;
  const heads = paperLines(title, { width: sketch.width - aside, size: 3.2, most: 1 });
  const lines = paperLines(`${outcomeOf(finding)}.`, { width: sketch.width - aside, size: letter, most: 3 });
  const head = sketch.y - caption;
  const clip = element(
    "clipPath",
    { id: `${id}-sketch` },
    element("rect", { x: sketch.x, y: sketch.y, width: sketch.width, height: sketch.height }),
  );
  return element(
    "g",
    { id },
    element("defs", {}, clip, hatchDefinitions(id)),
    ...(number === null
      ? []
      : [stone([sketch.x + stoneHalf, head + stoneHalf + 0.6], shapeOf(finding), String(number))]),
    ...heads.map((line) => text([sketch.x + aside, head + 3.6], line, { size: 3.2, weight: "bold" })),
    ...lines.map((line, i) => text([sketch.x + aside, head + 7.4 + i * lineHeight], line, { size: letter })),
    element(
      "g",
      { "clip-path": `url(#${id}-sketch)` },
      layer(`${id}-covered`, coveredMarkup(shown, sheet)),
      layer(`${id}-ground`, joined([marksMarkup(near, sheet), letteringMarkup(named(near, sheet), [], sheet)])),
      layer(`${id}-path`, pathMarkup(shown, sheet, tightestOf(finding))),
    ),
    element("rect", { ...sketch, fill: "none", stroke: ink, "stroke-width": 0.25 }),
    barMarkup(sheet),
  );
}

/** Only what stands about the way is named: the middle of it lies within the ground that the way itself takes up. */
function named(picture: Picture, { bounds }: Sheet): Picture {
  const inside = ({ points }: PictureMark) =>
    points.some(([x, y]) => x > bounds.west && x < bounds.east && y > bounds.south && y < bounds.north);
  const quiet = new Set(["boundary", "road"]);
  return { ...picture, marks: picture.marks.filter((mark) => inside(mark) && !quiet.has(mark.kind)) };
}

const layer = (id: string, markup: Markup): Markup => element("g", { id }, markup);

/** A bar of some metres inside the lower left corner. */
function barMarkup(sheet: Sheet): Markup {
  const { sketch } = sheet;
  const step = [1, 2, 5, 10, 20].find((metres) => sheet.long(metres) >= 9) ?? 50;
  const [x, y] = [sketch.x + 2, sketch.y + sketch.height - 2];
  return joined([
    element("path", {
      d: `M${x.toFixed(2)},${(y - 1.6).toFixed(2)}v1.6h${sheet.long(step).toFixed(2)}v-1.6`,
      fill: "none",
      stroke: ink,
      "stroke-width": 0.35,
    }),
    text([x + sheet.long(step) + 1.2, y], `${step} m`, { size: 2.5 }),
  ]);
}

/** `lorry: blocks come`, from the line that says where it goes; else the name of what is done. */
function titleOf({ features }: Finding, { plans }: Report): string {
  const name = clean(features[0]?.name ?? "");
  const line = plans.flatMap(({ goes = [] }) => goes).find((one) => one.includes(`("${name}")`));
  const vehicle = line?.slice(0, line.indexOf(` ("${name}")`)).replace(/^-\s*/, "") ?? "";
  return vehicle === "" ? name : `${clean(vehicle)}: ${name}`;
}

const verdicts: Readonly<Record<Verdict, string>> = {
  met: "It has the room that is wanted",
  "no-fault-seen": "No fault was seen",
  "not-met": "It has not the room that is wanted",
  undecided: "Whether it has the room cannot be said",
  "not-given": "Whether it has the room is not known",
  departure: "It has not the room that is wanted, and somebody agreed to that",
  "does-not-bear": "Its room was not looked at",
};

/** `It has the room that is wanted: 0.41 m at the tightest place, 0.30 m wanted; 3 moves`. */
function outcomeOf(finding: Finding): string {
  const { wanted, witness } = finding;
  const moves = witness.filter(({ label }) => label?.startsWith("move ")).length;
  const wish = wanted && typeof wanted.value === "number" ? `, ${wanted.value.toFixed(2)} m wanted` : "";
  return `${verdicts[standingVerdict(finding)]}: ${tightestOf(finding)} at the tightest place${wish}; ${moves} ${moves === 1 ? "move" : "moves"}`;
}

function tightestOf({ found }: Finding): string {
  if (!found) return "tightest";
  return found.value < 0 ? `${(-found.value).toFixed(2)} m too little` : `${found.value.toFixed(2)} m`;
}

function keyMarkup(): Markup {
  const y = page.height - page.edge - 2;
  return joined([
    text(
      [page.edge, y - 3.4],
      "Tint: ground that the body covers. Rear tyres: dots forwards, dashes backwards. Bodies: where each move begins, numbered in order; the line across is by the nose. Ring: where it is tightest.",
      { size: letter },
    ),
    text(
      [page.edge, y + 0.4],
      "One way that was found and checked, at walking pace with the wheels turned as it stands, by a driver who makes no mistake. Mirrors are not in the tint. Nobody on foot in the tinted ground.",
      { size: letter },
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
