// An option of the plan: the same plan with something removed, changed or added.

import { kinds } from "../model/kinds.ts";
import { nearestWord } from "../reading/nearest-word.ts";
import { child, isLost, laidOver, textsOf, textOf, type Node } from "./node.ts";
import { allEntries, featuresUnder, kindKeys, type FeatureText, type Texts } from "./sources.ts";
import type { Troubles } from "./troubles.ts";

/** The features of the plan under an option, and the names that the option takes away. */
export interface Optioned {
  readonly features: readonly FeatureText[];
  readonly removed: ReadonlySet<string>;
}

/** Applies the option of that name; none asked for leaves the plan as it is, an unknown one is a problem. */
export function withOption(
  features: readonly FeatureText[],
  texts: Texts,
  { option, troubles }: { readonly option: string | undefined; readonly troubles: Troubles },
): Optioned {
  if (option === undefined) return { features, removed: new Set() };
  const written = allEntries(texts, "options");
  const found = written.find(([name]) => name === option);
  if (found === undefined)
    return { features: reportUnknown(option, written, { features, texts, troubles }), removed: new Set() };
  const [, node] = found;
  const removed = removedBy(child(node, "remove"), features, troubles);
  const changes = changesOf(child(node, "change"));
  for (const change of changes) reportIfAbsent(change, features, troubles);
  const changed = features
    .filter((feature) => !removed.has(feature.name))
    .map((feature) =>
      changes
        .filter((change) => sameFeature(change, feature))
        .reduce((at, change) => ({ ...at, node: laidOver(at.node, change.node) }), feature),
    );
  return { features: [...changed, ...featuresUnder(child(node, "add"))], removed };
}

function reportUnknown(
  option: string,
  written: readonly (readonly [string, Node])[],
  {
    features,
    texts,
    troubles,
  }: { readonly features: readonly FeatureText[]; readonly texts: Texts; readonly troubles: Troubles },
): readonly FeatureText[] {
  const names = written.map(([name]) => name);
  const near = nearestWord(option, names);
  const [root] = texts.roots;
  if (root !== undefined) {
    troubles.report(root, {
      code: "unknown-name",
      expected:
        names.length === 0
          ? "an option that the plan has; it has none"
          : `one of the plan's options: ${names.join(", ")}`,
      got: `"${option}"`,
      hint: near === null ? "write it under options" : `did you mean "${near}"?`,
    });
  }
  return features;
}

/** The features named under kinds of a `change`. */
export function changesOf(change: Node | null): readonly FeatureText[] {
  return featuresUnder(change);
}

/** Whether two texts are of one feature: the same kind and name. */
export function sameFeature(a: FeatureText, b: FeatureText): boolean {
  return a.kind === b.kind && a.name === b.name;
}

/** A change or removal of something that is not there is a problem; true where it is there. */
export function reportIfAbsent(change: FeatureText, features: readonly FeatureText[], troubles: Troubles): boolean {
  if (features.some((feature) => sameFeature(change, feature))) return true;
  if (isLost(change.node, [change.kind, change.name])) return false;
  const alike = features.filter((feature) => feature.kind === change.kind).map((feature) => feature.name);
  const near = nearestWord(change.name, alike);
  troubles.report(change.node, {
    code: "unknown-name",
    part: "key",
    expected: `a ${kinds[change.kind]} that the plan has`,
    got: `"${change.name}"`,
    hint: near === null ? "write it into the plan, or under add" : `did you mean "${near}"?`,
  });
  return false;
}

function removedBy(remove: Node | null, features: readonly FeatureText[], troubles: Troubles): ReadonlySet<string> {
  const names = kindKeys.flatMap((kind) =>
    textsOf(child(remove, kind)).flatMap((node) => {
      const gone = { kind, name: textOf(node) ?? "", node };
      return reportIfAbsent(gone, features, troubles) ? [gone.name] : [];
    }),
  );
  return new Set(names);
}
