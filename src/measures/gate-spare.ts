// What: how much wider is a gateway than the vehicle that goes through it?
// Formula: clear width less the width of the body.
// Source: the plan.
// Valid: driven through straight; mirrors are not counted.
// Witness: the gateway.

import { featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { liveSpot } from "../site/live-figure.ts";
import { goesThrough, vehicleOf } from "../site/used-by.ts";

export const gateSpare: Measure = {
  name: "gate-spare",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre", gate: "a gate that it goes through" },
  parameters: {},
  phrase: "{gate} is {found} wider than the vehicle",
  below: { phrase: "{gate} is {found} narrower than the vehicle", wanted: "wider" },
  shortName: "wider than the vehicle",
  find: ({ manoeuvre, gate }, scene) => {
    if (!manoeuvre || !gate || !goesThrough(manoeuvre, gate, scene)) return { is: "does-not-bear" };
    const vehicle = vehicleOf(manoeuvre, scene);
    if (!vehicle) return { is: "does-not-bear" };
    const [clear, width] = [propertyOf(gate, "clear"), propertyOf(vehicle, "width")];
    if (isQuantity(clear) && isQuantity(width))
      return {
        is: "found",
        places: [
          {
            key: "gateway",
            value: (read) => read(clear) - read(width),
            witness: (read) =>
              gate.shape?.form === "line"
                ? [{ part: "found", form: "line", points: gate.shape.line.map((spot) => liveSpot(spot)(read)) }]
                : [],
          },
        ],
      };
    return {
      is: "missing",
      missing: [
        { lacks: !isQuantity(clear), feature: gate, property: "clear", words: "clear width" },
        { lacks: !isQuantity(width), feature: vehicle, property: "width", words: "width" },
      ].flatMap(({ lacks, feature, property, words }) =>
        lacks
          ? [
              {
                feature,
                property,
                asks: `the ${words} of ${featureWords(feature)}`,
                dimension: "length",
                why: "missing",
              },
            ]
          : [],
      ),
    };
  },
};
