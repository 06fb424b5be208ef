// The stem diameter of a tree from its girth, or of one with several stems.

import type { Properties } from "../model/plan.ts";
import { child, items, type Node } from "./node.ts";
import { readNumber } from "./numbers.ts";
import { checkPlausible } from "./plausible.ts";
import { liveNumber, withDoubt, type PropertyWork } from "./property-numbers.ts";
import type { Version } from "./stages.ts";
import { exact, mean, rootOfSquares, scaled, type Uncertain } from "./sway.ts";

/** How many stems are squared and added; with more of them the mean stands for all. */
const mostSingleStems = 5;

/**
 * Diameter of one stem that stands for several, metres: two to five stems D = sqrt(d1^2 + d2^2 + ...), more than
 * five D = sqrt(n mean(d)^2). BS 5837:2012 4.6.1 (MEMORY).
 */
export function equivalentStem(stems: readonly Uncertain[]): Uncertain {
  if (stems.length > mostSingleStems) return scaled(mean(stems), Math.sqrt(stems.length));
  return rootOfSquares(stems);
}

interface Stem {
  readonly diameter: Uncertain;
  readonly counted: number;
  readonly node: Node;
}

/** Reads `stem`, `stems` or `girth` (girth / pi) of a tree; null where none is given. */
function stemOf(version: Version, work: PropertyWork): Stem | null {
  const { node } = version;
  const stems = child(node, "stems");
  if (stems !== null) {
    const each = items(stems).flatMap((one, i) => {
      const written = readNumber(one, "length", work.settingOf(one).troubles);
      const of = { kind: work.kind, path: "stems", form: { dimension: "length" } } as const;
      return written === null || !checkPlausible(written, of, work.settingOf(one).troubles)
        ? []
        : [withDoubt(written, { dimension: "length" }, { work, path: ["stems", String(i + 1)] })];
    });
    return each.length === 0 ? null : { diameter: equivalentStem(each), counted: each.length, node: stems };
  }
  const stem = liveNumber(node, "stem", { work, dimension: "length" });
  if (stem !== null) return { diameter: stem, counted: 1, node: child(node, "stem") as Node };
  const girth = liveNumber(node, "girth", { work, dimension: "length" });
  return girth === null
    ? null
    : { diameter: scaled(girth, 1 / Math.PI), counted: 1, node: child(node, "girth") as Node };
}

/** The properties `stem` and `stems_counted` of a tree; none for other kinds. */
export function readStem(version: Version, { work }: { readonly work: PropertyWork }): Properties {
  const stem = version.kind === "trees" ? stemOf(version, work) : null;
  if (stem === null) return {};
  const { place } = stem.node;
  return {
    stem: work.book.seal(stem.diameter, "length", place),
    stems_counted: work.book.seal(exact(stem.counted), "count", place),
  };
}

/** Half the width of what stands in the middle of a peg: a trunk, or something with `across`. */
export function radiusOf(version: Version, work: PropertyWork): Uncertain | null {
  const stem = version.kind === "trees" ? stemOf(version, work) : null;
  const across = stem?.diameter ?? liveNumber(version.node, "across", { work, dimension: "length" });
  return across === null ? null : scaled(across, 0.5);
}
