// What: how far apart are two things on plan, nearest edge to nearest edge?
// Formula: least distance of the two figures, signed; below 0 by how deep they overlap.
// Source: plane geometry.
// Valid: plan distances; thickness, width and stem are part of the thing. Heights are ignored.
// Witness: the shortest line between them.

import type { CandidatePlace, Measure } from "../model/reading.ts";
import { groundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";

/** How far places are looked for, metres: farther pairs are left to the card's own reach. */
const reach = 300;

export const clearDistance: Measure = {
  name: "clear-distance",
  dimension: "length",
  roles: { thing: "anything with a shape", other: "anything with a shape" },
  parameters: {},
  phrase: "{found} clear of {other}",
  shortName: "clear distance",
  find: (subject, scene) => {
    const thing = subject["thing"] && groundFigure(subject["thing"]);
    const other = subject["other"] && groundFigure(subject["other"]);
    if (!thing || !other) return { is: "does-not-bear" };
    const places = nearPlaces(thing, other, reach, scene.read).map((near): CandidatePlace => ({
      key: near.key,
      value: near.distance,
      witness: (read) => [{ part: "found", form: "line", points: near.ends(read) }],
    }));
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};
