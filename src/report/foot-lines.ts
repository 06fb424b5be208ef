// The foot of the report: what is met and what that is worth, what was assumed, what was not looked at.

import type { Finding, Report } from "../model/finding.ts";
import { capital, clean, sentence } from "./clean.ts";
import { chanceOfOneWrong, onlyJustMet } from "./chance.ts";
import type { Numbered } from "./grouping.ts";
import { foundWords } from "./found-words.ts";
import { requirementWords, wantedIsTold } from "./standing-words.ts";
import type { TextOptions } from "./text-options.ts";
import { wrap } from "./wrap.ts";

/** From this chance on that at least one is wrong, the reader is told. */
const worthSaying = 0.2;

export interface Foot {
  readonly told: readonly Numbered[];
  readonly width: number;
  readonly options: TextOptions;
}

/** The lines below the findings. They are never left out. */
export function footLines(report: Report, foot: Foot): readonly string[] {
  const { width, told, options } = foot;
  const more = clean(options.more ?? "");
  return [
    ...footParagraphs(report, told).flatMap((paragraph) => wrap(paragraph, width)),
    ...(options.all ? listed(report, width) : []),
    ...(more === "" ? [] : wrap(more, width)),
  ];
}

/** What stands below the findings of every report, each a paragraph. */
export function footParagraphs(report: Report, told: readonly Numbered[]): readonly string[] {
  return [
    ...report.plans.flatMap(({ goes = [] }) => goes.map(clean)),
    metWords(report),
    ...chanceWords(report),
    ...assumedWords(report),
    notLookedAt(report),
    sureness(report),
    ...lookUp(told),
  ];
}

function metWords(report: Report): string {
  const { counts } = report;
  const screens = counts["no-fault-seen"];
  const met = counts.met + screens;
  const all = met + counts["not-met"] + counts.undecided + counts["not-given"] + counts.departure;
  const screened =
    screens === 0
      ? ""
      : `, ${screens} of them only ${screens === 1 ? "a screen" : "screens"}: no fault seen, which is not the same as sound`;
  const idle = counts["does-not-bear"];
  const aside = idle === 0 ? "" : ` ${idle} more ${idle === 1 ? "does" : "do"} not bear on this plan.`;
  return `MET: ${met} of ${all} checks${screened}.${aside}`;
}

function chanceWords(report: Report): readonly string[] {
  const count = onlyJustMet(report.findings);
  const chance = chanceOfOneWrong(count);
  if (chance < worthSaying) return [];
  const parts = Math.round(chance * 100);
  return [
    `${count} of these are only just met. If each is right 95 times in 100, then ${parts} times in 100 at least one of them is wrong.`,
  ];
}

function assumedWords(report: Report): readonly string[] {
  return report.assumed.length === 0
    ? []
    : [`ASSUMED, because the plan does not say: ${report.assumed.map(clean).join("; ")}.`];
}

/** What no plan of measurements can tell. */
const neverLookedAt = [
  "what lies in the ground",
  "the strength of what is built",
  "who owns what, and permits",
  "anything not drawn",
];

function notLookedAt(report: Report): string {
  return `NOT LOOKED AT: ${[...report.not_checked.map(clean), ...neverLookedAt].join("; ")}.`;
}

function sureness(report: Report): string {
  const owner = "Local rules, the owner of the service and licensed people decide.";
  const sure = "Where this sheet is sure, it is sure of the measurement, never of the ground.";
  return report.counts.met + report.counts["no-fault-seen"] > 0
    ? `${sure} ${owner}`
    : `This sheet judges measurements, never the ground. ${owner}`;
}

function lookUp(told: readonly Numbered[]): readonly string[] {
  const recalled = told.some(({ finding }) => finding.wanted?.source?.seen === "memory");
  return recalled ? ['"Recalled": written from memory, the page was not seen. Look it up before you rely on it.'] : [];
}

/** What is met and what does not bear, one line each, for who asks. */
function listed(report: Report, width: number): readonly string[] {
  const met = report.findings.filter((finding) => finding.verdict === "met" || finding.verdict === "no-fault-seen");
  const aside = report.findings.filter((finding) => finding.verdict === "does-not-bear");
  const indent = { first: "  -  ", rest: "     " };
  return [
    ...(met.length === 0
      ? []
      : ["", "MET, ONE BY ONE", ...met.flatMap((finding) => wrap(metLine(finding), width, indent))]),
    ...(aside.length === 0
      ? []
      : [
          "",
          "DOES NOT BEAR ON THIS PLAN",
          ...aside.flatMap((finding) => wrap(sentence(finding.sentence), width, indent)),
        ]),
  ];
}

/** What is met, with its numbers; the sentence may have said them already. */
function metLine(finding: Finding): string {
  const screen = finding.verdict === "no-fault-seen" ? " A screen: no fault seen." : "";
  const told = wantedIsTold(finding);
  const wanted = told ? "" : requirementWords(finding);
  const numbers = told ? "" : [foundWords(finding), wanted === "" ? "" : ` ${capital(wanted)} is wanted.`].join("");
  return [sentence(finding.sentence), numbers].filter((part) => part !== "").join(" ") + screen;
}
