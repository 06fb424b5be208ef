// Needs: what must be measured or said before a rule can decide, each once, worst stakes first.

import type { Stakes } from "../model/card.ts";
import type { Need, NotGiven } from "../model/finding.ts";
import { askWords } from "../model/property-words.ts";
import { papers } from "../model/papers.ts";
import { featureWords, type Plan } from "../model/plan.ts";
import { dayNumber } from "../site/days.ts";
import { pathText, type Place, type Position } from "../model/path.ts";
import { baseUnit } from "../model/units.ts";
import { placeInFile } from "./compose.ts";
import type { Outcome } from "./evaluate.ts";

const stakesOrder: readonly Stakes[] = ["safety", "damage", "nuisance"];

/** A need before it is gathered with its like. */
export interface OpenNeed {
  readonly path: string;
  readonly asks: string;
  readonly unit: string;
  readonly rule: string;
  readonly stakes: Stakes;
  readonly reason: NotGiven;
  readonly place: Place | null;
  /** Needs of one sort are asked for as one: which sort, and what this one adds to the list. */
  readonly together?: { readonly sort: string; readonly item: string };
  /** Asked in the words that any rule would ask for the property with: whoever asks more closely asks for this too. */
  readonly plain?: true;
}

/** What the plan can list as looked for and not there. */
export const hazards = "hazards";
/** Whether things stand already. */
const standing = "existing";

/** Needs of a not-given outcome. */
export function needsOf(outcome: Outcome): readonly OpenNeed[] {
  const { card } = outcome;
  const stakes: Stakes = outcome.grade === "should" ? "nuisance" : card.stakes;
  if (outcome.missing.length > 0) {
    return outcome.missing.map((missing) => {
      const path = [...missing.feature.place.path, ...missing.property.split(".")];
      return {
        path: pathText(path),
        asks: missing.asks,
        unit: missing.dimension ? baseUnit[missing.dimension] : "",
        rule: card.id,
        stakes,
        reason: "missing",
        place: { file: missing.feature.place.file, path },
        ...(missing.asks === askWords(missing.property, featureWords(missing.feature)) ? { plain: true as const } : {}),
        ...(missing.tried ? { together: { sort: missing.property, item: featureWords(missing.feature) } } : {}),
      };
    });
  }
  const about = outcome.subject[card.about.role];
  const asks =
    outcome.reason === "no-limit-here"
      ? `a figure from the local authority: ${card.asks}`
      : `another way to decide: ${card.asks}`;
  return [
    {
      path: about ? pathText(about.place.path) : "",
      asks,
      unit: baseUnit[outcome.measure.dimension],
      rule: card.id,
      stakes,
      reason: outcome.reason ?? "missing",
      place: about?.place ?? null,
    },
  ];
}

/** One question of several needs; of one, its own. */
interface Gathered {
  readonly need: OpenNeed;
  readonly paths: Set<string>;
  readonly waits: Set<string>;
  readonly items: Set<string>;
  stakes: Stakes;
}

/** What needs must share to be one question. */
const keyOf = ({ together, path, asks }: OpenNeed): string => together?.sort ?? `${path}\n${asks}`;

/** Gathers needs by path and question; who waits is listed once; worst stakes first, then most waiting, then path. */
export function gatherNeeds(open: readonly OpenNeed[], locate: (place: Place) => Position): readonly Need[] {
  const byKey = new Map<string, Gathered>();
  const closer = new Map(open.flatMap((need) => (need.plain && !need.together ? [] : [[need.path, keyOf(need)]])));
  for (const need of open) {
    const key = (need.plain ? closer.get(need.path) : undefined) ?? keyOf(need);
    const met = byKey.get(key);
    const asked = met?.need.plain && !need.plain ? need : (met?.need ?? need);
    const entry: Gathered = met
      ? { ...met, need: asked }
      : {
          need,
          paths: new Set(),
          waits: new Set(),
          items: new Set(),
          stakes: need.stakes,
        };
    entry.waits.add(need.rule);
    entry.paths.add(need.path);
    if (need.together) entry.items.add(need.together.item);
    if (stakesOrder.indexOf(need.stakes) < stakesOrder.indexOf(entry.stakes)) entry.stakes = need.stakes;
    byKey.set(key, entry);
  }
  return [...byKey.values()]
    .map(({ need, waits, stakes, items, paths }) => ({
      path: sharedPath([...paths]),
      asks: need.together ? askTogether(need.together.sort, [...items], need.asks) : need.asks,
      unit: need.unit,
      waits: [...waits].sort((a, b) => (a < b ? -1 : 1)),
      stakes,
      reason: need.reason,
      at: need.place ? placeInFile(need.place, locate) : null,
    }))
    .sort(
      (a, b) =>
        stakesOrder.indexOf(a.stakes) - stakesOrder.indexOf(b.stakes) ||
        b.waits.length - a.waits.length ||
        (a.path < b.path ? -1 : a.path > b.path ? 1 : a.asks < b.asks ? -1 : 1),
    );
}

/** The keys that all paths begin with: `trees` of two trees. */
function sharedPath(paths: readonly string[]): string {
  const [first = "", ...others] = paths;
  if (others.length === 0) return first;
  const keys = first.split("/");
  const shared = keys.findIndex((key, k) => others.some((other) => other.split("/")[k] !== key));
  return keys.slice(0, shared < 0 ? keys.length : shared).join("/");
}

/** One question of several things. */
function askTogether(sort: string, items: readonly string[], alone: string): string {
  if (sort === standing) {
    const which = items.length > 1 ? `which of these are there already and which are new: ${items.join(", ")}` : alone;
    return `${which}. Write existing: true, or from: with the stage that makes it (existing: false where the plan has no stages)`;
  }
  if (items.length < 2) return alone;
  if (sort !== hazards) return `${askWords(sort, "each of these")}: ${items.join(", ")}`;
  return `what of this is there: ${items.join(", ")}. Draw what there is, and put the rest, in these words, under none if it was looked for`;
}

/** The papers that nobody has said were looked at, as one question; null where all were. */
function papersNeed(seen: readonly string[], file: string): Need | null {
  const open = Object.keys(papers).filter((paper) => !seen.includes(paper));
  if (open.length === 0) return null;
  const asks = `whether the papers were looked at before the spade: ${open.map((paper) => papers[paper] ?? paper).join("; ")}. Put those that were under papers`;
  return {
    path: "papers",
    asks,
    unit: "",
    waits: [],
    stakes: "nuisance",
    reason: "unsaid",
    at: { file, path: "papers", line: 1, column: 1 },
  };
}

/** Days after which the day in `as_of` is asked about. */
const oldFrom = 365;

/** A day in `as_of` that lies long before today, asked about: departures and dates were judged on it; null otherwise. */
function agedNeed(plan: Plan, judgedOn: string, today: string): Need | null {
  const [then, now] = [dayNumber(judgedOn), dayNumber(today)];
  if (then === null || now === null || now - then <= oldFrom) return null;
  const asks = `whether all is still as it was on ${judgedOn}, the day in as_of, ${now - then} days ago: dates and agreed departures were judged on that day and may have run out since. Write the day of today, or leave as_of out`;
  return {
    path: "as_of",
    asks,
    unit: "",
    waits: [...new Set(plan.departures.map(({ rule }) => rule))].sort(),
    stakes: plan.departures.length > 0 ? "safety" : "damage",
    reason: "missing",
    at: { file: plan.file, path: "as_of", line: 1, column: 1 },
  };
}

/** What is asked of the plan as a whole, besides what its rules wait for. */
export function planNeeds(
  needs: readonly Need[],
  about: { readonly plan: Plan; readonly asOf: string; readonly today: string; readonly papers: readonly string[] },
): readonly Need[] {
  const aged = agedNeed(about.plan, about.asOf, about.today);
  const papers = papersNeed(about.papers, about.plan.file);
  return [...(aged ? [aged] : []), ...needs, ...(papers ? [papers] : [])];
}
