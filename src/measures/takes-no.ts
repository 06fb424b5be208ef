// What: does this tank keep free of a sort of water?
// Formula: 0 where any drain that comes to it, through chambers and other drains, carries that water; else 1.
// Source: the plan.
// Valid: drains joined by the names of their nodes; what a drain carries is what the plan says.
// Witness: the drains that bring it.

import { type Feature, propertyOf } from "../model/plan.ts";
import type { Measure, Scene } from "../model/reading.ts";
import { pointsOf } from "../site/drain-runs.ts";
import { drainsInto } from "../site/drains-into.ts";

export const takesNo: Measure = {
  name: "takes-no",
  dimension: "count",
  roles: { tank: "a septic tank, soakaway or other thing that drains come to" },
  parameters: { water: { words: [], default: "rain" } },
  phrase: "",
  shortName: "keeps free of it",
  shownIn: "yes or no",
  find: (subject, scene, parameters) => {
    const { tank } = subject;
    if (!tank) return { is: "does-not-bear" };
    const drains = drainsInto(tank, (kind) => scene.standing(kind));
    if (drains.length === 0) return { is: "does-not-bear" };
    const words = String(parameters["water"]).split(" or ");
    const unsaid = drains.filter((drain) => propertyOf(drain, "carries") === undefined);
    const bringing = drains.filter((drain) => {
      const carries = propertyOf(drain, "carries");
      return typeof carries === "string" && words.includes(carries);
    });
    if (bringing.length === 0 && unsaid.length > 0)
      return {
        is: "missing",
        missing: unsaid.map((feature) => ({
          feature,
          property: "carries",
          asks: `what drain "${feature.name}" carries`,
          why: "missing",
        })),
      };
    return {
      is: "found",
      places: [
        {
          key: "drains",
          value: () => (bringing.length > 0 ? 0 : 1),
          witness: (read) => bringing.flatMap((drain) => lineOf(drain, read)),
        },
      ],
    };
  },
};

function lineOf(drain: Feature, read: Scene["read"]) {
  const line = drain.shape?.form === "line" ? drain.shape.line : [];
  return [{ part: "found", form: "line", points: pointsOf(line, read), label: drain.name } as const];
}
