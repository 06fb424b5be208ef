// What: in how many closed months is a hedge or tree cut or taken out, where the plan says so by a change or by taking it away?
// Formula: closed months among those of the jobs on it, else among the months under its own `cut_in`, counted once each.
// Source: the plan's own dates.
// Valid: whole months. What jobs that clear or fell do to it is judged by the rule about jobs.
// Witness: none.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure, Scene } from "../model/reading.ts";
import { closedMonths, monthsIn, monthsOfJob, seasonOf, seasonParameters } from "../site/closed-season.ts";
import { namesIn } from "../site/days.ts";

/** What shears and saws change of it. */
const shapedBy = ["height", "width", "kept_at", "gaps", "crown", "clearance_under"] as const;

/** Jobs that another rule judges. */
const judgedAsJobs: ReadonlySet<unknown> = new Set(["clear", "fell"]);

export const monthsCut: Measure = {
  name: "months-cut",
  dimension: "count",
  roles: { thing: "a tree or hedge" },
  parameters: seasonParameters,
  phrase: "it is cut or taken out in {found} of the closed months",
  shortName: "months in the closed season",
  find: (subject, scene, parameters) => {
    const { thing } = subject;
    if (!thing || !(isTakenAway(thing) || isCut(thing, scene))) return { is: "does-not-bear" };
    const jobs = scene.standing("job").filter((job) => namesIn(job, "on").includes(thing.name));
    if (jobs.some((job) => judgedAsJobs.has(propertyOf(job, "does")))) return { is: "does-not-bear" };
    const worked = jobs.flatMap((job) => monthsOfJob(job, scene.read) ?? []);
    const months = worked.length > 0 ? worked : monthsIn(propertyOf(thing, "cut_in"), scene.read);
    if (months) return { is: "found", places: [closedMonths(months, seasonOf(parameters))] };
    const does = isTakenAway(thing) ? "taken out" : "cut";
    const asks = `in which months ${featureWords(thing)} is ${does}`;
    return { is: "missing", missing: [{ feature: thing, property: "cut_in", asks, why: "missing" }] };
  },
};

/** Whether the plan takes it away at some stage. */
function isTakenAway({ until, superseded }: Feature): boolean {
  return until !== null && superseded !== true;
}

/** Whether this stage's changes give it another line, height, width or crown. */
function isCut(thing: Feature, scene: Scene): boolean {
  if (thing.from !== scene.stage) return false;
  const before = scene.before(thing.kind).find((one) => one.name === thing.name);
  if (!before || before === thing || before.superseded !== true) return false;
  const told = (feature: Feature) =>
    JSON.stringify([feature.shape, ...shapedBy.map((key) => feature.properties[key])], (_, value) =>
      isQuantity(value) ? scene.read(value) : value,
    );
  return told(before) !== told(thing);
}
