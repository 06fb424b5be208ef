// A train going round, drawn: the ring it covers, both bodies where they stand to each other, and the figures.

import type { Point } from "../model/reading.ts";
import { bodyOutline } from "../motion/swept-outline.ts";
import { trailerOutline, type Towing, type TrainRing } from "../motion/room-train.ts";
import { element, joined, type Markup } from "./markup.ts";
import { figuresMarkup } from "./room-dimensions.ts";
import { inked, lines, roomFrame, type RoomFrame } from "./room-frame.ts";
import { ink } from "./svg-hatch.ts";

/** A ring with its clearance, m. */
export interface TrainDrawn {
  readonly towing: Towing;
  readonly ring: TrainRing;
  readonly clearance: number;
  /** The trailer where the train stops, where it turns round on a ground. */
  readonly turn?: { readonly stops: readonly (readonly Point[])[] } | null;
}

/** The sketch of a ring, with the frame that it was laid in. */
export function trainSketch({ towing, ring, clearance }: TrainDrawn): {
  readonly frame: RoomFrame;
  readonly markup: Markup;
} {
  const [outer, inner] = [ring.outer + clearance, Math.max(0, ring.inner - clearance)];
  const corners: readonly Point[] = [
    [-outer, -outer],
    [outer, outer],
  ];
  const frame = roomFrame(corners);
  const circle = (radius: number, weight: number, dash?: string): Markup => {
    const [cx, cy] = frame.at([0, 0]);
    return element("circle", {
      cx,
      cy,
      r: frame.long(radius),
      fill: "none",
      stroke: ink,
      "stroke-width": weight,
      "stroke-dasharray": dash,
    });
  };
  const at = { x: 0, y: -ring.rearAxleRadius, heading: 0, hitchAngle: ring.hitchAngle };
  const body = (outline: readonly Point[]) =>
    inked([...outline, ...outline.slice(0, 1)].map(frame.at), lines.body.weight);
  const covered = lines.covered["stroke-dasharray"];
  const markup = joined(
    [
      circle(outer, lines.edge.weight),
      ...(inner > 0 ? [circle(inner, lines.edge.weight)] : []),
      circle(ring.outer, lines.covered.weight, covered),
      circle(ring.inner, lines.covered.weight, covered),
      circle(ring.rearAxleRadius, lines.forward.weight, lines.forward["stroke-dasharray"]),
      circle(ring.trailerRadius, lines.forward.weight, lines.forward["stroke-dasharray"]),
      body(bodyOutline(towing.vehicle, at)),
      body(trailerOutline(towing.trailer, at)),
      figuresMarkup(
        {
          pegs: [{ letter: "O", at: [0, 0] }],
          lengths: [
            { from: [0, 0], to: [outer * Math.cos(0.9), outer * Math.sin(0.9)], off: 0 },
            ...(inner > 0
              ? [{ from: [0, 0] as Point, to: [inner * Math.SQRT1_2, -inner * Math.SQRT1_2] as Point, off: 0 }]
              : []),
            { from: [inner, 0] as Point, to: [outer, 0] as Point, off: 0 },
          ],
        },
        frame,
      ),
    ],
    "\n",
  );
  return { frame, markup };
}
