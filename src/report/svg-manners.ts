// How each kind of thing is drawn: its hatch, its line, its sign.

import type { Hatch } from "./svg-hatch.ts";

/** How a kind is drawn. */
export interface Manner {
  /** Order from the ground up. */
  readonly layer: number;
  readonly hatch?: Hatch;
  readonly dash?: string;
  /** Something set along the line or at the point. */
  readonly sign?:
    | "posts"
    | "flow"
    | "hachures"
    | "edges"
    | "wheels"
    | "cross"
    | "square"
    | "crown"
    | "ring"
    | "peg"
    | "gate"
    | "rungs";
  /** Weight of the line in millimetres, before it is made lighter for what is there already. */
  readonly weight: number;
}

const manners: Readonly<Record<string, Manner>> = {
  contour: { layer: 0, weight: 0.18 },
  runoff: { layer: 2, sign: "flow", dash: "0.5 0.9", weight: 0.3 },
  catchment: { layer: 0, dash: "0.2 1.2", weight: 0.25 },
  boundary: { layer: 9, dash: "6 1.2 0.5 1.2 0.5 1.2", weight: 0.35 },
  surface: { layer: 1, hatch: "stipple", weight: 0.3 },
  road: { layer: 1, sign: "edges", weight: 0.3 },
  approach: { layer: 1, sign: "edges", weight: 0.3 },
  strip: { layer: 1, dash: "1.4 1", weight: 0.25 },
  animal: { layer: 1, dash: "0.3 1.6", weight: 0.3 },
  drainage_field: { layer: 2, hatch: "field", dash: "1.6 0.8", weight: 0.3 },
  water: { layer: 2, hatch: "water", sign: "ring", weight: 0.4 },
  spoil_place: { layer: 2, hatch: "heap", dash: "1.2 0.8", weight: 0.25 },
  heap: { layer: 3, hatch: "heap", weight: 0.3 },
  excavation: { layer: 3, hatch: "dig", dash: "2 0.7", weight: 0.35 },
  building: { layer: 4, hatch: "building", weight: 0.6 },
  ramp: { layer: 5, sign: "rungs", weight: 0.3 },
  step: { layer: 5, sign: "rungs", weight: 0.3 },
  crossing: { layer: 5, sign: "edges", weight: 0.4 },
  bank: { layer: 5, sign: "hachures", weight: 0.3 },
  wall: { layer: 6, hatch: "wall", weight: 0.45 },
  hedge: { layer: 6, hatch: "hedge", weight: 0.3 },
  fence: { layer: 7, sign: "posts", weight: 0.3 },
  gate: { layer: 7, sign: "gate", weight: 0.3 },
  drain: { layer: 8, sign: "flow", dash: "2.6 0.9", weight: 0.4 },
  service: { layer: 8, sign: "cross", dash: "5 1 1 1", weight: 0.3 },
  route: { layer: 8, dash: "0.8 0.8", weight: 0.3 },
  manoeuvre: { layer: 8, sign: "wheels", weight: 0.25 },
  tree: { layer: 10, sign: "crown", weight: 0.3 },
  chamber: { layer: 11, sign: "square", weight: 0.35 },
  septic_tank: { layer: 11, sign: "square", weight: 0.45 },
  tank: { layer: 11, sign: "square", weight: 0.45 },
  soakaway: { layer: 11, hatch: "field", sign: "square", weight: 0.35 },
  outfall: { layer: 11, sign: "ring", weight: 0.35 },
  obstacle: { layer: 11, sign: "ring", weight: 0.35 },
  threshold: { layer: 11, sign: "square", weight: 0.3 },
  peg: { layer: 12, sign: "peg", weight: 0.25 },
};
const unknown: Manner = { layer: 5, weight: 0.3 };

/** The manner of a kind, written in the singular or as the key of a plan. */
export function mannerOf(kind: string): Manner {
  const word = kind.toLowerCase().split(" ")[0] ?? kind;
  const names = [kind, word, word.replace(/ies$/, "y"), word.replace(/(ch|sh|s|x)es$/, "$1"), word.replace(/s$/, "")];
  const name = names.find((one) => Object.hasOwn(manners, one));
  return (name === undefined ? undefined : manners[name]) ?? unknown;
}
