// The sheet on which a ground for turning is drawn: A4 across, in millimetres, at a scale of a scale rule.

import type { Point } from "../model/reading.ts";
import { element, figure, joined, paperLines, plain, type Markup } from "./markup.ts";
import { ink, paper } from "./svg-hatch.ts";
import { pathOf } from "./svg-lines.ts";

/** Paper of a point of the ground, and of a length (m). */
export interface RoomFrame {
  readonly scale: number;
  readonly at: (point: Point) => Point;
  readonly long: (metres: number) => number;
}

export const page = { width: 297, height: 210 } as const;
const edge = 9;
const sketch = { x: edge, y: 24, width: page.width - 2 * edge, height: 132 } as const;
/** Room kept free round the ground for dimensions and letters, mm. */
const around = 14;
const scales = [50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000] as const;
const small = 2.8;

/** Chooses the scale; a ground that is taller than broad is laid on its side, so that the track comes in from the left. */
export function roomFrame(points: readonly Point[]): RoomFrame {
  const box = boundsOf(points);
  const lie = box.high - box.low > (box.right - box.left) * (sketch.height / sketch.width);
  const turned = ([x, y]: Point): Point => (lie ? [y, -x] : [x, y]);
  const laid = boundsOf(points.map(turned));
  const fits = (scale: number) =>
    ((laid.right - laid.left) * 1000) / scale <= sketch.width - 2 * around &&
    ((laid.high - laid.low) * 1000) / scale <= sketch.height - 2 * around;
  const scale = scales.find(fits) ?? scales[scales.length - 1] ?? 1;
  const perMetre = 1000 / scale;
  const middle: Point = [(laid.left + laid.right) / 2, (laid.low + laid.high) / 2];
  return {
    scale,
    long: (metres) => metres * perMetre,
    at: (point) => {
      const [x, y] = turned(point);
      return [
        sketch.x + sketch.width / 2 + (x - middle[0]) * perMetre,
        sketch.y + sketch.height / 2 - (y - middle[1]) * perMetre,
      ];
    },
  };
}

function boundsOf(points: readonly Point[]) {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

/** Words on the sheet; `halo` keeps lines under them from crossing them out. */
export function lettering(
  [x, y]: Point,
  text: string,
  how: { readonly size?: number; readonly weight?: "bold"; readonly anchor?: "middle" | "end"; readonly turn?: number },
): Markup {
  return element(
    "text",
    {
      x,
      y,
      "font-size": how.size ?? small,
      "font-weight": how.weight,
      "text-anchor": how.anchor,
      transform: how.turn === undefined ? undefined : `rotate(${figure(how.turn)} ${figure(x)} ${figure(y)})`,
      fill: ink,
      stroke: paper,
      "stroke-width": 1,
      "stroke-linejoin": "round",
      "paint-order": "stroke",
    },
    plain(text),
  );
}

/** A line in ink. */
export function inked(points: readonly Point[], weight: number, more: Readonly<Record<string, string>> = {}): Markup {
  return element("path", { d: pathOf(points), fill: "none", stroke: ink, "stroke-width": weight, ...more });
}

/** Title and wish above the sketch; below it scale bar, key, and paragraphs of words. */
export function frameMarkup(
  words: { readonly title: string; readonly what: string; readonly foot: readonly string[] },
  frame: RoomFrame,
): Markup {
  const width = page.width - 2 * edge;
  const what = paperLines(words.what, { width, size: 3.2, most: 2 });
  return joined(
    [
      element("rect", { x: 0, y: 0, width: page.width, height: page.height, fill: paper }),
      lettering([edge, 12], words.title, { size: 5.4, weight: "bold" }),
      ...what.map((line, i) => lettering([edge, 17.2 + i * 4], line, { size: 3.2 })),
      barMarkup([edge, 163], frame),
      keyMarkup([edge + 150, 161.5]),
      ...footMarkup(words.foot, width),
    ],
    "\n",
  );
}

const barParts = 4;

function barMarkup([x, y]: Point, frame: RoomFrame): Markup {
  const part = [0.5, 1, 2, 5, 10, 20].find((metres) => frame.long(metres) >= 9) ?? 50;
  const boxes = Array.from({ length: barParts }, (_, i) =>
    element("rect", {
      x: x + i * frame.long(part),
      y,
      width: frame.long(part),
      height: 1.5,
      fill: i % 2 === 0 ? ink : paper,
      stroke: ink,
      "stroke-width": 0.2,
    }),
  );
  const marks = Array.from({ length: barParts + 1 }, (_, i) =>
    lettering(
      [x + i * frame.long(part), y - 1],
      `${figure(part * i)}${i === barParts ? " m" : ""}`,
      i > 0 ? { anchor: "middle" } : {},
    ),
  );
  const end = x + barParts * frame.long(part) + 9;
  const scale = lettering([end, y + 1.5], `1 : ${frame.scale} on A4. Check the bar with a rule.`, {});
  return joined([...boxes, ...marks, scale]);
}

/** How lines of the sketch are to be read. */
export const lines = {
  edge: { weight: 0.7 },
  body: { weight: 0.25 },
  covered: { weight: 0.18, "stroke-dasharray": "0.4 0.8" },
  forward: { weight: 0.35, "stroke-dasharray": "0.1 1.1", "stroke-linecap": "round" },
  reverse: { weight: 0.35, "stroke-dasharray": "1.8 1" },
} as const;

function keyMarkup([x, y]: Point): Markup {
  const rows = [
    ["edge", "edge of the ground"],
    ["body", "the body where it stops"],
    ["covered", "ground that the body covers"],
    ["forward", "rear wheels, forwards"],
    ["reverse", "rear wheels, back"],
  ] as const;
  return joined(
    rows.map(([kind, words], i) => {
      const { weight, ...more } = lines[kind];
      const left = x + (i % 2) * 62;
      const top = y + Math.floor(i / 2) * 4;
      return joined([
        inked(
          [
            [left, top],
            [left + 9, top],
          ],
          weight,
          more,
        ),
        lettering([left + 11, top + 1], words, {}),
      ]);
    }),
  );
}

function footMarkup(foot: readonly string[], width: number): readonly Markup[] {
  const shown = foot.flatMap((text) => paperLines(text, { width, size: small, most: 4 }));
  return shown.slice(0, 10).map((line, i) => lettering([edge, 174.5 + i * 3.3], line, {}));
}
