// The way a vehicle turns, in ink: its body where it stops, the marks of its rear wheels by gear, the moves numbered in rings.

import { union } from "../geometry/overlay.ts";
import { polygonOf, ringsOf } from "../geometry/polygon.ts";
import type { Point } from "../model/reading.ts";
import type { RoomFound } from "../motion/room-answer.ts";
import { type Arc, type Pose, poseAfter } from "../motion/pose.ts";
import type { Vehicle } from "../motion/vehicle.ts";
import { element, joined, plain, type Markup } from "./markup.ts";
import { inked, lettering, lines, type RoomFrame } from "./room-frame.ts";
import { ink, paper } from "./svg-hatch.ts";
import { centreOf, pathOf } from "./svg-lines.ts";

/** Longest step between points of a wheel's mark, m. */
const step = 0.25;

/** One move: its gear, and poses along it. */
interface Leg {
  readonly gear: "forward" | "reverse";
  readonly poses: readonly Pose[];
}

function legsOf(start: Pose, arcs: readonly Arc[]): readonly Leg[] {
  const legs: { gear: Leg["gear"]; poses: Pose[] }[] = [];
  let pose = start;
  for (const arc of arcs) {
    const gear = arc.length < 0 ? "reverse" : "forward";
    let leg = legs.at(-1);
    if (leg?.gear !== gear) legs.push((leg = { gear, poses: [pose] }));
    const count = Math.max(1, Math.ceil(Math.abs(arc.length) / step));
    for (let i = 1; i <= count; i++) leg.poses.push(poseAfter(pose, { ...arc, length: (arc.length * i) / count }));
    pose = poseAfter(pose, arc);
  }
  return legs;
}

const beside = ({ x, y, heading }: Pose, left: number): Point => [
  x - left * Math.sin(heading),
  y + left * Math.cos(heading),
];

/** Everything of the path; the tightest place gets the one figure. */
export function pathMarkup(found: RoomFound, vehicle: Vehicle, frame: RoomFrame): Markup {
  const start = found.swept.stops[0]?.pose;
  if (!start) return joined([]);
  const legs = legsOf(start, found.path);
  const half = vehicle.widthOverTyres / 2;
  const covered = union(found.swept.rings.map((ring) => polygonOf(ring))) ?? [];
  const { weight, ...dots } = lines.covered;
  return joined(
    [
      ...covered.flatMap(ringsOf).map((ring) => inked(closed(ring).map(frame.at), weight, dots)),
      ...legs.flatMap(({ gear, poses }) => {
        const { weight: heavy, ...dash } = lines[gear];
        return [half, -half].map((left) =>
          inked(
            poses.map((pose) => frame.at(beside(pose, left))),
            heavy,
            dash,
          ),
        );
      }),
      ...found.swept.stops.map(({ outline, pose }) => bodyMarkup(outline, pose, vehicle, frame)),
      ...legs.map((leg, i) => ringMarkup(leg, { number: i + 1, of: legs.length }, frame)),
      tightMarkup(found, frame),
    ],
    "\n",
  );
}

const closed = (ring: readonly Point[]): readonly Point[] => [...ring, ...ring.slice(0, 1)];

/** The outline, with a chevron that shows which end is the front. */
function bodyMarkup(outline: readonly Point[], pose: Pose, vehicle: Vehicle, frame: RoomFrame): Markup {
  const nose = vehicle.wheelbase + vehicle.frontOverhang;
  const ahead = (along: number, left: number): Point => {
    const [x, y] = beside(pose, left);
    return frame.at([x + along * Math.cos(pose.heading), y + along * Math.sin(pose.heading)]);
  };
  const quarter = vehicle.bodyWidth / 4;
  return joined([
    inked(closed(outline).map(frame.at), lines.body.weight),
    inked(
      [ahead(nose - 2 * quarter, quarter), ahead(nose - quarter / 2, 0), ahead(nose - 2 * quarter, -quarter)],
      0.25,
    ),
  ]);
}

/** Share of a move at which its ring stands: the first and the last share the track, so theirs stand away from it. */
const ringAt = { first: 0.72, between: 0.5, last: 0.28 } as const;

/** Number of the move in a ring, with an arrow the way it goes. */
function ringMarkup(
  { gear, poses }: Leg,
  { number, of }: { readonly number: number; readonly of: number },
  frame: RoomFrame,
): Markup {
  const share =
    number < of ? (number === 1 ? ringAt.first : ringAt.between) : number === 1 ? ringAt.between : ringAt.last;
  const index = Math.floor(poses.length * share);
  const pose = poses[index] ?? poses[0]!;
  const [x, y] = frame.at([pose.x, pose.y]);
  const ways = gear === "forward" ? 1 : -1;
  const tip = frame.at([pose.x + ways * Math.cos(pose.heading), pose.y + ways * Math.sin(pose.heading)]);
  const size = Math.hypot(tip[0] - x, tip[1] - y) || 1;
  const [dx, dy] = [(tip[0] - x) / size, (tip[1] - y) / size];
  const radius = 2.2;
  const head: readonly Point[] = [
    [x + dx * (radius + 2.6), y + dy * (radius + 2.6)],
    [x + dx * (radius + 0.2) - dy * 1.2, y + dy * (radius + 0.2) + dx * 1.2],
    [x + dx * (radius + 0.2) + dy * 1.2, y + dy * (radius + 0.2) - dx * 1.2],
  ];
  return joined([
    element("path", { d: pathOf(head, "closed"), fill: ink }),
    element("circle", { cx: x, cy: y, r: radius, fill: paper, stroke: ink, "stroke-width": 0.3 }),
    element(
      "text",
      { x, y: y + 1, "font-size": 2.9, "font-weight": "bold", "text-anchor": "middle", fill: ink },
      plain(String(number)),
    ),
  ]);
}

/** The figure stands towards the middle of the ground, clear of the lengths outside it. */
function tightMarkup({ tightest, pegs, ground }: RoomFound, frame: RoomFrame): Markup {
  if (!Number.isFinite(tightest.clearance)) return joined([]);
  const [x, y] = frame.at(tightest.at);
  const [middleX, middleY] = centreOf((pegs.length > 0 ? pegs : ground).map(frame.at));
  const left = middleX < x;
  const text = `tightest ${Math.max(0, tightest.clearance).toFixed(2)} m`;
  const place: Point = [x + (left ? -2 : 2), y + (middleY < y ? -1.6 : 3.8)];
  return joined([
    element("circle", { cx: x, cy: y, r: 1.1, fill: ink }),
    lettering(place, text, { weight: "bold", ...(left ? { anchor: "end" as const } : {}) }),
  ]);
}
