// What: what part of a tree's root zone do works take?
// Formula: shared area of the works and the circle of radius r, over pi r^2; r = times x stem, kept between least and most.
// Source: AS 4970-2009 3.3.2 judges the share of the zone (READ second-hand); the area is plane geometry (COMPUTED).
// Valid: works with an area; a line without width takes nothing. The circle is whole: nothing is taken off for walls that stop roots.
// Witness: the zone and the works.

import { sharedWithCircle } from "../geometry/circle.ts";
import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Measure } from "../model/reading.ts";
import { areaAt } from "../site/area.ts";
import { groundFigure, type LiveFigure, liveSpot } from "../site/live-figure.ts";

export const shareOfRootZone: Measure = {
  name: "share-of-root-zone",
  dimension: "share",
  roles: { works: "anything with an area", tree: "a tree with its stem" },
  parameters: {
    times: { dimension: "count", default: 1 },
    least: { dimension: "length", default: 0 },
    most: { dimension: "length", default: 1000 },
  },
  phrase: "it takes {found} of the root zone of {tree}",
  shortName: "share of the root zone",
  find: (subject, scene, parameters) => {
    const { works, tree } = subject;
    const figure = works && groundFigure(works);
    if (!figure || tree?.shape?.form !== "point") return { is: "does-not-bear" };
    const stem = propertyOf(tree, "stem");
    if (!isQuantity(stem)) {
      return {
        is: "missing",
        missing: [
          {
            feature: tree,
            property: "girth",
            asks: `the girth of tree "${tree.name}"`,
            dimension: "length",
            why: "missing",
          },
        ],
      };
    }
    const at = liveSpot(tree.shape.at);
    const radius = (read: Read) =>
      Math.min(
        Number(parameters["most"]),
        Math.max(Number(parameters["least"]), Number(parameters["times"]) * read(stem)),
      );
    const value = (read: Read) => shareTaken(figure, at(read), radius(read), read);
    if (value(scene.read) === 0) return { is: "does-not-bear" };
    return {
      is: "found",
      places: [
        {
          key: "zone",
          value,
          witness: (read) => [
            { part: "wanted", form: "circle", points: [at(read)], radius: radius(read), label: "root zone" },
          ],
        },
      ],
    };
  },
};

function shareTaken(figure: LiveFigure, centre: readonly [number, number], radius: number, read: Read): number {
  const area = areaAt(figure, read);
  return area ? sharedWithCircle({ centre, radius }, area) / (Math.PI * radius * radius) : 0;
}
