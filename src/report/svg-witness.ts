// What shows a finding on the drawing: the place that was found, what is wanted there, the thing that stands in the way.

import type { PictureMark } from "../model/picture.ts";
import type { Point, Witness } from "../model/reading.ts";
import { amount, scaleOf } from "./amounts.ts";
import { clean } from "./clean.ts";
import type { Numbered } from "./grouping.ts";
import { element, joined, plain, type Markup } from "./markup.ts";
import { ink } from "./svg-hatch.ts";
import { centreOf, circlePath, forEachSegment, middleOf, pathOf } from "./svg-lines.ts";
import { drawable, type Sheet } from "./svg-paper.ts";

const weights: Readonly<Record<Witness["part"], { readonly width: number; readonly dash?: string }>> = {
  found: { width: 0.5 },
  wanted: { width: 0.45, dash: "1.6 0.9" },
  thing: { width: 0.45, dash: "0.5 0.7" },
};

/** The number of a finding on the drawing, for the first of its lines that shows what was found: `narrowest 3.20 m`. */
export function figureWords({ finding }: Numbered, witness: Witness): string {
  const label = witness.label ?? "";
  const first = finding.witness.find(({ part, form }) => part === "found" && form === "line");
  const scale = scaleOf(finding);
  if (witness !== first || !finding.found || !scale || !(finding.found.value > 0)) return label;
  return clean(`${label} ${amount(finding.found.value, scale, finding.found.doubt)}`);
}

/** All witnesses of one finding, under its sentence. */
export function witnessMarkup({ finding }: Numbered, sheet: Sheet): Markup {
  const parts = finding.witness.filter(drawable).map((one) => oneWitness(one, sheet));
  if (parts.length === 0) return joined([]);
  return element("g", { fill: "none", stroke: ink }, element("title", {}, plain(finding.sentence)), ...parts);
}

function oneWitness(witness: Witness, sheet: Sheet): Markup {
  const points = witness.points.map(sheet.at);
  const { width, dash } = weights[witness.part];
  const pen = { "stroke-width": width, "stroke-dasharray": dash };
  switch (witness.form) {
    case "line":
      return joined([
        element("path", { d: pathOf(points), ...pen }),
        ...(witness.part === "found" ? ends(points) : []),
      ]);
    case "outline":
      return element("path", { d: pathOf(points, "closed"), ...pen });
    case "circle":
      return joined(
        points.map((at) =>
          element("path", { d: circlePath(at, Math.max(0.8, sheet.long(witness.radius ?? 0))), ...pen }),
        ),
      );
    case "point":
      return joined(points.map((at) => element("path", { d: target(at), "stroke-width": 0.4 })));
  }
  return joined([]);
}

/** Bars across the two ends of a line, as on a dimension. */
function ends(points: readonly Point[]): readonly Markup[] {
  const bars: string[] = [];
  const bar = ([x, y]: Point, along: Point) => {
    const [dx, dy] = [along[0] * 1.3, along[1] * 1.3];
    bars.push(
      pathOf([
        [x + dy, y - dx],
        [x - dy, y + dx],
      ]),
    );
  };
  const directions: Point[] = [];
  forEachSegment(points, (from, to, size) => directions.push([(to[0] - from[0]) / size, (to[1] - from[1]) / size]));
  const [first, last] = [points[0], points[points.length - 1]];
  const [start, end] = [directions[0], directions[directions.length - 1]];
  if (first && start) bar(first, start);
  if (last && end) bar(last, end);
  return bars.length === 0 ? [] : [element("path", { d: bars.join(""), "stroke-width": 0.45 })];
}

function target([x, y]: Point): string {
  return `${circlePath([x, y], 1.5)}${pathOf([
    [x - 2.3, y],
    [x + 2.3, y],
  ])}${pathOf([
    [x, y - 2.3],
    [x, y + 2.3],
  ])}`;
}

/** The point that a finding's stone points at: on what was found, else on anything that shows it, else on the thing itself. */
export function anchorOf({ finding }: Numbered, sheet: Sheet, marks: readonly PictureMark[]): Point | null {
  const shown = finding.witness.filter(drawable);
  const best = shown.find(({ part }) => part === "found") ?? shown[0];
  const things = finding.features.flatMap(({ kind, name }) => marks.filter((mark) => isOf(mark, kind, name)));
  const [thing] = things;
  if (!best) return thing ? anchorOn(thing, sheet) : null;
  return anchorOn(best, sheet);
}

/** A part of a thing (a run of a drain) goes by the thing's name and its own. */
function isOf(mark: PictureMark, kind: string, name: string): boolean {
  if (mark.name === "") return false;
  return (mark.kind === kind && mark.name === name) || (kind.startsWith(mark.kind) && name.startsWith(`${mark.name},`));
}

function anchorOn(best: Pick<PictureMark, "form" | "points">, sheet: Sheet): Point | null {
  const points = best.points.map(sheet.at);
  if (best.form === "line") return middleOf(points)?.at ?? null;
  return best.form === "outline" ? centreOf(points) : (points[0] ?? null);
}
