// What: how far does the vehicle go backwards without a stop, doing what it must?
// Formula: the longest move in reverse of the path that was found, along the middle of the rear axle.
// Source: the search of the manoeuvre (COMPUTED).
// Valid: one path among many; a shorter way backwards may exist.
// Witness: the ground covered, the body at every change of direction with the number of the move.

import { movesOf } from "../motion/pose.ts";
import type { Measure } from "../model/reading.ts";
import { foundPath } from "../site/found-path.ts";
import { pathWitness } from "../site/path-witness.ts";
import { tightPlaces } from "../site/tight-places.ts";

export const reversedLength: Measure = {
  name: "reversed-length",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre with its vehicle, its surfaces and its way in" },
  parameters: { clear: { dimension: "length", default: 0 } },
  phrase: "it goes {found} backwards",
  shortName: "backwards",
  find: ({ manoeuvre }, scene, parameters) => {
    if (!manoeuvre) return { is: "does-not-bear" };
    const found = foundPath(manoeuvre, scene, Number(parameters["clear"]));
    if ("not" in found) return found.not;
    const { path } = found;
    const longest = movesOf(path.arcs)
      .filter(({ gear }) => gear === "reverse")
      .reduce((most, { length }) => Math.max(most, length), 0);
    if (longest === 0) return { is: "does-not-bear" };
    const [tightest] = tightPlaces(path, scene.read);
    return {
      is: "found",
      places: [
        {
          key: "longest",
          value: () => longest,
          witness: (read) => (tightest ? pathWitness(path, tightest, read) : []),
        },
      ],
    };
  },
};
