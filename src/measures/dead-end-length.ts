// What: how long is a way on which a vehicle cannot turn round?
// Formula: length of the middle line of the way.
// Source: plane geometry.
// Valid: ways on which no manoeuvre of the plan turns round or drives through; whether one succeeds is another rule's.
// Witness: the middle line.

import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { planLength, pointsOf } from "../site/drain-runs.ts";
import { groundNames } from "../site/used-by.ts";

const turning: ReadonlySet<unknown> = new Set(["turn round", "drive through"]);

export const deadEndLength: Measure = {
  name: "dead-end-length",
  dimension: "length",
  roles: { way: "a surface drawn by its middle line" },
  parameters: {},
  phrase: "it is {found} long, and the plan has nothing turn round on it or drive through",
  shortName: "length of the dead end",
  find: ({ way }, scene) => {
    if (way?.shape?.form !== "line" || !isQuantity(propertyOf(way, "width"))) return { is: "does-not-bear" };
    const { line } = way.shape;
    const turned = scene
      .standing("manoeuvres")
      .some((one) => turning.has(propertyOf(one, "does")) && groundNames(one).includes(way.name));
    if (turned) return { is: "does-not-bear" };
    return {
      is: "found",
      places: [
        {
          key: "length",
          value: (read) => planLength(line, read),
          witness: (read) => [{ part: "found", form: "line", points: pointsOf(line, read) }],
        },
      ],
    };
  },
};
