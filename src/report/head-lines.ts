// The head of the text report: which plan, which stage, which rules, which day.

import type { PlanHead, Report } from "../model/finding.ts";
import { clean } from "./clean.ts";
import { dateWords } from "./dates.ts";
import { placeWords, type PlaceNames } from "./standing-words.ts";
import { spread } from "./wrap.ts";

/** One line for each plan, then the rules and the day. */
export function headLines(report: Report, width: number, names: PlaceNames = {}): readonly string[] {
  const common = [`rules of: ${placesWords(report.place, names)}`];
  const options = report.options.map((option) => `"${clean(option)}"`);
  if (options.length > 0) common.push(`${options.length === 1 ? "option" : "options"}: ${options.join(", ")}`);
  common.push(`as of ${dateWords(report.as_of)}`);
  const [only] = report.plans;
  if (only && report.plans.length === 1) return spread([...planPieces(only), ...common], width);
  return [...report.plans.flatMap((plan) => spread(planPieces(plan), width)), ...spread(common, width)];
}

function planPieces(plan: PlanHead): readonly string[] {
  const title = clean(plan.title).toUpperCase() || "A PLAN WITHOUT A TITLE";
  return [title, ...stagePiece(plan), `plan: ${clean(plan.file)}`];
}

function stagePiece(plan: PlanHead): readonly string[] {
  const many = plan.stages.length;
  if (plan.stage === null) return many > 1 ? [`all ${many} stages`] : [];
  const place = plan.stages.indexOf(plan.stage) + 1;
  return [place > 0 ? `stage ${place} of ${many} "${clean(plan.stage)}"` : `stage "${clean(plan.stage)}"`];
}

/** `England, and any place`. */
export function placesWords(places: readonly string[], names: PlaceNames): string {
  const named = places.filter((place) => place !== "anywhere").map((place) => placeWords(place, names));
  return named.length === 0 ? "any place (the plan names none)" : `${named.join(", ")}, and any place`;
}
