// Cut and fill of a surface between the ground and its formation.

import type { Feature, LevelledPlace } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import { boxOf } from "../geometry/box.ts";
import { polygonArea } from "../geometry/polygon.ts";
import { type CutAndFill, cutAndFillWithin } from "../terrain/cut-and-fill.ts";
import { withPoints } from "../terrain/net.ts";
import type { Plane } from "../terrain/surface.ts";
import { areaAt } from "./area.ts";
import { finishedPlane } from "./finished-level.ts";
import { groundOf, roughness } from "./ground.ts";
import { layersOf } from "./layer-volumes.ts";
import { groundFigure, liveSpot } from "./live-figure.ts";

export interface Earthworks {
  /** Volumes as the earth lies in the ground, m3; the net keeps its triangles while its levels are moved. */
  readonly volumes: (read: Read) => CutAndFill | null;
  /** Standard uncertainty of cut less fill by the roughness of the ground between levels, m3: each triangle by itself. */
  readonly roughU: number;
  /** Area of the surface, and the part of it off the levels, m2. */
  readonly area: number;
  readonly notKnown: number;
}

/** Cut and fill of a surface to be built; null where its level, a layer's thickness or the ground is not known. */
export function earthworksOf(surface: Feature, levels: readonly LevelledPlace[], read: Read): Earthworks | null {
  const top = finishedPlane(surface);
  const figure = groundFigure(surface);
  const layers = layersOf(surface).map(({ thickness }) => thickness);
  const known = layers.filter((thickness) => thickness !== null);
  const ground = groundOf({ levels, read });
  const { net } = ground;
  if (surface.existing || !top || !figure || !net || known.length < layers.length) return null;
  const formation = (now: Read): Plane | null => {
    const plane = top(now);
    return plane && { ...plane, atOrigin: known.reduce((level, layer) => level - now(layer), plane.atOrigin) };
  };
  const volumes = (now: Read): CutAndFill | null => {
    const [plane, area] = [formation(now), areaAt(figure, now)];
    const moved = withPoints(
      net,
      ground.spots.map((spot) => liveSpot(spot)(now)),
    );
    return plane && area && moved
      ? cutAndFillWithin({ net: moved, levels: ground.levels.map(now) }, plane, area)
      : null;
  };
  const now = volumes(read);
  const area = areaAt(figure, read);
  if (!now || !area) return null;
  const whole = polygonArea(area);
  // The triangles under it are taken as alike in size: n of them leave r A / sqrt n.
  const box = boxOf(area.outline);
  const under = box === null ? 1 : net.index.meeting(box).length;
  return { volumes, roughU: (roughness * whole) / Math.sqrt(Math.max(1, under)), area: whole, notKnown: now.notKnown };
}
