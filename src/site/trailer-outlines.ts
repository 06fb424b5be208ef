// A trailer on a found path, to be drawn: the ground it covers and where it stands at every change of direction.

import { convexHull } from "../geometry/convex-hull.ts";
import { asDriven } from "../motion/checked.ts";
import type { Arc, Pose } from "../motion/pose.ts";
import { type Trailer, trailerPose, trainAfter, type TrainPose } from "../motion/trailer-pose.ts";
import type { Point } from "../model/reading.ts";
import { trainAt } from "./trailer-places.ts";

/** Longest step between two outlines whose hull is drawn, m: it is out by less than a line's width of a drawing. */
const step = 0.4;

/** Rings that together cover what a trailer covers, and its outlines at the start, at every change of direction, and at the end. */
export function trailerOutlines(
  trailer: Trailer,
  start: Pose,
  arcs: readonly Arc[],
): { readonly covered: readonly (readonly Point[])[]; readonly stops: readonly (readonly Point[])[] } {
  let at: TrainPose = { ...start, hitchAngle: 0 };
  let before = outlineOf(trailer, at);
  const covered: (readonly Point[])[] = [];
  const stops = [before];
  for (const [i, given] of arcs.entries()) {
    const arc = asDriven(given);
    const last = arcs[i - 1];
    if (last && Math.sign(last.length) !== Math.sign(arc.length)) stops.push(before);
    const count = Math.max(1, Math.ceil(Math.abs(arc.length) / step));
    for (let k = 0; k < count; k++) {
      at = trainAfter(trailer, at, { curvature: arc.curvature, length: arc.length / count });
      const outline = outlineOf(trailer, at);
      covered.push(convexHull([...before, ...outline]));
      before = outline;
    }
  }
  return { covered, stops: [...stops, before] };
}

/** The trailer's outline at a place of its path. */
export function trailerOutlineAt(
  trailer: Trailer,
  start: Pose,
  arcs: readonly Arc[],
  place: { readonly arc: number; readonly along: number },
): readonly Point[] {
  return outlineOf(trailer, trainAt(trailer, start, arcs, place));
}

/** Middle of the outer face of each of its two wheels along a path, left and right. */
export function trailerWheelTracks(trailer: Trailer, start: Pose, arcs: readonly Arc[]): readonly (readonly Point[])[] {
  const poses = trainsAlong(trailer, start, arcs).map((train) => trailerPose(trailer, train, train.hitchAngle));
  const half = trailer.widthOverTyres / 2;
  return [half, -half].map((side) =>
    poses.map(({ x, y, heading }): Point => [x - side * Math.sin(heading), y + side * Math.cos(heading)]),
  );
}

/** Where a train stands along a path, every `step` or closer. */
function trainsAlong(trailer: Trailer, start: Pose, arcs: readonly Arc[]): readonly TrainPose[] {
  let at: TrainPose = { ...start, hitchAngle: 0 };
  const along = [at];
  for (const arc of arcs.map(asDriven)) {
    const count = Math.max(1, Math.ceil(Math.abs(arc.length) / step));
    for (let k = 0; k < count; k++) {
      at = trainAfter(trailer, at, { curvature: arc.curvature, length: arc.length / count });
      along.push(at);
    }
  }
  return along;
}

function outlineOf(trailer: Trailer, train: TrainPose): readonly Point[] {
  const pose = trailerPose(trailer, train, train.hitchAngle);
  const [c, s] = [Math.cos(pose.heading), Math.sin(pose.heading)];
  const [back, front, half] = [
    -trailer.rearOverhang,
    trailer.hitchToAxle - trailer.hitchToFront,
    trailer.bodyWidth / 2,
  ];
  const corners: readonly Point[] = [
    [back, -half],
    [front, -half],
    [front, half],
    [back, half],
  ];
  return corners.map(([u, v]): Point => [pose.x + c * u - s * v, pose.y + s * u + c * v]);
}
