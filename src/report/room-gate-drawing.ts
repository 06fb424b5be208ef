// A gate off a lane, drawn: the lane's edges, the posts, the turn and the ground that the body covers on it.

import { union } from "../geometry/overlay.ts";
import { polygonOf, ringsOf } from "../geometry/polygon.ts";
import type { Point } from "../model/reading.ts";
import type { GatePlaced } from "../motion/room-gate.ts";
import { sweptOutline } from "../motion/swept-outline.ts";
import type { Vehicle } from "../motion/vehicle.ts";
import { joined, type Markup } from "./markup.ts";
import { type Figures, figuresMarkup } from "./room-dimensions.ts";
import { inked, lines, roomFrame, type RoomFrame } from "./room-frame.ts";

/** The sketch of a gate, with the frame that it was laid in. */
export function gateSketch(
  placed: GatePlaced,
  vehicle: Vehicle,
): { readonly frame: RoomFrame; readonly markup: Markup } {
  const { lane, line, posts, start, path } = placed;
  const [near, far] = [lane.width / 2, -lane.width / 2];
  const swept = sweptOutline(vehicle, start, path);
  const covered = union(swept.rings.map((ring) => polygonOf(ring))) ?? [];
  const points = covered.flatMap(({ outline }) => outline);
  const left = Math.min(...points.map(([x]) => x));
  const right = posts[1] + placed.beyondPost + lane.width;
  const corners: readonly Point[] = [
    [left, far],
    [right, far],
  ];
  const frame = roomFrame([...points, ...corners]);
  const edge = (from: Point, to: Point) => inked([from, to].map(frame.at), lines.edge.weight);
  const { weight, ...dots } = lines.covered;
  const { weight: heavy, ...dash } = lines.forward;
  const outer = posts[1] + placed.beyondPost;
  const markup = joined(
    [
      edge([left, far], [right, far]),
      edge([left, near], [Math.min(posts[0], 0), near]),
      edge([outer, near], [right, near]),
      edge([posts[0] - lane.width, line], [posts[0], line]),
      edge([posts[1], line], [right, line]),
      ...covered.flatMap(ringsOf).map((ring) => inked([...ring, ...ring.slice(0, 1)].map(frame.at), weight, dots)),
      ...swept.wheelTracks.slice(2).map((track) => inked(track.map(frame.at), heavy, dash)),
      ...swept.stops.map(({ outline }) => inked([...outline, ...outline.slice(0, 1)].map(frame.at), lines.body.weight)),
      figuresMarkup(figuresOf(placed, left, right), frame),
    ],
    "\n",
  );
  return { frame, markup };
}

function figuresOf({ lane, line, posts }: GatePlaced, left: number, right: number): Figures {
  const near = lane.width / 2;
  return {
    pegs: [
      { letter: "P", at: [posts[0], line] },
      { letter: "Q", at: [posts[1], line] },
    ],
    lengths: [
      { from: [posts[0], line], to: [posts[1], line], off: 0 },
      { from: [left + 0.4, -near], to: [left + 0.4, near], off: 0 },
      ...(line - near > 0.3 ? [{ from: [right - 0.4, near] as Point, to: [right - 0.4, line] as Point, off: 0 }] : []),
    ],
  };
}
