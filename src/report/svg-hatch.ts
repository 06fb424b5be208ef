// Hatches: what a surface is of, in ink only, so that a drawing reads on any printer.

import { element, joined, type Markup } from "./markup.ts";

export const ink = "#1c1a17";
export const paper = "#faf6ea";

export type Hatch = "building" | "wall" | "stipple" | "water" | "dig" | "heap" | "hedge" | "field";

/** Paint that refers to a hatch of the drawing with this id. */
export function hatchPaint(hatch: Hatch, id: string): string {
  return `url(#${id}-${hatch})`;
}

/** The definitions of all hatches, in a fixed order. */
export function hatchDefinitions(id: string): Markup {
  const pattern = patternOf(id);
  return joined([
    pattern("building", [1.5, 1.5], [stroke("M-0.4,0.4L0.4,-0.4M0,1.5L1.5,0M1.1,1.9L1.9,1.1", 0.13)]),
    pattern("wall", [2.6, 1.6], [stroke("M0,0.8H2.6M0,0V0.8M1.5,0V0.8M0.8,0.8V1.6M2.1,0.8V1.6M0,0H2.6", 0.13)]),
    pattern("stipple", [2.6, 2.6], [dot(0.5, 0.6), dot(1.9, 1.1), dot(1, 2), dot(2.3, 2.3)]),
    pattern("water", [6, 2.4], [stroke("M0.4,0.8q0.6,-0.5 1.2,0t1.2,0M3.4,2q0.6,-0.5 1.2,0t1.2,0", 0.16)]),
    pattern(
      "dig",
      [1.8, 1.8],
      [stroke("M-0.4,1.4L0.4,2.2M0,0L1.8,1.8M1.4,-0.4L2.2,0.4", 0.13), stroke("M0,1.8L1.8,0", 0.08)],
    ),
    pattern(
      "heap",
      [3, 3],
      [stroke("M0.5,1.2l0.4,-0.5l0.4,0.5zM2,2.6l0.4,-0.5l0.4,0.5z", 0.13), dot(2.3, 0.7), dot(0.8, 2.4)],
    ),
    pattern("hedge", [2.2, 2.2], [stroke("M0.2,1a0.5,0.5 0 0 1 1,0M1.2,2a0.5,0.5 0 0 1 1,0", 0.15)]),
    pattern("field", [3.2, 3.2], [stroke("M0,1.6H1.8", 0.12), stroke("M1.6,3.1H3.2", 0.12)]),
  ]);
}

function patternOf(id: string) {
  return (hatch: Hatch, [width, height]: readonly [number, number], children: readonly Markup[]): Markup =>
    element("pattern", { id: `${id}-${hatch}`, patternUnits: "userSpaceOnUse", width, height }, ...children);
}

function stroke(d: string, width: number): Markup {
  return element("path", { d, fill: "none", stroke: ink, "stroke-width": width });
}

function dot(cx: number, cy: number): Markup {
  return element("circle", { cx, cy, r: 0.17, fill: ink });
}
