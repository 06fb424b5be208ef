// What: how steeply does this surface fall away from the building beside it?
// Formula: slope of the surface square to the nearest wall, above 0 where it falls away from the wall.
// Source: plane geometry.
// Valid: the finished top where the plan gives it, else the ground between levels.
// Witness: the nearest place.

import { dot, minus, unit } from "../geometry/vector.ts";
import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Found, Measure, Scene } from "../model/reading.ts";
import { finishedPlane } from "../site/finished-level.ts";
import { groundOf, groundUnder, type LivePlane } from "../site/ground.ts";
import { groundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { wallPlaces, type WallPlace } from "../site/outside-walls.ts";
import { areaAt } from "../site/area.ts";
import { holdsPoint } from "../geometry/polygon.ts";
import { levelsOn, patchesOf } from "../site/surface-planes.ts";
import { askedFor, missing } from "./asked-for.ts";

export const fallFromWall: Measure = {
  name: "fall-from-wall",
  dimension: "slope",
  roles: { surface: "a surface", building: "a building with an outline" },
  parameters: { beside: { dimension: "length", default: 0.5 }, shown: { words: ["1 in", "%"], default: "1 in" } },
  phrase: "it falls {found} away from {building}",
  below: { phrase: "it falls {found} towards {building}", wanted: "away from it" },
  shortName: "fall away",
  shownIn: "1 in",
  find: (subject, scene, parameters): Found => {
    const { surface, building } = subject;
    const beside = Number(parameters["beside"]);
    const [a, b] = [surface && groundFigure(surface), building && groundFigure(building)];
    if (!surface || !building || !a || !b) return { is: "does-not-bear" };
    if (nearPlaces(a, b, beside, scene.read).length === 0) return { is: "does-not-bear" };
    const area = areaAt(a, scene.read);
    const walls = wallPlaces(building, scene.read).filter(
      (wall) => area && holdsPoint(area, wall.out(scene.read, beside)),
    );
    if (walls.length === 0) return { is: "does-not-bear" };
    const places = walls.flatMap((wall) => {
      const plane = planeAt(surface, wall, beside, scene);
      return plane ? [away(wall, plane)] : [];
    });
    if (places.length > 0) return { is: "found", places };
    return surface.existing
      ? missing(askedFor(surface, "levels", "levels (at the wall and away from it)", "length"))
      : missing(askedFor(surface, "finished.fall", "the finished fall, with what it falls towards,", "slope"));
  },
};

function planeAt(surface: Feature, wall: WallPlace, beside: number, scene: Scene): LivePlane | null {
  const finished = finishedPlane(surface);
  if (finished || isQuantity(propertyOf(surface, "finished.level"))) return finished;
  const at = wall.out(scene.read, beside);
  const own = patchesOf(levelsOn(surface), scene.read);
  if (own.length > 0) {
    const under = own.find(({ corners }) => holdsPoint({ outline: corners(scene.read), holes: [] }, at)) ?? own[0];
    return under?.plane ?? null;
  }
  return surface.existing ? (groundUnder(groundOf(scene), at)?.plane ?? null) : null;
}

function away(wall: WallPlace, plane: LivePlane): CandidatePlace {
  const direction = (read: Read) => unit(minus(wall.out(read, 1), wall.at(read)));
  return {
    key: wall.key,
    value: (read) => {
      const [now, out] = [plane(read), direction(read)];
      return now && out ? -dot([now.east, now.north], out) : Number.NaN;
    },
    witness: (read) => [{ part: "found", form: "line", points: [wall.at(read), wall.out(read, 1)], label: "fall" }],
  };
}
