// What: how old is what was found out about a thing on the day that work on it begins?
// Formula: first day of the first job of the kind asked for on the thing, less the date the plan gives.
// Source: the plan's own dates.
// Valid: whole days; below 0 where it is to be found out only after the work has begun.
// Witness: none.

import { featureWords, propertyOf } from "../model/plan.ts";
import { askWords } from "../model/property-words.ts";
import type { Measure, Missing } from "../model/reading.ts";
import { dayNumber, namesIn, startOf } from "../site/days.ts";

const day = 86_400;

export const ageAtWork: Measure = {
  name: "age-at-work",
  dimension: "time",
  roles: { thing: "anything with a date that a job is done on" },
  parameters: { property: { words: [], default: "" }, job: { words: [], default: "dig" } },
  phrase: "it is {found} old when the work begins",
  shortName: "age when the work begins",
  shownIn: "days",
  find: (subject, scene, parameters) => {
    const { thing } = subject;
    if (!thing) return { is: "does-not-bear" };
    const property = String(parameters["property"]);
    const wanted = String(parameters["job"]).split(" or ");
    const date = dayNumber(propertyOf(thing, property));
    const jobs = scene
      .standing("jobs")
      .filter(
        (job) => namesIn(job, "does").some((does) => wanted.includes(does)) && namesIn(job, "on").includes(thing.name),
      );
    const starts = jobs.flatMap((job) => startOf(job) ?? []);
    const missing: Missing[] = [];
    if (date === null)
      missing.push({
        feature: thing,
        property,
        asks: askWords(property, featureWords(thing)),
        why: "unsaid",
      });
    const [first] = jobs;
    if (first && starts.length === 0)
      missing.push({
        feature: first,
        property: "starts",
        asks: `the day on which ${featureWords(first)} starts`,
        why: "missing",
      });
    if (missing.length > 0) return { is: "missing", missing };
    if (date === null || starts.length === 0) return { is: "does-not-bear" };
    const age = (Math.min(...starts) - date) * day;
    return { is: "found", places: [{ key: property, value: () => age, witness: () => [] }] };
  },
};
