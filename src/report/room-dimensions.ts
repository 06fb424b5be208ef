// Pegs with their letters, and lengths with ticks at both ends, round a ground for turning.

import type { Point } from "../model/reading.ts";
import { pegsOf, type RoomLayout, type RoomSize } from "../motion/room-layout.ts";
import { element, joined, type Markup } from "./markup.ts";
import { inked, lettering, type RoomFrame } from "./room-frame.ts";
import { ink, paper } from "./svg-hatch.ts";

/** Pegs by letter, and lengths between places of the ground, `off` millimetres to the right of the way from one to the other. */
export interface Figures {
  readonly pegs: readonly { readonly letter: string; readonly at: Point }[];
  readonly lengths: readonly { readonly from: Point; readonly to: Point; readonly off: number }[];
}

/** What is lettered and measured for a layout, in the frame of its question. */
export function figuresOf(layout: RoomLayout, size: RoomSize, trackEnd: number): Figures {
  if (layout.form === "rectangle")
    return layout.entry === "along" ? alongFigures(layout.track, size, trackEnd) : sideFigures(layout, size, trackEnd);
  const { long, deep } = size;
  if (layout.form === "road") return { pegs: [], lengths: [{ from: [-deep / 2, 0], to: [deep / 2, 0], off: 0 }] };
  if (layout.form === "circle") {
    const middle: Point = [0, Math.sqrt(Math.max(0, (long / 2) ** 2 - (layout.track / 2) ** 2))];
    return {
      pegs: [{ letter: "O", at: middle }],
      lengths: [
        { from: [-long / 2, middle[1]], to: [long / 2, middle[1]], off: 0 },
        trackAcross(layout.track, trackEnd),
      ],
    };
  }
  const middle: Point = [0, layout.track / 2 / Math.sqrt(3)];
  const arm = (direction: number): Point => [long * Math.cos(direction), middle[1] + long * Math.sin(direction)];
  const [q, p] = [arm(Math.PI / 6), arm((5 * Math.PI) / 6)];
  return {
    pegs: [
      { letter: "O", at: middle },
      { letter: "P", at: p },
      { letter: "Q", at: q },
    ],
    lengths: [{ from: middle, to: q, off: 0 }, { from: p, to: q, off: -4 }, trackAcross(layout.track, trackEnd)],
  };
}

/** How far from where it ends on the sheet the width of the track is written, m: the body does not stand there. */
const upTheTrack = 0.6;
const trackAcross = (track: number, end: number) => ({
  from: [-track / 2, end + upTheTrack] as Point,
  to: [track / 2, end + upTheTrack] as Point,
  off: 0,
});

function sideFigures(layout: Extract<RoomLayout, { form: "rectangle" }>, size: RoomSize, trackEnd: number): Figures {
  const pegs = pegsOf(layout, size);
  const xs = pegs.map(([x]) => x);
  const [left, right, high] = [Math.min(...xs), Math.max(...xs), Math.max(...pegs.map(([, y]) => y))];
  const half = layout.track / 2;
  const [a, b, c, d]: readonly Point[] = [
    [left, 0],
    [right, 0],
    [right, high],
    [left, high],
  ];
  if (!a || !b || !c || !d) return { pegs: [], lengths: [] };
  const mouth = left < -half - 1e-9 ? [{ from: a, to: [-half, 0] as Point, off: 5 }] : [];
  return {
    pegs: [
      { letter: "A", at: a },
      { letter: "B", at: b },
      { letter: "C", at: c },
      { letter: "D", at: d },
    ],
    lengths: [{ from: d, to: c, off: -6 }, { from: b, to: c, off: 6 }, ...mouth, trackAcross(layout.track, trackEnd)],
  };
}

function alongFigures(track: number, { long, deep }: RoomSize, trackEnd: number): Figures {
  const half = track / 2;
  const [a, b, c, d]: readonly Point[] = [
    [half, 0],
    [half, long],
    [deep - half, long],
    [deep - half, 0],
  ];
  if (!a || !b || !c || !d) return { pegs: [], lengths: [] };
  return {
    pegs: [
      { letter: "A", at: a },
      { letter: "B", at: b },
      { letter: "C", at: c },
      { letter: "D", at: d },
    ],
    lengths: [
      { from: d, to: c, off: 6 },
      { from: b, to: c, off: -6 },
      { from: [-half, long], to: c, off: -11 },
      trackAcross(track, trackEnd),
    ],
  };
}

/** Draws pegs and lengths. */
export function figuresMarkup({ pegs, lengths }: Figures, frame: RoomFrame): Markup {
  return joined(
    [
      ...lengths.map((one) => lengthMarkup(one, frame)),
      ...pegs.map(({ letter, at }) => pegMarkup(letter, frame.at(at))),
    ],
    "\n",
  );
}

function lengthMarkup({ from, to, off }: Figures["lengths"][number], frame: RoomFrame): Markup {
  const metres = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [a, b] = [frame.at(from), frame.at(to)];
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const along: Point = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
  // To the right of the way on paper, where y grows downwards.
  const aside: Point = [-along[1] * off, along[0] * off];
  const moved = ([x, y]: Point): Point => [x + aside[0], y + aside[1]];
  const tick = ([x, y]: Point) =>
    inked(
      [
        [x - along[0] - along[1], y - along[1] + along[0]],
        [x + along[0] + along[1], y + along[1] - along[0]],
      ],
      0.25,
    );
  const [start, end] = [moved(a), moved(b)];
  const middle: Point = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2];
  let turn = (Math.atan2(along[1], along[0]) * 180) / Math.PI;
  if (turn > 90 || turn <= -90.01) turn += 180;
  const up = (turn * Math.PI) / 180;
  const place: Point = [middle[0] + Math.sin(up) * 1.1, middle[1] - Math.cos(up) * 1.1];
  return joined([
    ...(off === 0 ? [] : [inked([a, start], 0.13), inked([b, end], 0.13)]),
    inked([start, end], 0.2),
    tick(start),
    tick(end),
    lettering(place, `${metres.toFixed(2)} m`, {
      size: 3.2,
      anchor: "middle",
      ...(Math.abs(turn) > 0.01 ? { turn } : {}),
    }),
  ]);
}

function pegMarkup(letter: string, [x, y]: Point): Markup {
  return joined([
    element("circle", { cx: x, cy: y, r: 1.1, fill: paper, stroke: ink, "stroke-width": 0.5 }),
    lettering([x - 1.6, y - 2], letter, { size: 3.6, weight: "bold", anchor: "end" }),
  ]);
}
