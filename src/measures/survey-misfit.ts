// What: by how much more than their doubt do the measurements of the survey miss each other?
// Formula: z with 2 (1 - Phi(z)) = the chance that honest measurements miss by as much, of the whole or of the worst one.
// Source: chi-square and single residuals of a least-squares adjustment (Baarda 1968, MEMORY).
// Valid: where something is measured twice; a plan in which nothing is cannot show a blunder at all.
// Witness: none.

import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";

export const surveyMisfit: Measure = {
  name: "survey-misfit",
  dimension: "count",
  roles: { survey: "the survey of the plan" },
  parameters: {},
  phrase: "the worst misfit is {found} times what their doubt explains",
  shortName: "misfit of the tapes",
  find: (subject) => {
    const { survey } = subject;
    const misfit = survey && propertyOf(survey, "misfit");
    const suspects = survey && propertyOf(survey, "suspects");
    if (!isQuantity(misfit)) return { is: "does-not-bear" };
    const where = typeof suspects === "string" && suspects !== "" ? { where: suspects } : {};
    return { is: "found", places: [{ key: "misfit", value: (read) => read(misfit), witness: () => [], ...where }] };
  },
};
