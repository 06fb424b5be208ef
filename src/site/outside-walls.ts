// Places along the outside of a building's walls: the foot of the wall, and how to step out from it.

import { minus, plus, times, toTheLeft, unit } from "../geometry/vector.ts";
import type { Feature } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { type LivePoint, liveSpot } from "./live-figure.ts";

/** A place at the foot of a wall. `out` is the point that many metres straight out from it. */
export interface WallPlace {
  readonly key: string;
  readonly at: LivePoint;
  readonly out: (read: Read, metres: number) => Point;
}

/** Both ends and the middle of every side of a building's outline. */
const shares = [0, 0.5, 1] as const;

/** Places round a building with an outline, at the ends and the middle of its sides. */
export function wallPlaces(building: Feature, read: Read): readonly WallPlace[] {
  if (building.shape?.form !== "outline") return [];
  const ring = building.shape.outline.map(liveSpot);
  const outward = turnsLeft(ring.map((point) => point(read))) ? -1 : 1;
  return ring.flatMap((start, side) => {
    const end = ring[(side + 1) % ring.length] as LivePoint;
    return shares.map((share): WallPlace => {
      const at: LivePoint = (now) => plus(start(now), times(minus(end(now), start(now)), share));
      return {
        key: `${side}.${share}`,
        at,
        out: (now, metres) => {
          const along = unit(minus(end(now), start(now))) ?? [1, 0];
          return plus(at(now), times(toTheLeft(along), outward * metres));
        },
      };
    });
  });
}

/** Whether a ring is walked with its inside on the left. */
function turnsLeft(ring: readonly Point[]): boolean {
  let twice = 0;
  for (const [index, [x, y]] of ring.entries()) {
    const [nextX, nextY] = ring[(index + 1) % ring.length] as Point;
    twice += x * nextY - nextX * y;
  }
  return twice > 0;
}
