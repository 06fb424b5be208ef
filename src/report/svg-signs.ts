// Signs that are set along a line or at a point: posts, arrows, hachures, tyre marks, crowns.

import type { Point } from "../model/reading.ts";
import { element, figure, type Markup } from "./markup.ts";
import { ink, paper } from "./svg-hatch.ts";
import { beside, circlePath, crownPath, pathOf, stations } from "./svg-lines.ts";
import type { Manner } from "./svg-manners.ts";

/** The sign of a line, along it. */
export function signsAlong(points: readonly Point[], manner: Manner): readonly Markup[] {
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

/** The sign of a thing that is drawn as a point. */
export function signAt(at: Point, sign: Manner["sign"]): readonly Markup[] {
  const [x, y] = at;
  if (sign === "crown") return stemMarkup(at, 0);
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

/** A band of the true width: its two edges in ink, paper between them, and the hatch on it. */
export function banded(
  d: string,
  band: { readonly paint: string; readonly width: number; readonly weight: number },
): readonly Markup[] {
  const butt = { d, "stroke-linecap": "butt", "stroke-linejoin": "miter" };
  return [
    element("path", { ...butt, "stroke-width": band.width + 2 * band.weight }),
    element("path", { ...butt, stroke: paper, "stroke-width": band.width }),
    element("path", { ...butt, stroke: band.paint, "stroke-width": band.width }),
  ];
}

/** Two lines at half the width to each side. */
export function edges(points: readonly Point[], width: number, dash: string | undefined): Markup {
  return element("path", {
    d: pathOf(beside(points, width / 2)) + pathOf(beside(points, -width / 2)),
    "stroke-dasharray": dash,
  });
}

/** Tyre marks: a dotted pair. */
export function wheelMarks(points: readonly Point[], width: number): readonly Markup[] {
  return [
    element("path", {
      d: pathOf(beside(points, width / 2)) + pathOf(beside(points, -width / 2)),
      "stroke-dasharray": "0.1 0.9",
      "stroke-linecap": "round",
      "stroke-width": 0.4,
    }),
  ];
}

/** Steps or battens across a way of the given width. */
export function rungs(points: readonly Point[], width: number): readonly Markup[] {
  return [element("path", { d: across(points, { step: 2, left: width / 2, right: width / 2 }), "stroke-width": 0.2 })];
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
export function hachures(points: readonly Point[]): readonly Markup[] {
  return [
    element("path", {
      d: across(points, { step: 2.4, left: 1, right: 1 }) + across(points, { step: 1.2, left: 0.45, right: 0.45 }),
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

/** Width of a scallop of a crown, and least radius at which it has any, millimetres. */
const lobe = 3.4;
const leastCrown = 1.2;

/** The scalloped ring of a crown. */
export function crownMarkup(at: Point, radius: number): Markup {
  return element("path", { d: radius > leastCrown ? crownPath(at, radius, lobe) : circlePath(at, radius) });
}

/** A stem at its true thickness, but never too small to be seen. */
export function stemMarkup([cx, cy]: Point, radius: number): readonly Markup[] {
  const shown = Math.max(0.7, radius);
  return [
    element("circle", { cx, cy, r: shown, fill: ink, stroke: "none" }),
    element("circle", { cx, cy, r: shown + 0.5, "stroke-width": 0.18 }),
  ];
}
