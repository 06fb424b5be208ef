// The ground in the drawing: lines of equal level, and the ways that water takes down it.

import type { Feature, Plan } from "../model/plan.ts";
import type { PictureMark } from "../model/picture.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { contourLevels, contoursAt } from "../terrain/contours.ts";
import { groundSurface, waterWays } from "./water-way.ts";

/** Steps between lines of equal level that are easily read, metres; the least that gives no more lines than a drawing bears. */
const steps = [0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5, 10, 20, 50] as const;
const mostLines = 16;
/** Lines nearer together than this on the ground, metres, are a blot. */
const leastApart = 2;

/** Marks of kind `contour` (its label is the level) and `runoff`. */
export function groundMarks(plan: Plan, standing: readonly Feature[], read: Read): readonly PictureMark[] {
  const surface = groundSurface(plan.levels, read);
  if (surface === null) return [];
  const used = new Set(Array.from(surface.net.corners));
  const levels = surface.levels.filter((_, number) => used.has(number));
  const most = Math.min(mostLines, spanOf([...used].map((number) => surface.net.points[number] as Point)) / leastApart);
  const step = steps.find((one) => contourLevels(levels, one).length <= most);
  if (step === undefined) return [];
  const decimals = Number.isInteger(Math.round(1000 * step) / 100) ? 1 : 2;
  const contours = contourLevels(levels, step).flatMap((level) =>
    contoursAt(surface, level).map(({ points, ends }): PictureMark => {
      const label = level.toFixed(decimals);
      const whole = ends === "closed" ? [...points, ...points.slice(0, 1)] : points;
      return { kind: "contour", name: `level ${label}`, label, form: "line", points: whole, existing: true };
    }),
  );
  const ways = waterWays(plan, standing, read).flatMap(({ from, path }): readonly PictureMark[] =>
    path === null || path.points.length < 2
      ? []
      : [
          {
            kind: "runoff",
            name: `water from ${from.name}`,
            label: "",
            form: "line",
            points: path.points,
            existing: true,
          },
        ],
  );
  return [...contours, ...ways];
}

/** The longer side of the box round points, metres. */
function spanOf(points: readonly Point[]): number {
  const side = (axis: 0 | 1) => {
    const all = points.map((point) => point[axis]);
    return Math.max(...all) - Math.min(...all);
  };
  return Math.max(side(0), side(1));
}
