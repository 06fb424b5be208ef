// What is not in the plan, and which checks wait for it.

import type { Need, NotGiven, Report } from "../model/finding.ts";
import { clean } from "./clean.ts";
import { askedTogether, type AskedTogether } from "./need-groups.ts";
import type { Numbered } from "./grouping.ts";
import { tagRight, wrap } from "./wrap.ts";

/** Lines for all that is asked: what, how many checks wait, the numbers of the findings that wait for it. */
export function needLines(report: Report, told: readonly Numbered[], width: number): readonly string[] {
  return askedTogether(openNeeds(report, told)).flatMap((asked) => {
    const lines = wrap(needWords(asked, told), width, { first: "  -  ", rest: "     " });
    return tagRight(lines, placeOf(asked, report), width);
  });
}

/** The same for a page: one sentence each. */
export function needSentences(report: Report, told: readonly Numbered[]): readonly string[] {
  return askedTogether(openNeeds(report, told)).map((asked) => {
    const place = placeOf(asked, report);
    return `${needWords(asked, told)}${place === "" ? "" : `, ${place}`}`;
  });
}

/** Where the first of them stands in the file. */
function placeOf({ needs }: AskedTogether, report: Report): string {
  const at = needs.find((need) => need.at !== null)?.at;
  return at ? lineWords(at, report) : "";
}

/** Needs that the reader can meet, gravest first; what has no figure, or was searched in vain, is told as a finding. */
export function openNeeds(report: Report, told: readonly Numbered[]): readonly Need[] {
  const ours: ReadonlySet<NotGiven | undefined> = new Set(["no-limit-here", "gave-up"]);
  const toldAlready = (need: Need) =>
    ours.has(need.reason) &&
    told.some(({ finding }) => finding.reason === need.reason && need.waits.includes(finding.rule));
  return report.needs.filter((need) => !toldAlready(need)).sort((a, b) => gravity(a) - gravity(b));
}

/** What can hurt somebody is asked for first. */
function gravity(need: Need): number {
  return need.stakes === "safety" ? 0 : need.stakes === "damage" ? 1 : 2;
}

function needWords({ asks, needs }: AskedTogether, told: readonly Numbered[]): string {
  const [first] = needs;
  if (!first) return "";
  const numbers = told.filter((one) => needs.some((need) => waitsFor(one, need))).map((one) => one.number);
  const count = new Set(needs.flatMap(({ path, waits }) => waits.map((rule) => `${path} ${rule}`))).size;
  const waiting = count === 0 ? "asked once, never judged" : count === 1 ? "1 check waits" : `${count} checks wait`;
  const see = numbers.length === 0 ? "" : `, see ${numbers.join(", ")}`;
  const danger = needs.some(({ stakes }) => stakes === "safety") ? "; somebody can be hurt" : "";
  return `${asks}${tailOf(first)} (${waiting}${see}${danger})`;
}

const reasonTail: Readonly<Record<NotGiven, string>> = {
  missing: "",
  unsaid: ': the plan does not say; put it in, or under "none" if you have looked and there is none',
  "no-limit-here": ": no figure is published for this place; ask there",
  "gave-up": ": our search did not settle it",
};

/** Said only where the question does not say itself what to do. */
function tailOf(need: Need): string {
  return need.asks.includes("under none") || need.waits.length === 0 ? "" : reasonTail[need.reason];
}

/** A finding waits for a need of its own rule, on one of its own features where the need names a place. */
function waitsFor(one: Numbered, need: Need): boolean {
  if (one.finding.verdict !== "not-given" || !need.waits.includes(one.finding.rule)) return false;
  return (
    one.finding.at.length === 0 ||
    one.finding.at.some((at) => need.path.startsWith(at.path) || at.path.startsWith(need.path))
  );
}

function lineWords(at: NonNullable<Need["at"]>, report: Report): string {
  const [plan] = report.plans;
  return report.plans.length === 1 && plan?.file === at.file ? `line ${at.line}` : `${clean(at.file)} line ${at.line}`;
}
