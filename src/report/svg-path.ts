// A driven path on a drawing: the ground that the body covers as a tint, its tyres as dots, the body where it changes
// direction with the number of the move, and the tightest place in bold.

import type { PictureMark } from "../model/picture.ts";
import type { Point, Witness } from "../model/reading.ts";
import { element, joined, plain, type Markup } from "./markup.ts";
import { ink, paper } from "./svg-hatch.ts";
import { pathOf } from "./svg-lines.ts";
import type { Sheet } from "./svg-paper.ts";

/** Tint of covered ground: grey enough to be seen in black and white, pale enough to write on. */
const tint = "#cfc6ad";
const ring = 2.1;

/** Whether a witness shows a driven path. */
export function showsPath(witness: readonly Witness[]): boolean {
  return witness.some(({ label }) => label === "move 1");
}

/** The ground covered by a path, drawn below everything that stands there. */
export function coveredMarkup(witness: readonly Witness[], sheet: Sheet): Markup {
  const covered = witness.filter(({ part, form }) => part === "wanted" && form === "outline");
  return joined(
    covered.map(({ points }) =>
      element("path", {
        d: pathOf(points.map(sheet.at), "closed"),
        fill: tint,
        "fill-opacity": 0.6,
        stroke: ink,
        "stroke-width": 0.2,
        "stroke-dasharray": "1.2 0.8",
      }),
    ),
  );
}

const trackDash = { forward: "0 0.9", reverse: "1.5 0.9" } as const;

/** Bodies, tyres and the tightest place of a path; `tightest` is written there. */
export function pathMarkup(witness: readonly Witness[], sheet: Sheet, tightest: string): Markup {
  const tracks = witness.filter(({ part, form }) => part === "thing" && form === "line");
  const bodies = witness.filter(({ part, form }) => part === "thing" && form === "outline");
  const [tightBody, ...stops] = bodies;
  const tight = witness.find(({ label }) => label === "tightest");
  return joined([
    ...tracks.map(({ points, gear = "forward" }) =>
      element("path", {
        d: pathOf(points.map(sheet.at)),
        fill: "none",
        stroke: ink,
        "stroke-width": 0.35,
        "stroke-linecap": "round",
        "stroke-dasharray": trackDash[gear],
      }),
    ),
    ...stops.map(({ points }) => bodyMarkup(points, sheet, 0.3)),
    ...(tightBody && tight ? [bodyMarkup(tightBody.points, sheet, 0.55)] : []),
    ...stops.flatMap(({ points, label }, index) =>
      moveMarkup(points, label, { sheet, last: index === stops.length - 1 }),
    ),
    ...(tight ? [tightMarkup(tight.points, sheet, tightest)] : []),
  ]);
}

/** The outline of a body (back right, front right, front left, back left) with its windscreen, so that one sees its nose. */
function bodyMarkup(points: readonly Point[], sheet: Sheet, weight: number): Markup {
  const [backRight, frontRight, frontLeft, backLeft] = points.map(sheet.at);
  if (!backRight || !frontRight || !frontLeft || !backLeft) return joined([]);
  const part = (from: Point, to: Point, share: number): Point => [
    from[0] + share * (to[0] - from[0]),
    from[1] + share * (to[1] - from[1]),
  ];
  const screen = [part(backRight, frontRight, 0.8), part(backLeft, frontLeft, 0.8)];
  return element("path", {
    d: `${pathOf([backRight, frontRight, frontLeft, backLeft], "closed")}${pathOf(screen)}`,
    fill: paper,
    "fill-opacity": 0.35,
    stroke: ink,
    "stroke-width": weight,
  });
}

function moveMarkup(
  points: readonly Point[],
  label: string | undefined,
  { sheet, last }: { readonly sheet: Sheet; readonly last: boolean },
): readonly Markup[] {
  const number = label?.replace("move ", "");
  if (number === undefined && !last) return [];
  // In and out often lie upon each other: the way out is told at the tail, the first move at the nose.
  const [x, y] = alongBody(points.map(sheet.at), number === undefined ? 0.2 : 0.6);
  return [
    element("circle", { cx: x, cy: y, r: ring, fill: paper, stroke: ink, "stroke-width": 0.35 }),
    element(
      "text",
      { x, y: y + 0.95, "font-size": 2.6, "text-anchor": "middle", "font-weight": "bold", fill: ink },
      plain(number ?? "end"),
    ),
  ];
}

/** A ring round the tightest place, with what is left there written beside it. */
function tightMarkup(points: readonly Point[], sheet: Sheet, words: string): Markup {
  const [x, y] = sheet.at(points.at(-1) ?? [0, 0]);
  const left = x > sheet.sketch.x + sheet.sketch.width / 2;
  return joined([
    element("circle", { cx: x, cy: y, r: 2.6, fill: "none", stroke: ink, "stroke-width": 0.7 }),
    element(
      "text",
      {
        x: x + (left ? -4 : 4),
        y: y + 1,
        "font-size": 3,
        "font-weight": "bold",
        "text-anchor": left ? "end" : undefined,
        fill: ink,
        stroke: paper,
        "stroke-width": 1,
        "stroke-linejoin": "round",
        "paint-order": "stroke",
      },
      plain(words),
    ),
  ]);
}

/** A point on the middle line of a body, from its tail (0) to its nose (1). */
function alongBody(corners: readonly Point[], share: number): Point {
  const [backRight = [0, 0], frontRight = [0, 0], frontLeft = [0, 0], backLeft = [0, 0]] = corners;
  const middle = (axis: 0 | 1) =>
    (1 - share) * ((backRight[axis] + backLeft[axis]) / 2) + share * ((frontRight[axis] + frontLeft[axis]) / 2);
  return [middle(0), middle(1)];
}

/** Whether any of a mark lies on the panel. */
export function touches(mark: PictureMark, sheet: Sheet): boolean {
  const { sketch } = sheet;
  const reach = sheet.long(mark.radius ?? mark.width ?? 0);
  const points = mark.points.map(sheet.at);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return (
    Math.max(...xs) + reach > sketch.x &&
    Math.min(...xs) - reach < sketch.x + sketch.width &&
    Math.max(...ys) + reach > sketch.y &&
    Math.min(...ys) - reach < sketch.y + sketch.height
  );
}
