// What stands on the plot, in ink: a hatch or a line for each kind. Light lines are there already, heavy ones are to be built.

import type { Picture, PictureMark } from "../model/picture.ts";
import type { Point } from "../model/reading.ts";
import { element, joined, plain, type Markup } from "./markup.ts";
import { hatchPaint, ink } from "./svg-hatch.ts";
import { circlePath, pathOf } from "./svg-lines.ts";
import { mannerOf, type Manner } from "./svg-manners.ts";
import { drawable, type Sheet } from "./svg-paper.ts";
import {
  banded,
  crownMarkup,
  edges,
  hachures,
  rungs,
  signAt,
  signsAlong,
  stemMarkup,
  wheelMarks,
} from "./svg-signs.ts";

/** All marks, from the ground up, each with its name for who points at it or listens. */
export function marksMarkup(picture: Picture, sheet: Sheet): Markup {
  const ordered = picture.marks
    .map((mark, index) => ({ mark, index, manner: mannerOf(mark.kind) }))
    .sort((a, b) => a.manner.layer - b.manner.layer || a.index - b.index);
  const parts = treeParts(picture.marks);
  return joined(
    ordered.map(({ mark, manner }) => oneMark(mark, { manner, part: partOf(mark, parts), sheet })),
    "\n",
  );
}

interface Pen {
  readonly mark: PictureMark;
  readonly manner: Manner;
  readonly points: readonly Point[];
  readonly weight: number;
  readonly sheet: Sheet;
  readonly part: TreePart;
}

/** A tree may come as one mark, or as a crown and a stem of the same name: then each is drawn as what it is. */
type TreePart = "whole" | "crown" | "stem";

/** For each name, how many circles or points it has, and the widest. */
function treeParts(
  marks: readonly PictureMark[],
): ReadonlyMap<string, { readonly count: number; readonly widest: number }> {
  const parts = new Map<string, { readonly count: number; readonly widest: number }>();
  for (const { kind, name, form, radius } of marks) {
    if (form !== "circle" && form !== "point") continue;
    const before = parts.get(`${kind}/${name}`);
    parts.set(`${kind}/${name}`, {
      count: (before?.count ?? 0) + 1,
      widest: Math.max(before?.widest ?? 0, radius ?? 0),
    });
  }
  return parts;
}

function partOf(mark: PictureMark, parts: ReturnType<typeof treeParts>): TreePart {
  const known = parts.get(`${mark.kind}/${mark.name}`);
  if (!known || known.count < 2) return "whole";
  return (mark.radius ?? 0) < known.widest ? "stem" : "crown";
}

function crownParts(at: Point, radius: number, part: TreePart): readonly Markup[] {
  return part === "crown" ? [crownMarkup(at, radius)] : [crownMarkup(at, radius), ...stemMarkup(at, 0)];
}

/** Kinds that show how the ground lies: no things that stand on it. */
export const onGround: ReadonlySet<string> = new Set(["contour", "runoff"]);

const lighter = 0.6;

function oneMark(mark: PictureMark, { manner, part, sheet }: Pick<Pen, "manner" | "part" | "sheet">): Markup {
  const pen: Pen = {
    mark,
    manner,
    part,
    points: mark.points.map(sheet.at),
    weight: manner.weight * (mark.existing ? lighter : 1),
    sheet,
  };
  const title = element(
    "title",
    {},
    plain(
      onGround.has(mark.kind)
        ? mark.name
        : `${mark.kind} "${mark.name}"${mark.existing ? ", there already" : ", to be built"}`,
    ),
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
      return pen.points.flatMap((at) => signAt(at, pen.manner.sign));
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
    ? [element("path", { d, fill: hatchPaint(manner.hatch, sheet.id), "fill-rule": "evenodd", stroke: "none" })]
    : [];
  const ticks = manner.sign === "hachures" ? hachures([...points, ...points.slice(0, 1)]) : [];
  return [...ground, element("path", { d, "stroke-dasharray": manner.dash }), ...ticks];
}

function circleMarkup(pen: Pen): readonly Markup[] {
  const { mark, manner, points, sheet, part } = pen;
  const radius = Math.max(0.6, sheet.long(mark.radius ?? 0));
  return points.flatMap((at) => {
    if (manner.sign === "crown")
      return part === "stem" ? stemMarkup(at, sheet.long(mark.radius ?? 0)) : crownParts(at, radius, part);
    const fill = manner.hatch ? hatchPaint(manner.hatch, sheet.id) : "none";
    return [element("path", { d: circlePath(at, radius), fill, "stroke-dasharray": manner.dash })];
  });
}

/** Narrowest that a thing of a given thickness is drawn, millimetres. */
const thinnest = 0.9;

function lineMarkup(pen: Pen): readonly Markup[] {
  const { mark, manner, points, weight, sheet } = pen;
  const width = sheet.long(mark.width ?? 0);
  const d = pathOf(points);
  if (manner.sign === "wheels") return wheelMarks(points, width);
  if (manner.hatch && (width > 0 || manner.hatch === "wall" || manner.hatch === "hedge"))
    return banded(d, { paint: hatchPaint(manner.hatch, sheet.id), width: Math.max(thinnest, width), weight });
  if ((manner.sign === "edges" || manner.hatch || manner.sign === "rungs") && width > 0)
    return [edges(points, width, manner.dash), ...(manner.sign === "rungs" ? rungs(points, width) : [])];
  const line = element("path", { d, "stroke-dasharray": manner.dash });
  return [line, ...signsAlong(points, manner)];
}
