// The sentences under the head: how much is wrong, said once, in words.

import type { Need, Report } from "../model/finding.ts";
import { clean } from "./clean.ts";
import type { Group, Numbered } from "./grouping.ts";
import { askedTogether } from "./need-groups.ts";
import { openNeeds } from "./need-lines.ts";

const oneOrMany: Readonly<Record<Exclude<Group, "departure" | "missing">, readonly [one: string, many: string]>> = {
  hurt: [
    "1 matter can hurt somebody. Settle it before anyone starts.",
    "# matters can hurt somebody. Settle them all before anyone starts.",
  ],
  fails: ["1 thing will not work.", "# things will not work."],
  better: ["1 thing could be better.", "# things could be better."],
  tape: ["1 needs your tape again.", "# need your tape again."],
  build: ["1 leaves too little to build by.", "# leave too little to build by."],
  search: ["1 our search could not settle.", "# our search could not settle."],
  rough: ["For 1 thing the table is too rough.", "For # things the table is too rough."],
  unpublished: ["For 1 thing no figure is published here.", "For # things no figure is published here."],
};

/** Groups that say nothing of a failure. */
const faultless: ReadonlySet<Group> = new Set(["better", "unpublished", "departure", "missing"]);

/** `2 matters can hurt somebody. Settle both before anyone starts. 2 things will not work.` Nothing is said twice. */
export function countSentences(report: Report, told: readonly Numbered[]): string {
  const parts: string[] = [];
  for (const group of Object.keys(oneOrMany) as (keyof typeof oneOrMany)[]) {
    const count = told.filter((one) => one.group === group).length;
    if (count > 0)
      parts.push(
        counted(count, oneOrMany[group]).replace("Settle them all", count === 2 ? "Settle both" : "Settle them all"),
      );
  }
  const asked = askedTogether(openNeeds(report, told)).map(({ needs }) => needs);
  const missing = told.filter((one) => one.group === "missing").length + asked.length;
  const failing = parts.length > 0 && told.some(({ group }) => !faultless.has(group));
  if (missing > 0)
    parts.push(
      missingSentence(
        missing,
        asked.flatMap(([need]) => need ?? []),
      ),
    );
  const checked = report.counts.met + report.counts["no-fault-seen"] + report.counts.departure;
  if (parts.length > 0)
    return [...(failing || checked === 0 ? [] : ["Nothing that was checked fails."]), ...parts].join(" ");
  if (checked === 0) return "Nothing could be checked. That says nothing about the plan.";
  return "No fault was seen in what was checked. Read on for what was not looked at.";
}

/** How many of the things asked for bear on people is said in the head: nobody should start before they are answered. */
function missingSentence(missing: number, open: readonly Need[]): string {
  const grave = open.filter((need) => need.stakes === "safety").length;
  const all = counted(missing, ["1 question stands open", "# questions stand open"]);
  if (grave === 0) return `${all}.`;
  const part = grave === missing ? (grave === 1 ? "it" : "all of them") : String(grave);
  return `${all}; ${part} can hurt somebody: answer ${grave === 1 ? "it" : "them"} before anyone starts.`;
}

function counted(count: number, [one, many]: readonly [string, string]): string {
  return count === 1 ? one : many.replace("#", String(count));
}

/** Departures from rules on which people depend stay in the head, with the name of who agreed. */
export function departureNotices(told: readonly Numbered[]): readonly string[] {
  const grave = told.filter((one) => one.group === "departure" && one.finding.stakes === "safety");
  if (grave.length === 0) return [];
  const list = grave.map(
    (one) => `${one.number}, agreed by ${clean(one.finding.beneath?.agreed_by ?? "") || "nobody named"}`,
  );
  const head =
    grave.length === 1
      ? "1 departure from a rule that keeps people from harm stands"
      : `${grave.length} departures from rules that keep people from harm stand`;
  return [`${head}: ${list.join("; ")}.`];
}
