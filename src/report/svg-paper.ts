// The sheet: which paper, which scale, and where a point of the plan falls on it. Everything on the sheet is in millimetres.

import type { Picture, PictureMark } from "../model/picture.ts";
import type { Point, Witness } from "../model/reading.ts";

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Sheet {
  /** What the names inside the drawing begin with, so that several drawings can stand on one page. */
  readonly id: string;
  /** Whether the stones lead to the notes of the page that the drawing stands on. */
  readonly linked: boolean;
  readonly name: "A4" | "A3";
  readonly width: number;
  readonly height: number;
  /** One millimetre on paper is this many on the ground. */
  readonly scale: number;
  /** Room for the sketch, and for the stones along the foot. */
  readonly sketch: Box;
  readonly strip: Box;
  readonly foot: Box;
  /** Paper of a point of the plan. */
  readonly at: (point: Point) => Point;
  /** Millimetres on paper of a length on the ground in metres; nought where it is no plausible length. */
  readonly long: (metres: number) => number;
  /** Bounds of what is drawn, in plan metres. */
  readonly bounds: Bounds;
}

export interface Bounds {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** Scales on offer: those of a scale rule, then coarser ones, so that a farm still fits. */
const scales = [
  20, 25, 50, 75, 100, 125, 200, 250, 300, 400, 500, 750, 1000, 1250, 1500, 2000, 2500, 5000, 10_000, 25_000, 50_000,
  100_000,
] as const;
interface Paper {
  readonly name: "A4" | "A3";
  readonly width: number;
  readonly height: number;
}
const a4: Paper = { name: "A4", width: 297, height: 210 };
const a3: Paper = { name: "A3", width: 420, height: 297 };
/** From this scale on a larger sheet is worth it. */
const coarse = 250;
const edge = 9;
const headHeight = 19;
const stripHeight = 15;
/** Room kept free around what is drawn, for labels and stones. */
const around = 7;
/** The same about a panel, whose path is all that counts. */
const aroundPanel = 4;

/** Chooses paper and scale so that the picture fits; the smaller sheet if it does not cost too much of the scale. */
export function sheetFor(
  picture: Picture,
  witness: readonly Witness[],
  page: { readonly id: string; readonly linked: boolean; readonly footHeight: (width: number) => number },
): Sheet {
  const bounds = boundsOf(picture.marks, witness);
  const on = (paper: Paper) => sheetOn(paper, bounds, { ...page, footHeight: page.footHeight(paper.width - 2 * edge) });
  const small = on(a4);
  const large = on(a3);
  return small.scale < coarse || small.scale <= large.scale ? small : large;
}

function sheetOn(
  paper: Paper,
  bounds: Bounds,
  { id, linked, footHeight }: { readonly id: string; readonly linked: boolean; readonly footHeight: number },
): Sheet {
  const width = paper.width - 2 * edge;
  const foot = { x: edge, y: paper.height - edge - footHeight, width, height: footHeight };
  const strip = { x: edge, y: foot.y - stripHeight, width, height: stripHeight };
  const sketch = { x: edge, y: headHeight, width, height: strip.y - headHeight };
  return { id, linked, ...paper, strip, foot, ...laidIn(sketch, bounds, around) };
}

/** A sketch of some witness alone in a box of a sheet: for two of them side by side. */
export function panelSheet(sketch: Box, witness: readonly Witness[], id: string): Sheet {
  const none = { ...sketch, height: 0 };
  return { id, linked: false, ...a4, strip: none, foot: none, ...laidIn(sketch, boundsOf([], witness), aroundPanel) };
}

/** Where the ground within some bounds falls in a box, at the largest scale that fits. */
function laidIn(sketch: Box, bounds: Bounds, free: number): Pick<Sheet, "sketch" | "scale" | "at" | "long" | "bounds"> {
  const ground = { width: Math.max(1, bounds.east - bounds.west), height: Math.max(1, bounds.north - bounds.south) };
  const fits = (scale: number) =>
    (ground.width * 1000) / scale <= sketch.width - 2 * free &&
    (ground.height * 1000) / scale <= sketch.height - 2 * free;
  const scale = scales.find(fits) ?? scales[scales.length - 1] ?? 1;
  const perMetre = 1000 / scale;
  const middle: Point = [(bounds.west + bounds.east) / 2, (bounds.south + bounds.north) / 2];
  const at = ([east, north]: Point): Point => [
    sketch.x + sketch.width / 2 + (east - middle[0]) * perMetre,
    sketch.y + sketch.height / 2 - (north - middle[1]) * perMetre,
  ];
  return { scale, sketch, at, long: (metres) => plausible(metres) * perMetre, bounds };
}

/** Of a road that runs on beyond everything else so much is drawn, m; it does not make the rest small. */
const ofRoads = 6;

function boundsOf(marks: readonly PictureMark[], witness: readonly Witness[]): Bounds {
  let bounds = { west: Infinity, south: Infinity, east: -Infinity, north: -Infinity };
  const take = (points: readonly Point[], reach: number) => {
    for (const [east, north] of points) {
      bounds = {
        west: Math.min(bounds.west, east - reach),
        south: Math.min(bounds.south, north - reach),
        east: Math.max(bounds.east, east + reach),
        north: Math.max(bounds.north, north + reach),
      };
    }
  };
  const runsOn = (mark: PictureMark) => mark.kind === "road";
  for (const mark of marks) if (!runsOn(mark)) take(mark.points, reachOf(mark));
  for (const one of witness) take(one.points, plausible(one.radius));
  const { west, south, east, north } = bounds;
  const near = ([x, y]: Point): Point => [
    Math.max(west - ofRoads, Math.min(east + ofRoads, x)),
    Math.max(south - ofRoads, Math.min(north + ofRoads, y)),
  ];
  for (const mark of marks) if (runsOn(mark)) take(west <= east ? mark.points.map(near) : mark.points, reachOf(mark));
  return bounds.west <= bounds.east ? bounds : { west: 0, south: 0, east: 20, north: 12 };
}

function reachOf(mark: PictureMark): number {
  return mark.form === "circle" ? plausible(mark.radius) : mark.form === "line" ? plausible(mark.width) / 2 : 0;
}

/** Metres beyond which nothing belongs to a plot: what lies further off is a slip, and is not drawn. */
const farthest = 20_000;

/** Whether points can be drawn: there are some, all finite and none absurdly far off. */
export function drawable({ points }: { readonly points: readonly Point[] }): boolean {
  return points.length > 0 && points.every((point) => point.every((part) => Math.abs(part) <= farthest));
}

/** A radius or width that can be drawn; nought in place of any other. */
export function plausible(metres: number | undefined): number {
  return metres !== undefined && metres > 0 && metres <= farthest ? metres : 0;
}
