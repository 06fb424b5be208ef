// What can stand in the way of a net of triangles.

import type { Point } from "../geometry/point.ts";
import type { Edge } from "./forced-edges.ts";

/** What stood in the way. Points and breaklines are counted from 0. */
export type NetTrouble =
  | { readonly is: "not-a-number"; readonly point: number }
  | { readonly is: "same-place"; readonly points: readonly [number, number]; readonly at: Point }
  | { readonly is: "too-few-points"; readonly points: number }
  | { readonly is: "on-one-line" }
  | { readonly is: "no-such-point"; readonly breakline: number; readonly point: number }
  | { readonly is: "breaklines-cross"; readonly breaklines: readonly [number, number]; readonly at: Point }
  | { readonly is: "not-forced"; readonly edge: Edge };
