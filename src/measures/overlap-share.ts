// What: what part of this thing's ground does the other take?
// Formula: shared area over the thing's own area.
// Source: plane geometry (polygon intersection on a 1e-6 m grid).
// Valid: things with an area; a line without width takes nothing.
// Witness: the shared ground.

import { intersection } from "../geometry/overlay.ts";
import { type Polygon, polygonArea, totalArea } from "../geometry/polygon.ts";
import type { Read } from "../model/quantity.ts";
import type { Measure } from "../model/reading.ts";
import { areaAt } from "../site/area.ts";
import { groundFigure } from "../site/live-figure.ts";

export const overlapShare: Measure = {
  name: "overlap-share",
  dimension: "share",
  roles: { thing: "anything with an area", other: "anything with an area" },
  parameters: {},
  phrase: "{other} takes {found} of it",
  shortName: "part taken",
  find: (subject, scene) => {
    const thing = subject["thing"] && groundFigure(subject["thing"]);
    const other = subject["other"] && groundFigure(subject["other"]);
    if (!thing || !other) return { is: "does-not-bear" };
    const shared = (read: Read): readonly Polygon[] => {
      const own = areaAt(thing, read);
      const its = areaAt(other, read);
      return own && its ? (intersection([own], [its]) ?? []) : [];
    };
    const value = (read: Read) => {
      const own = areaAt(thing, read);
      return own ? totalArea(shared(read)) / polygonArea(own) : 0;
    };
    if (!areaAt(thing, scene.read) || !areaAt(other, scene.read) || value(scene.read) === 0)
      return { is: "does-not-bear" };
    return {
      is: "found",
      places: [
        {
          key: "shared",
          value,
          witness: (read) =>
            shared(read).map((polygon) => ({ part: "found", form: "outline", points: polygon.outline })),
        },
      ],
    };
  },
};
