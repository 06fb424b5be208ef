// The plan as it stands at each stage, and the memory that evaluates equal content once.

import type { Path, Position } from "../model/path.ts";
import type { Feature, Plan } from "../model/plan.ts";
import type { Problem } from "../model/problem.ts";
import type { Read } from "../model/quantity.ts";
import type { Scene, Subject } from "../model/reading.ts";
import { keyOfKind } from "../model/kinds.ts";
import { nearestWord } from "../reading/nearest-word.ts";
import type { Outcome } from "./evaluate.ts";
import { standsAt } from "./select.ts";

/** A stage's scene that notes which kinds a measure looked at, so that equal content can be known again. */
export interface StageView {
  readonly stage: number;
  readonly standing: readonly Feature[];
  readonly scene: Scene;
  readonly asked: Set<string>;
  /** Identity of the features of a kind (`*` for all) that stand at this stage. */
  readonly content: (kind: string) => string;
}

/** Mark of what was asked for as it stood before the stage. */
const earlier = "before ";

/** Whether the work of a stage finds a feature standing: there from the start, or finished in an earlier stage. */
function stoodBefore({ from, until, existing, superseded }: Feature, stage: number): boolean {
  const there = from < stage || (from === 0 && existing);
  return there && (until === null || stage < until || (superseded === true && stage === until));
}

/** Of two versions of a feature the earlier. */
function firstOfName(features: readonly Feature[]): readonly Feature[] {
  const named = new Map<string, Feature>();
  for (const feature of features) if (!named.has(feature.name)) named.set(feature.name, feature);
  return [...named.values()];
}

/** Views of the stages asked for. `parts` gives the parts of features that are subjects themselves. */
export function stageViews(
  plan: Plan,
  stages: readonly number[],
  read: Read,
  parts: (standing: readonly Feature[], stage: number) => readonly Feature[],
): readonly StageView[] {
  const nameContent = contentNames();
  const keep = partKeeper();
  return stages.map((stage) => {
    const whole = plan.features.filter((feature) => standsAt(feature, stage));
    const standing = [...whole, ...parts(whole, stage).map(keep)];
    const asked = new Set<string>();
    const lists = new Map<string, readonly Feature[]>([["*", standing]]);
    const before = () => firstOfName(plan.features.filter((feature) => stoodBefore(feature, stage)));
    const ofKind = (key: string): readonly Feature[] => {
      const early = key.startsWith(earlier);
      const kind = early ? key.slice(earlier.length) : key;
      const list =
        lists.get(key) ??
        (key === `${earlier}*` ? before() : featuresOfKind(ofKind(early ? `${earlier}*` : "*"), kind));
      lists.set(key, list);
      return list;
    };
    const contents = new Map<string, string>();
    const content = (key: string): string => {
      const known = contents.get(key) ?? nameContent(ofKind(key));
      contents.set(key, known);
      return known;
    };
    const scene: Scene = {
      stage,
      read,
      site: plan.site ?? null,
      levels: plan.levels,
      standing: (kind) => {
        asked.add(kind ?? "*");
        return ofKind(kind ?? "*");
      },
      before: (kind) => {
        asked.add(earlier + (kind ?? "*"));
        return ofKind(earlier + (kind ?? "*"));
      },
    };
    return { stage, standing, scene, asked, content };
  });
}

/** Whether all that stands at two stages, and all that stood before them, is the same: then nothing that is looked at differs. */
export function isAlike(a: StageView, b: StageView): boolean {
  return a.content("*") === b.content("*") && a.content(`${earlier}*`) === b.content(`${earlier}*`);
}

function featuresOfKind(features: readonly Feature[], kind: string): readonly Feature[] {
  return features.filter((feature) => feature.kind === kind || keyOfKind(feature.kind) === kind);
}

/** A short name for each distinct list of features. */
function contentNames(): (features: readonly Feature[]) => string {
  const numbers = new Map<Feature, number>();
  const names = new Map<string, string>();
  const numberOf = (feature: Feature) => {
    const known = numbers.get(feature) ?? numbers.size;
    numbers.set(feature, known);
    return known;
  };
  return (features) => {
    const list = features.map(numberOf).join(",");
    const name = names.get(list) ?? String(names.size);
    names.set(list, name);
    return name;
  };
}

/** Parts are made anew for each stage; one that says the same as in an earlier stage is that one. */
function partKeeper(): (part: Feature) => Feature {
  const kept = new Map<Feature | undefined, Map<string, Feature>>();
  return (part) => {
    const ofWhole = kept.get(part.partOf) ?? new Map<string, Feature>();
    kept.set(part.partOf, ofWhole);
    const { kind, name, shape, properties, place, from, until, existing } = part;
    const key = JSON.stringify([kind, name, shape, properties, place, from, until, existing]);
    const same = ofWhole.get(key) ?? part;
    ofWhole.set(key, same);
    return same;
  };
}

interface Remembered {
  /** Kinds that were looked at, with what stood of them; one list for all that looked at the same. */
  readonly uses: readonly (readonly [kind: string, content: string])[];
  readonly outcomes: readonly Outcome[];
}

/** What is remembered of a feature alone, and of each feature beside it. */
interface OfFirst {
  alone: Remembered[] | null;
  readonly beside: Map<Feature, Remembered[]>;
}

type Remember = (subject: Subject, view: StageView, work: () => readonly Outcome[]) => readonly Outcome[];

/** Evaluates each subject of one rule once for each distinct content. */
export function rememberer(): Remember {
  const memory = new Map<Feature, OfFirst>();
  const usesOf = sharedUses();
  return (subject, view, work) => {
    const kept = keptOf(memory, Object.values(subject));
    const known = kept.find(({ uses }) => uses.every(([kind, content]) => view.content(kind) === content));
    if (known) return known.outcomes;
    view.asked.clear();
    const outcomes = work();
    kept.push({ uses: usesOf(view), outcomes });
    return outcomes;
  };
}

function keptOf(memory: Map<Feature, OfFirst>, [first, second]: readonly (Feature | undefined)[]): Remembered[] {
  const ofFirst = memory.get(first as Feature) ?? { alone: null, beside: new Map<Feature, Remembered[]>() };
  memory.set(first as Feature, ofFirst);
  if (!second) return (ofFirst.alone ??= []);
  const kept = ofFirst.beside.get(second) ?? [];
  ofFirst.beside.set(second, kept);
  return kept;
}

/** What was looked at, as a list that is shared with all that looked at the same. */
function sharedUses(): (view: StageView) => Remembered["uses"] {
  const shared = new Map<string, Remembered["uses"]>();
  return (view) => {
    const uses = [...view.asked].map((kind) => [kind, view.content(kind)] as const);
    const key = uses.join();
    const same = shared.get(key) ?? uses;
    shared.set(key, same);
    return same;
  };
}

/** Index of the stage asked for; null for all; a problem where there is none of that name. */
export function stageIndex(
  plan: Plan,
  name: string | undefined,
  locate: (path: Path) => Position,
): number | null | Problem {
  if (name === undefined) return null;
  const index = plan.stages.indexOf(name);
  if (index >= 0) return index;
  const expected = `one of the plan's stages: ${plan.stages.join(", ")}`;
  const near = nearestWord(name, plan.stages);
  const hint = near === null ? "write the stage as the plan does" : `did you mean "${near}"?`;
  return { code: "unknown-name", file: plan.file, ...locate(["stages"]), expected, got: `"${name}"`, hint };
}
