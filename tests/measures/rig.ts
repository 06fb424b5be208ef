// Runs one measure on one plan, at the plan's own values.

import { readPlain } from "../../src/engine/spread.ts";
import { stageViews } from "../../src/engine/stages.ts";
import { measures } from "../../src/measures/index.ts";
import type { Feature, Plan } from "../../src/model/plan.ts";
import type { Found, Measure, Parameters } from "../../src/model/reading.ts";
import { partsOf } from "../../src/site/parts.ts";
import { planOf } from "../plan/resolved.ts";

export interface Question {
  readonly measure: string;
  /** Names of features or parts by role. */
  readonly subject: Readonly<Record<string, string>>;
  readonly parameters?: Parameters;
}

/** A plan from its keys, with a head. */
export function planWith(keys: Readonly<Record<string, unknown>>): Plan {
  return planOf(
    JSON.stringify({
      sightrail: 1,
      title: "a test",
      place: ["anywhere"],
      as_of: "2026-11-25",
      stages: ["works"],
      ...keys,
    }),
  );
}

/** All that stands at the last stage, with parts. */
export function standingIn(plan: Plan): readonly Feature[] {
  return viewOf(plan).standing;
}

function viewOf(plan: Plan) {
  const read = readPlain(plan.numbers);
  const [view] = stageViews(plan, [plan.stages.length - 1], read, (standing, stage) => partsOf(standing, read, stage));
  if (!view) throw new Error("no stage");
  return view;
}

/** What a measure finds. */
export function findIn(plan: Plan, { measure, subject, parameters = {} }: Question): Found {
  const view = viewOf(plan);
  const found = measures.get(measure) as Measure;
  const named = Object.fromEntries(
    Object.entries(subject).map(([role, name]) => {
      const feature = view.standing.find((one) => one.name === name);
      if (!feature) throw new Error(`no ${name} among ${view.standing.map((one) => one.name).join("; ")}`);
      return [role, feature];
    }),
  );
  const defaults = Object.fromEntries(Object.entries(found.parameters).map(([name, form]) => [name, form.default]));
  return found.find(named, view.scene, { ...defaults, ...parameters });
}

/** The values of all places, least first; an error where nothing was found. */
export function valuesIn(plan: Plan, question: Question): readonly number[] {
  const found = findIn(plan, question);
  if (found.is !== "found")
    throw new Error(JSON.stringify(found.is === "missing" ? found.missing.map((one) => one.asks) : found));
  const read = readPlain(plan.numbers);
  return found.places.map((place) => place.value(read)).sort((a, b) => a - b);
}

/** Properties asked for; an error where nothing is. */
export function askedIn(plan: Plan, question: Question): readonly string[] {
  const found = findIn(plan, question);
  if (found.is !== "missing") throw new Error(found.is);
  return found.missing.map(({ feature, property }) => `${feature.name}/${property}`);
}
