// What: how far does this surface stand above or below the plane that fits it best?
// Formula: greatest |z - plane| over the heights taken on it, the plane by least squares.
// Source: plane geometry (COMPUTED).
// Valid: for four heights or more that do not lie on one line; dips between them are not seen.
// Witness: the place of that height.

import type { Point } from "../model/reading.ts";
import type { CandidatePlace, Found, Measure } from "../model/reading.ts";
import type { Read } from "../model/quantity.ts";
import { liveSpot } from "../site/live-figure.ts";
import { type LevelledSpot, levelsOn } from "../site/surface-planes.ts";
import { fittedPlane } from "../terrain/fitted-plane.ts";
import { levelOnPlane } from "../terrain/surface.ts";

/** Three heights always lie in a plane. */
const leastHeights = 4;

export const unevenness: Measure = {
  name: "unevenness",
  dimension: "length",
  roles: { surface: "a surface with heights taken on it" },
  parameters: {},
  phrase: "it stands {found} off its own plane at the worst place",
  shortName: "off its plane",
  shownIn: "mm",
  find: ({ surface }, { read }): Found => {
    const levels = surface ? levelsOn(surface) : [];
    if (levels.length < leastHeights || offPlane(levels, 0, read) === null) return { is: "does-not-bear" };
    return { is: "found", places: levels.map((_, k) => placeOf(levels, k)) };
  },
};

function placeOf(levels: readonly LevelledSpot[], k: number): CandidatePlace {
  const at = (read: Read): Point => liveSpot((levels[k] as LevelledSpot).spot)(read);
  return {
    key: `height ${k}`,
    value: (read) => Math.abs(offPlane(levels, k, read) ?? Number.NaN),
    witness: (read) => [{ part: "found", form: "point", points: [at(read)], label: "off plane" }],
  };
}

/** Height of one level above the plane of all; null where they lie on one line. */
function offPlane(levels: readonly LevelledSpot[], k: number, read: Read): number | null {
  const points = levels.map(({ spot }) => liveSpot(spot)(read));
  const heights = levels.map(({ level }) => read(level));
  const plane = fittedPlane(points, heights);
  return plane && (heights[k] as number) - levelOnPlane(plane, points[k] as Point);
}
