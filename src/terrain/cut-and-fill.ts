// Earth to take away and earth to bring, between the ground and a plane.

import { boxOf } from "../geometry/box.ts";
import { intersection } from "../geometry/overlay.ts";
import { between, type Point } from "../geometry/point.ts";
import { polygonArea, polygonCentroid, polygonOf, type Polygon } from "../geometry/polygon.ts";
import { ringArea } from "../geometry/ring.ts";
import { cornersOf, levelOnPlane, planeThrough, type Plane, type Surface } from "./surface.ts";

/** Volumes in the ground in cubic metres, both 0 or above; plan areas in square metres. */
export interface CutAndFill {
  readonly cut: number;
  readonly fill: number;
  readonly cutArea: number;
  readonly fillArea: number;
  /** Part of the wanted outline that lies off the net, where the ground is not known. */
  readonly notKnown: number;
}

/**
 * Cut and fill between the ground and `formation` over one triangle of plan area A whose corners stand h1, h2, h3 above
 * it (below 0: under it). Split along the line where both meet; the one corner i of another sign than j and k bounds a
 * pyramid A h_i^3 / (3 (h_i - h_j)(h_i - h_k)); the net is A (h1 + h2 + h3) / 3 (COMPUTED, integral of a plane).
 */
export function triangleCutAndFill(
  area: number,
  heights: readonly [number, number, number],
): { readonly cut: number; readonly fill: number } {
  const net = (area * (heights[0] + heights[1] + heights[2])) / 3;
  const above = heights.filter((h) => h > 0).length;
  const below = heights.filter((h) => h < 0).length;
  if (below === 0) return { cut: net, fill: 0 };
  if (above === 0) return { cut: 0, fill: -net };
  // The corner that stands alone on its side; with one corner at 0 either of the others does.
  const alone = heights.findIndex((h) => (above === 1 ? h > 0 : h < 0));
  const [hi, hj, hk] = [heights[alone], heights[(alone + 1) % 3], heights[(alone + 2) % 3]] as [number, number, number];
  const pyramid = (area * hi ** 3) / (3 * (hi - hj) * (hi - hk));
  return hi > 0 ? { cut: pyramid, fill: pyramid - net } : { cut: net - pyramid, fill: -pyramid };
}

/** Cut and fill of the whole net against `formation`. Exact for ground of plane triangles. */
export function cutAndFill(surface: Surface, formation: Plane): CutAndFill {
  let [cut, fill, cutArea, fillArea] = [0, 0, 0, 0];
  for (let t = 0; t < surface.net.corners.length / 3; t++) {
    const { points, heights } = aboveFormation(surface, t, formation);
    const part = triangleCutAndFill(ringArea(points), heights);
    cut += part.cut;
    fill += part.fill;
    cutArea += ringArea(partAbove(points, heights, 1));
    fillArea += ringArea(partAbove(points, heights, -1));
  }
  return { cut, fill, cutArea, fillArea, notKnown: 0 };
}

/**
 * Cut and fill within an outline: every triangle split where ground and formation meet, then clipped; a part of area A
 * counts A times its height at the centroid, which is exact on a plane. Null where the outline has bad numbers.
 */
export function cutAndFillWithin(surface: Surface, formation: Plane, outline: Polygon): CutAndFill | null {
  const sums = { cut: 0, fill: 0, cutArea: 0, fillArea: 0 };
  let known = 0;
  const box = boxOf(outline.outline);
  for (const t of box === null ? [] : surface.net.index.meeting(box)) {
    const { points, heights } = aboveFormation(surface, t, formation);
    const clipped = intersection([polygonOf(points)], [outline]);
    if (clipped === null) return null;
    known += clipped.reduce((sum, part) => sum + polygonArea(part), 0);
    if (clipped.length === 0) continue;
    const height = planeThrough(points, heights);
    if (height === null) continue;
    for (const sign of [1, -1] as const) {
      for (const part of intersection(clipped, [polygonOf(partAbove(points, heights, sign))]) ?? []) {
        const area = polygonArea(part);
        const volume = area * Math.abs(levelOnPlane(height, polygonCentroid(part) as Point));
        sums[sign === 1 ? "cut" : "fill"] += volume;
        sums[sign === 1 ? "cutArea" : "fillArea"] += area;
      }
    }
  }
  return { ...sums, notKnown: Math.max(0, polygonArea(outline) - known) };
}

function aboveFormation(
  surface: Surface,
  t: number,
  formation: Plane,
): { readonly points: readonly [Point, Point, Point]; readonly heights: readonly [number, number, number] } {
  const { points, levels } = cornersOf(surface, t);
  const height = (k: 0 | 1 | 2): number => levels[k] - levelOnPlane(formation, points[k]);
  return { points, heights: [height(0), height(1), height(2)] };
}

/** The part of a triangle where the height, taken `sign` times, is above 0. */
function partAbove(points: readonly Point[], heights: readonly number[], sign: 1 | -1): readonly Point[] {
  const part: Point[] = [];
  for (const [i, point] of points.entries()) {
    const next = (i + 1) % points.length;
    const [h, after] = [sign * (heights[i] as number), sign * (heights[next] as number)];
    if (h >= 0) part.push(point);
    if (h > 0 === after > 0 || h === 0 || after === 0) continue;
    part.push(between(point, points[next] as Point, h / (h - after)));
  }
  return part.length < 3 || heights.every((h) => h * sign <= 0) ? [] : part;
}
