// When each feature stands: stages by index, and a second version of what a stage changes.

import { nearestWord } from "../reading/nearest-word.ts";
import { kinds } from "../model/kinds.ts";
import { child, items, laidOver, textOf, textsOf, without, type Node } from "./node.ts";
import { changesOf, reportIfAbsent, sameFeature } from "./options.ts";
import { allEntries, firstAt, type FeatureText, type Texts } from "./sources.ts";
import { isAddedByOption, isPlainlyFound, isReworkedByOption, takesMoreGround } from "./standing.ts";
import type { Troubles } from "./troubles.ts";

/** One version of a feature with its span of stages. */
export interface Version extends FeatureText {
  readonly existing: boolean;
  readonly standingUnsaid?: boolean;
  readonly reworked?: boolean;
  readonly from: number;
  readonly until: number | null;
  readonly superseded: boolean;
}

/** Names of the stages in order; a plan without them has one, `now`. */
export function stageNames(texts: Texts): readonly string[] {
  const named = items(firstAt(texts, "stages")).flatMap((node) => textOf(node) ?? []);
  return named.length > 0 ? [...new Set(named)] : ["now"];
}

interface StageWork {
  readonly stages: readonly string[];
  readonly troubles: Troubles;
}

function stageAt(node: Node, { stages, troubles }: StageWork): number | null {
  const name = textOf(node) ?? "";
  const index = stages.indexOf(name);
  if (index >= 0) return index;
  const near = nearestWord(name, stages);
  return troubles.report(node, {
    code: "unknown-name",
    expected: `one of the stages: ${stages.join(", ")}`,
    got: `"${name}"`,
    hint: near === null ? "write it under stages" : `did you mean "${near}"?`,
  });
}

/** The span of a feature as written; null (and a problem) where it says two things, or names no stage of the plan. */
function spanOf(feature: FeatureText, work: StageWork): Version | null {
  const { node } = feature;
  const [fromNode, untilNode, existingNode] = [child(node, "from"), child(node, "until"), child(node, "existing")];
  if (feature.kind === "manoeuvres" && child(node, "stages") !== null) return spanOfStages(feature, work);
  const from = fromNode === null ? 0 : stageAt(fromNode, work);
  const until = untilNode === null ? null : stageAt(untilNode, work);
  if (from === null || (untilNode !== null && until === null)) return null;
  const existing = fromNode === null && existingNode?.data !== false && !isAddedByOption(node);
  if (fromNode !== null && existingNode?.data === true) {
    contradiction(existingNode, work, {
      got: `existing: true, and from: ${textOf(fromNode) ?? ""}`,
      hint: "keep the one that is true: it stands already, or it is still to be made",
    });
  }
  if (until !== null && until <= from) {
    const got = `until ${work.stages[until] ?? ""}, when it is ${existing ? "there" : "finished"} from ${work.stages[from] ?? ""}`;
    contradiction(untilNode as Node, work, {
      got,
      hint: "it is taken away at the start of that stage: name a later one",
    });
    return null;
  }
  const said = fromNode !== null || untilNode !== null || existingNode !== null || isPlainlyFound(node);
  return {
    ...feature,
    existing,
    from,
    until,
    superseded: false,
    ...(existing && !said ? { standingUnsaid: true } : {}),
    ...(existing && isReworkedByOption(node) ? { reworked: true } : {}),
  };
}

/** A manoeuvre that names its stages: from the first of them to the last. */
function spanOfStages(feature: FeatureText, work: StageWork): Version | null {
  const indexes = textsOf(child(feature.node, "stages")).flatMap((node) => stageAt(node, work) ?? []);
  if (indexes.length === 0) return null;
  const last = Math.max(...indexes) + 1;
  const until = last < work.stages.length ? last : null;
  return { ...feature, existing: false, from: Math.min(...indexes), until, superseded: false };
}

function contradiction(
  node: Node,
  { troubles }: StageWork,
  { got, hint }: { readonly got: string; readonly hint: string },
): void {
  troubles.report(node, { code: "contradiction", expected: "one span of stages", got, hint });
}

/** All versions of all features: the plan's own, and those that `changes` bring from the end of a stage. */
export function versionsOf(features: readonly FeatureText[], texts: Texts, troubles: Troubles): readonly Version[] {
  const work: StageWork = { stages: stageNames(texts), troubles };
  const changes = readChanges(features, texts, work);
  return features.flatMap((feature) => {
    const first = spanOf(feature, work);
    if (first === null) return [];
    return changes
      .filter((change) => sameFeature(change, feature))
      .reduce<readonly Version[]>((versions, change) => addVersion(versions, change, work), [first]);
  });
}

interface Change extends FeatureText {
  readonly stage: number;
}

/** Changes in the order of the stages. */
function readChanges(features: readonly FeatureText[], texts: Texts, work: StageWork): readonly Change[] {
  const found = allEntries(texts, "changes").flatMap(([name, node]) => {
    const stage = stageAt({ ...node, data: name }, work);
    if (stage === null) return [];
    return changesOf(node)
      .filter((change) => reportIfAbsent(change, features, work.troubles))
      .map((change) => ({ ...change, stage }));
  });
  return found.sort((a, b) => a.stage - b.stage);
}

function addVersion(versions: readonly Version[], change: Change, work: StageWork): readonly Version[] {
  const before = versions.at(-1) as Version;
  const stageName = work.stages[change.stage] ?? "";
  if (change.stage <= before.from && !(before.existing && before.from === 0 && change.stage === 0)) {
    const got = `a change in stage ${stageName}, when it is only finished in ${work.stages[before.from] ?? ""}`;
    contradiction(change.node, work, {
      got,
      hint: `write the ${kinds[change.kind]} as it is to be from the start, or change it later`,
    });
    return versions;
  }
  if (before.until !== null && change.stage >= before.until) {
    const got = `a change in stage ${stageName}, when it is taken away at the start of ${work.stages[before.until] ?? ""}`;
    contradiction(change.node, work, { got, hint: "leave out the change" });
    return versions;
  }
  const node = laidOver(before.node, without(change.node, ["from", "until", "existing"]));
  const ended: Version = { ...before, until: change.stage, superseded: true };
  const reworked = before.existing && takesMoreGround(change.node);
  const next: Version = {
    ...before,
    node,
    from: change.stage,
    until: before.until,
    ...(reworked ? { reworked } : {}),
  };
  return [...versions.slice(0, -1), ended, next];
}
