// The picture of the plan at a stage: plain marks for the drawing, at the plan's own values.

import { lineLength } from "../geometry/line.ts";
import type { Feature, Plan, Shape } from "../model/plan.ts";
import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Picture, PictureMark } from "../model/picture.ts";
import type { Read, Spot } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { groundMarks } from "./ground-marks.ts";
import { piecesBetweenGaps } from "./in-the-way.ts";
import { liveSpot } from "./live-figure.ts";
import { ringAt } from "./live-ring.ts";
import { roundedLine } from "./rounded-line.ts";
import { widerRings } from "./wider-stretches.ts";

/** A stem is drawn with at least this radius, metres, so that it can be seen. */
const leastStem = 0.05;

/** Makes the picture of a stage. `trueNorth` is the earth tie's, radians clockwise; null without one. */
export function pictureOf(plan: Plan, stage: number, read: Read, trueNorth: number | null): Picture {
  const standing = plan.features.filter(
    (feature) => feature.from <= stage && (feature.until === null || stage < feature.until),
  );
  return {
    title: plan.title,
    stage: plan.stages[stage] ?? "",
    marks: [...standing.flatMap((feature) => marksOf(feature, read)), ...groundMarks(plan, standing, read)],
    trueNorth,
  };
}

function marksOf(feature: Feature, read: Read): readonly PictureMark[] {
  const { shape } = feature;
  if (!shape) return [];
  const base = { kind: feature.kind, name: feature.name, label: feature.name, existing: feature.existing };
  const at = (spot: Spot): Point => [read(spot.east), read(spot.north)];
  if (shape.form === "point") return pointMarks(feature, shape, read);
  if (shape.form === "circle")
    return [{ ...base, form: "circle", points: [at(shape.centre)], radius: read(shape.across) / 2 }];
  if (shape.form === "line") {
    const width = shape.width ? { width: read(shape.width) } : {};
    const drawn = roundedLine(feature, shape.line.map(liveSpot), shape.width).map((point) => point(read));
    const isRounded = drawn.length > shape.line.length;
    const pieces = isRounded
      ? [drawn]
      : piecesBetweenGaps(feature, shape.line, read).map((piece) => piece.map((point) => point(read)));
    const longest = pieces.reduce((best, piece, i) => (lengthOf(piece) > lengthOf(pieces[best]) ? i : best), 0);
    const wider = widerRings(feature, read).map((ring): PictureMark => ({
      ...base,
      label: "",
      form: "outline",
      points: ringAt(ring, read),
    }));
    const along = pieces.map((points, i): PictureMark => ({
      ...base,
      label: i === longest ? base.label : "",
      form: "line",
      points,
      ...width,
    }));
    return [...wider, ...along];
  }
  return [
    {
      ...base,
      form: "outline",
      points: shape.outline.map(at),
      ...(shape.holes.length > 0 ? { holes: shape.holes.map((hole) => hole.map(at)) } : {}),
    },
  ];
}

const lengthOf = (points: readonly Point[] = []): number => lineLength(points);

/** A tree is its crown with the stem in it, an obstacle as wide as it is across; any other point is a point. */
function pointMarks(feature: Feature, shape: Extract<Shape, { form: "point" }>, read: Read): readonly PictureMark[] {
  const point: Point = [read(shape.at.east), read(shape.at.north)];
  const base = { kind: feature.kind, name: feature.name, label: feature.name, existing: feature.existing };
  const crown = propertyOf(feature, "crown.radius");
  const stem = propertyOf(feature, feature.kind === "obstacle" ? "across" : "stem");
  const marks: PictureMark[] = [];
  if (isQuantity(crown)) marks.push({ ...base, form: "circle", points: [point], radius: read(crown) });
  marks.push(
    isQuantity(stem)
      ? {
          ...base,
          label: isQuantity(crown) ? "" : feature.name,
          form: "circle",
          points: [point],
          radius: Math.max(leastStem, read(stem) / 2),
        }
      : { ...base, label: isQuantity(crown) ? "" : feature.name, form: "point", points: [point] },
  );
  return marks;
}
