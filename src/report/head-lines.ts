// The head of the text report: which plan, which stage, which rules, which day.

import type { PlanHead, Report } from "../model/finding.ts";
import { clean } from "./clean.ts";
import { dateWords } from "./dates.ts";
import { placeWords, type PlaceNames } from "./standing-words.ts";
import { spread } from "./wrap.ts";

/** One line for each plan, then the rules and the day. */
export function headLines(report: Report, width: number, names: PlaceNames = {}): readonly string[] {
  const { plans, common } = headPieces(report, names);
  const shouted = plans.map(([title = "", ...rest]) => [title.toUpperCase(), ...rest]);
  const [only] = shouted;
  if (only && shouted.length === 1) return spread([...only, ...common], width);
  return [...shouted.flatMap((pieces) => spread(pieces, width)), ...spread(common, width)];
}

/** The pieces of the head: for each plan its title, stage and file; for all the rules, the options and the day. */
export function headPieces(
  report: Report,
  names: PlaceNames,
): { readonly plans: readonly (readonly string[])[]; readonly common: readonly string[] } {
  const options = report.options.map((option) => `"${clean(option)}"`);
  return {
    plans: report.plans.map(planPieces),
    common: [
      `rules of: ${placesWords(report.place, names)}`,
      ...(options.length === 0 ? [] : [`${options.length === 1 ? "option" : "options"}: ${options.join(", ")}`]),
      `as of ${dateWords(report.as_of)}`,
    ],
  };
}

function planPieces(plan: PlanHead): readonly string[] {
  return [clean(plan.title) || "a plan without a title", ...stagePiece(plan), `plan: ${clean(plan.file)}`];
}

function stagePiece(plan: PlanHead): readonly string[] {
  const many = plan.stages.length;
  if (plan.stage === null) return many > 1 ? [many === 2 ? "both stages" : `all ${many} stages`] : [];
  const place = plan.stages.indexOf(plan.stage) + 1;
  return [place > 0 ? `stage ${place} of ${many} "${clean(plan.stage)}"` : `stage "${clean(plan.stage)}"`];
}

/** `England, and any place`; places that no rule is known for are left out where `names` tells which are known. */
export function placesWords(places: readonly string[], names: PlaceNames): string {
  const asked = places.filter((place) => place !== "anywhere");
  const known = Object.keys(names).length === 0 ? asked : asked.filter((place) => Object.hasOwn(names, place));
  if (known.length > 0) return `${known.map((place) => placeWords(place, names)).join(", ")}, and any place`;
  return asked.length === 0 ? "any place (the plan names none)" : "any place (the plan names none that is known)";
}
