// Needs: what must be measured or said before a rule can decide, each once, worst stakes first.

import type { Stakes } from "../model/card.ts";
import type { Need, NotGiven } from "../model/finding.ts";
import { papers } from "../model/papers.ts";
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
}

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
        reason: missing.why,
        place: { file: missing.feature.place.file, path },
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

/** Gathers needs by path and question; who waits is listed once; worst stakes first, then most waiting, then path. */
export function gatherNeeds(open: readonly OpenNeed[], locate: (place: Place) => Position): readonly Need[] {
  const byKey = new Map<string, { need: OpenNeed; waits: Set<string>; stakes: Stakes }>();
  for (const need of open) {
    const key = `${need.path}\n${need.asks}`;
    const entry = byKey.get(key) ?? { need, waits: new Set<string>(), stakes: need.stakes };
    entry.waits.add(need.rule);
    if (stakesOrder.indexOf(need.stakes) < stakesOrder.indexOf(entry.stakes)) entry.stakes = need.stakes;
    byKey.set(key, entry);
  }
  return [...byKey.values()]
    .map(({ need, waits, stakes }) => ({
      path: need.path,
      asks: need.asks,
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

/** The papers that nobody has said were looked at, as one question; null where all were. */
export function papersNeed(seen: readonly string[], file: string): Need | null {
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
