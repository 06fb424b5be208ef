// The planes that a surface or a way lies in: as finished, as levelled on it, or as the ground under it runs.

import { holdsPoint } from "../geometry/polygon.ts";
import { cross, minus, norm } from "../geometry/vector.ts";
import { isQuantity, isSpot, type Feature, type Property, propertyOf, type Properties } from "../model/plan.ts";
import type { Quantity, Read, Spot } from "../model/quantity.ts";
import type { Point, Scene } from "../model/reading.ts";
import { buildNet } from "../terrain/net.ts";
import { planeThrough } from "../terrain/surface.ts";
import { areaAt } from "./area.ts";
import { groundAlong, groundOf, type LivePlane, planesWithin, reachesAll, withoutNeedles } from "./ground.ts";
import { figureAt, groundFigure, liveSpot } from "./live-figure.ts";

/** A plane of a surface with a word for where it is. */
export interface PatchPlane {
  readonly key: string;
  readonly plane: LivePlane;
  readonly corners: (read: Read) => readonly Point[];
}

/** A place of a surface with its level. */
export interface LevelledSpot {
  readonly spot: Spot;
  readonly level: Quantity;
}

/** Heights taken on an existing surface, as the plan lists them. */
export function levelsOn(surface: Feature): readonly LevelledSpot[] {
  const list = propertyOf(surface, "levels");
  if (!Array.isArray(list)) return [];
  return (list as readonly Property[]).flatMap((entry) => {
    const { at, level } = entry as Properties;
    return isSpot(at) && isQuantity(level) ? [{ spot: at, level }] : [];
  });
}

/**
 * Least height of a triangle over its longest side: heights taken along the middle of a way lie on one line but for
 * their own doubt, and a plane through such a needle says nothing of how the way leans.
 */
const needle = 0.02;

/** Whether three points lie on one line, as near as the tape can tell. */
function isNeedle([a, b, c]: readonly [Point, Point, Point]): boolean {
  const longest = Math.max(norm(minus(b, a)), norm(minus(c, b)), norm(minus(a, c)));
  return Math.abs(cross(minus(b, a), minus(c, a))) < needle * longest * longest;
}

/** Triangles between heights taken on a surface; empty where they are too few or lie on one line. */
export function patchesOf(levels: readonly LevelledSpot[], read: Read): readonly PatchPlane[] {
  const { net } = buildNet(
    levels.map(({ spot }) => liveSpot(spot)(read)),
    [],
  );
  if (!net) return [];
  return Array.from({ length: net.corners.length / 3 }, (_, t) => t).flatMap((t) => {
    const three = [0, 1, 2].map((k) => levels[net.corners[3 * t + k] as number] as LevelledSpot);
    const corners = (now: Read) => three.map(({ spot }) => liveSpot(spot)(now));
    if (isNeedle(corners(read) as unknown as [Point, Point, Point])) return [];
    const patch: PatchPlane = {
      key: `triangle ${t}`,
      corners,
      plane: (now: Read) =>
        planeThrough(
          corners(now) as unknown as [Point, Point, Point],
          three.map(({ level }) => now(level)) as unknown as [number, number, number],
        ),
    };
    return [patch];
  });
}

/** Triangles of the levelled ground that lie under a feature; empty where the net does not reach under all of it. */
export function groundPatches(feature: Feature, scene: Scene): readonly PatchPlane[] {
  const figure = groundFigure(feature);
  const area = figure && areaAt(figure, scene.read);
  const ground = groundOf(scene);
  if (!figure || !area) return [];
  const ring = figureAt(figure, scene.read).chains[0]?.points ?? area.outline;
  const closed = [...ring, ring[0] as Point];
  const edges = groundAlong(ground, closed);
  if (!reachesAll(edges, closed.length - 1)) return [];
  const inside = planesWithin(ground, (at) => holdsPoint(area, at));
  const under = new Map([...edges, ...inside].map((one) => [one.triangle, one]));
  return withoutNeedles(ground, [...under.values()]).map(({ triangle, plane, corners }) => ({
    key: `triangle ${triangle}`,
    plane,
    corners,
  }));
}
