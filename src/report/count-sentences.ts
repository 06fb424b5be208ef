// The sentences under the head: how much is wrong, said once, in words.

import type { Need, Report } from "../model/finding.ts";
import { clean } from "./clean.ts";
import { standingVerdict, type Group, type Numbered } from "./grouping.ts";
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
    if (count > 0) parts.push(group === "hurt" ? hurtSentence(told, count) : countedMore(group, count, told));
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

/** `7 matters can hurt somebody; for 2 of them no figure is published here. Settle them all ...`: an unknown is told as one. */
function hurtSentence(told: readonly Numbered[], count: number): string {
  const words = counted(count, oneOrMany.hurt).replace(
    "Settle them all",
    count === 2 ? "Settle both" : "Settle them all",
  );
  const open = (Object.keys(openWords) as (keyof typeof openWords)[]).flatMap((group) => {
    const many = told.filter((one) => one.group === "hurt" && openGroup(one) === group).length;
    return many === 0 ? [] : [openWords[group].replace("#", ofThem(many, count))];
  });
  return open.length === 0 ? words : words.replace(". ", `; ${open.join(", ")}. `);
}

/** `it` of one, `both of them`, `all of them`, else `2 of them`. */
function ofThem(many: number, all: number): string {
  if (all === 1) return "it";
  if (many < all) return `${many} of them`;
  return all === 2 ? "both of them" : "all of them";
}

const openWords = {
  unpublished: "for # no figure is published here",
  missing: "for # the plan does not say enough",
  tape: "for # your measurements cannot say",
  build: "for # ordinary building is not close enough",
  search: "for # our search cannot say",
  rough: "for # the table is too rough",
} as const;

/** Which unknown a matter that can hurt somebody is; null where it is known to fail. */
function openGroup({ finding }: Numbered): keyof typeof openWords | null {
  if (finding.reason === "no-limit-here") return "unpublished";
  if (finding.reason === "gave-up") return "search";
  if (finding.verdict === "not-given") return "missing";
  if (standingVerdict(finding) !== "undecided") return null;
  const { decided_by: by } = finding;
  return by === "build" ? "build" : by === "limit" ? "rough" : by === "method" ? "search" : "tape";
}

/** Unknowns that stand among what can hurt somebody are not counted again: the rest are so many more. */
function countedMore(group: Exclude<keyof typeof oneOrMany, "hurt">, count: number, told: readonly Numbered[]): string {
  const words = counted(count, oneOrMany[group]);
  const isAlso = told.some((one) => one.group === "hurt" && openGroup(one) === group);
  return isAlso
    ? words.replace(/^(For )?(\d+)( things?)?/, (_, lead = "", number, things = "") => `${lead}${number} more${things}`)
    : words;
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
