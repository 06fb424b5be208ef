// What stands on the plot, in ink: a hatch or a line for each kind. Light lines are there already, heavy ones are to be built.

import type { Picture, PictureMark } from "../model/picture.ts";
import type { Point } from "../model/reading.ts";
import { element, figure, joined, plain, type Markup } from "./markup.ts";
import { hatchPaint, ink, paper, type Hatch } from "./svg-hatch.ts";
import { beside, circlePath, crownPath, pathOf, stations } from "./svg-lines.ts";
import { drawable, type Sheet } from "./svg-paper.ts";

/** How a kind is drawn. */
interface Manner {
  /** Order from the ground up. */
  readonly layer: number;
  readonly hatch?: Hatch;
  readonly dash?: string;
  /** Something set along the line or at the point. */
  readonly sign?:
    | "posts"
    | "flow"
    | "hachures"
    | "edges"
    | "wheels"
    | "cross"
    | "square"
    | "crown"
    | "ring"
    | "peg"
    | "gate"
    | "rungs";
  /** Weight of the line in millimetres, before it is made lighter for what is there already. */
  readonly weight: number;
}

const manners: Readonly<Record<string, Manner>> = {
  catchment: { layer: 0, dash: "0.2 1.2", weight: 0.25 },
  boundary: { layer: 9, dash: "6 1.2 0.5 1.2 0.5 1.2", weight: 0.35 },
  surface: { layer: 1, hatch: "stipple", weight: 0.3 },
  road: { layer: 1, sign: "edges", weight: 0.3 },
  approach: { layer: 1, sign: "edges", weight: 0.3 },
  strip: { layer: 1, dash: "1.4 1", weight: 0.25 },
  animal: { layer: 1, dash: "0.3 1.6", weight: 0.3 },
  drainage_field: { layer: 2, hatch: "field", dash: "1.6 0.8", weight: 0.3 },
  water: { layer: 2, hatch: "water", sign: "ring", weight: 0.4 },
  spoil_place: { layer: 2, hatch: "heap", dash: "1.2 0.8", weight: 0.25 },
  heap: { layer: 3, hatch: "heap", weight: 0.3 },
  excavation: { layer: 3, hatch: "dig", dash: "2 0.7", weight: 0.35 },
  building: { layer: 4, hatch: "building", weight: 0.6 },
  ramp: { layer: 5, sign: "rungs", weight: 0.3 },
  step: { layer: 5, sign: "rungs", weight: 0.3 },
  crossing: { layer: 5, sign: "edges", weight: 0.4 },
  bank: { layer: 5, sign: "hachures", weight: 0.3 },
  wall: { layer: 6, hatch: "wall", weight: 0.45 },
  hedge: { layer: 6, hatch: "hedge", weight: 0.3 },
  fence: { layer: 7, sign: "posts", weight: 0.3 },
  gate: { layer: 7, sign: "gate", weight: 0.3 },
  drain: { layer: 8, sign: "flow", dash: "2.6 0.9", weight: 0.4 },
  service: { layer: 8, sign: "cross", dash: "5 1 1 1", weight: 0.3 },
  route: { layer: 8, dash: "0.8 0.8", weight: 0.3 },
  manoeuvre: { layer: 8, sign: "wheels", weight: 0.25 },
  tree: { layer: 10, sign: "crown", weight: 0.3 },
  chamber: { layer: 11, sign: "square", weight: 0.35 },
  septic_tank: { layer: 11, sign: "square", weight: 0.45 },
  tank: { layer: 11, sign: "square", weight: 0.45 },
  soakaway: { layer: 11, hatch: "field", sign: "square", weight: 0.35 },
  outfall: { layer: 11, sign: "ring", weight: 0.35 },
  obstacle: { layer: 11, sign: "ring", weight: 0.35 },
  threshold: { layer: 11, sign: "square", weight: 0.3 },
  peg: { layer: 12, sign: "peg", weight: 0.25 },
};
const unknown: Manner = { layer: 5, weight: 0.3 };

/** The manner of a kind, written in the singular or as the key of a plan. */
function mannerOf(kind: string): Manner {
  const word = kind.toLowerCase().split(" ")[0] ?? kind;
  const names = [kind, word, word.replace(/ies$/, "y"), word.replace(/(ch|sh|s|x)es$/, "$1"), word.replace(/s$/, "")];
  const name = names.find((one) => Object.hasOwn(manners, one));
  return (name === undefined ? undefined : manners[name]) ?? unknown;
}

/** All marks, from the ground up, each with its name for who points at it or listens. */
export function marksMarkup(picture: Picture, sheet: Sheet): Markup {
  const ordered = picture.marks
    .map((mark, index) => ({ mark, index, manner: mannerOf(mark.kind) }))
    .sort((a, b) => a.manner.layer - b.manner.layer || a.index - b.index);
  return joined(
    ordered.map(({ mark, manner }) => oneMark(mark, manner, sheet)),
    "\n",
  );
}

interface Pen {
  readonly mark: PictureMark;
  readonly manner: Manner;
  readonly points: readonly Point[];
  readonly weight: number;
  readonly sheet: Sheet;
}

const lighter = 0.6;

function oneMark(mark: PictureMark, manner: Manner, sheet: Sheet): Markup {
  const pen: Pen = {
    mark,
    manner,
    points: mark.points.map(sheet.at),
    weight: manner.weight * (mark.existing ? lighter : 1),
    sheet,
  };
  const title = element(
    "title",
    {},
    plain(`${mark.kind} "${mark.name}"${mark.existing ? ", there already" : ", to be built"}`),
  );
  return element(
    "g",
    { fill: "none", stroke: ink, "stroke-width": pen.weight, "stroke-linejoin": "round" },
    title,
    ...drawn(pen),
  );
}

function drawn(pen: Pen): readonly Markup[] {
  switch (pen.mark.form) {
    case "outline":
      return outlineMarkup(pen);
    case "circle":
      return circleMarkup(pen);
    case "line":
      return lineMarkup(pen);
    case "point":
      return pen.points.flatMap((at) => pointMarkup(at, pen));
  }
  return [];
}

function outlineMarkup({ mark, manner, points, sheet }: Pen): readonly Markup[] {
  const holes = (mark.holes ?? [])
    .filter((points) => drawable({ points }))
    .map((hole) => pathOf(hole.map(sheet.at), "closed"))
    .join("");
  const d = pathOf(points, "closed") + holes;
  const ground = manner.hatch
    ? [element("path", { d, fill: hatchPaint(manner.hatch), "fill-rule": "evenodd", stroke: "none" })]
    : [];
  const ticks = manner.sign === "hachures" ? hachures([...points, ...points.slice(0, 1)]) : [];
  return [...ground, element("path", { d, "stroke-dasharray": manner.dash }), ...ticks];
}

function circleMarkup(pen: Pen): readonly Markup[] {
  const { mark, manner, points, sheet } = pen;
  const radius = Math.max(0.6, sheet.long(mark.radius ?? 0));
  return points.flatMap((at) => {
    if (manner.sign === "crown") return crownMarkup(at, radius, pen);
    const fill = manner.hatch ? hatchPaint(manner.hatch) : "none";
    return [element("path", { d: circlePath(at, radius), fill, "stroke-dasharray": manner.dash })];
  });
}

/** Narrowest a crown's scallop and its stem are drawn, millimetres. */
const lobe = 3.4;
function crownMarkup([cx, cy]: Point, radius: number, { weight }: Pen): readonly Markup[] {
  const ring = radius > 1.2 ? [element("path", { d: crownPath([cx, cy], radius, lobe) })] : [];
  return [
    ...ring,
    element("circle", { cx, cy, r: 0.75, fill: ink, stroke: "none" }),
    element("circle", { cx, cy, r: 1.2, "stroke-width": weight }),
  ];
}

/** Narrowest that a thing of a given thickness is drawn, millimetres. */
const thinnest = 0.9;

function lineMarkup(pen: Pen): readonly Markup[] {
  const { mark, manner, points, weight, sheet } = pen;
  const width = sheet.long(mark.width ?? 0);
  const d = pathOf(points);
  if (manner.sign === "wheels") return wheelMarkup(points, width);
  if (manner.hatch && (width > 0 || manner.hatch === "wall" || manner.hatch === "hedge"))
    return banded(d, { hatch: manner.hatch, width: Math.max(thinnest, width), weight });
  if ((manner.sign === "edges" || manner.hatch || manner.sign === "rungs") && width > 0)
    return [edges(points, width, manner.dash), ...(manner.sign === "rungs" ? rungs(points, width) : [])];
  const line = element("path", { d, "stroke-dasharray": manner.dash });
  return [line, ...signsAlong(pen)];
}

/** A band of the true width: its two edges in ink, paper between them, and the hatch on it. */
function banded(
  d: string,
  band: { readonly hatch: Hatch; readonly width: number; readonly weight: number },
): readonly Markup[] {
  const butt = { d, "stroke-linecap": "butt", "stroke-linejoin": "miter" };
  return [
    element("path", { ...butt, "stroke-width": band.width + 2 * band.weight }),
    element("path", { ...butt, stroke: paper, "stroke-width": band.width }),
    element("path", { ...butt, stroke: hatchPaint(band.hatch), "stroke-width": band.width }),
  ];
}

function edges(points: readonly Point[], width: number, dash: string | undefined): Markup {
  return element("path", {
    d: pathOf(beside(points, width / 2)) + pathOf(beside(points, -width / 2)),
    "stroke-dasharray": dash,
  });
}

/** Tyre marks: a dotted pair. */
function wheelMarkup(points: readonly Point[], width: number): readonly Markup[] {
  return [
    element("path", {
      d: pathOf(beside(points, width / 2)) + pathOf(beside(points, -width / 2)),
      "stroke-dasharray": "0.1 0.9",
      "stroke-linecap": "round",
      "stroke-width": 0.4,
    }),
  ];
}

function rungs(points: readonly Point[], width: number): readonly Markup[] {
  return [element("path", { d: across(points, { step: 2, left: width / 2, right: width / 2 }), "stroke-width": 0.2 })];
}

function signsAlong({ manner, points }: Pen): readonly Markup[] {
  if (manner.sign === "posts")
    return [
      element("path", { d: across(points, { step: 3.2, left: 0.6, right: 0.6 }) }),
      ...points.map((at) => square(at, 0.5, ink)),
    ];
  if (manner.sign === "flow") return arrows(points);
  if (manner.sign === "hachures") return hachures(points);
  if (manner.sign === "cross") return [element("path", { d: crosses(points), "stroke-width": 0.3 })];
  if (manner.sign === "gate") return points.map((at) => square(at, 0.7, ink));
  return [];
}

/** Strokes across a line, at equal steps. */
function across(
  points: readonly Point[],
  stroke: { readonly step: number; readonly left: number; readonly right: number },
): string {
  return stations(points, stroke.step)
    .map(
      ({ at: [x, y], along: [dx, dy] }) =>
        `M${figure(x + dy * stroke.left)},${figure(y - dx * stroke.left)}L${figure(x - dy * stroke.right)},${figure(y + dx * stroke.right)}`,
    )
    .join("");
}

/** Hachures of a bank: long and short strokes by turns, on both sides, since a line does not say which side is down. */
function hachures(points: readonly Point[]): readonly Markup[] {
  return [
    element("path", {
      d:
        across(points, { step: 2.4, left: 1, right: 1 }) +
        across(points.slice(0), { step: 1.2, left: 0.45, right: 0.45 }),
      "stroke-width": 0.2,
    }),
  ];
}

function crosses(points: readonly Point[]): string {
  return stations(points, 14)
    .map(({ at: [x, y] }) => `M${figure(x - 0.7)},${figure(y - 0.7)}l1.4,1.4m0,-1.4l-1.4,1.4`)
    .join("");
}

/** Arrowheads that say which way it runs, from the first point to the last. */
function arrows(points: readonly Point[]): readonly Markup[] {
  const heads = stations(points, 22).map(({ at: [x, y], along: [dx, dy] }) => {
    const tip: Point = [x + dx * 1.1, y + dy * 1.1];
    const side = (hand: number): Point => [x - dx * 0.9 - dy * 0.75 * hand, y - dy * 0.9 + dx * 0.75 * hand];
    return pathOf([tip, side(1), side(-1)], "closed");
  });
  return [element("path", { d: heads.join(""), fill: ink, stroke: "none" })];
}

function square([x, y]: Point, half: number, fill: string): Markup {
  return element("rect", { x: x - half, y: y - half, width: 2 * half, height: 2 * half, fill });
}

function pointMarkup(at: Point, pen: Pen): readonly Markup[] {
  const [x, y] = at;
  const { sign } = pen.manner;
  if (sign === "crown") return crownMarkup(at, 0, pen);
  if (sign === "square")
    return [
      square(at, 1.1, paper),
      element("path", { d: `M${figure(x - 1.1)},${figure(y - 1.1)}l2.2,2.2m0,-2.2l-2.2,2.2`, "stroke-width": 0.2 }),
    ];
  if (sign === "ring")
    return [
      element("circle", { cx: x, cy: y, r: 1.2, fill: paper }),
      element("circle", { cx: x, cy: y, r: 0.35, fill: ink, stroke: "none" }),
    ];
  if (sign === "posts" || sign === "gate") return [square(at, 0.6, ink)];
  return [element("path", { d: `M${figure(x - 0.9)},${figure(y)}h1.8m-0.9,-0.9v1.8` })];
}
