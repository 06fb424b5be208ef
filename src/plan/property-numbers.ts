// Reads the numbers among a feature's properties and gives them their doubt.

import { propertyWords } from "../model/property-words.ts";
import type { Property } from "../model/plan.ts";
import type { Dimension } from "../model/quantity.ts";
import { doubtClass } from "./doubt-classes.ts";
import type { Form } from "./kind-table.ts";
import { child, textOf, type Node } from "./node.ts";
import type { BookWriter } from "./number-book.ts";
import { readNumberText, type Written } from "./numbers.ts";
import { checkPlausible } from "./plausible.ts";
import type { Setting } from "./points.ts";
import type { Uncertain } from "./sway.ts";

/** What the reader of one feature's properties needs. */
export interface PropertyWork {
  readonly kind: string;
  readonly book: BookWriter;
  readonly settingOf: (node: Node) => Setting;
  /** Whether a name is that of a feature or peg; a problem where it is not. */
  readonly checkName: (node: Node) => void;
  /** Turn of a bearing to the plan's north, radians; null where it is not known. */
  readonly turnFrom: (north: "grid" | "magnetic" | "true", node: Node) => number | null;
}

type NumberForm = Extract<Form, { form: "number" }>;

/** Where a property stands: the keys from the feature down. */
export interface At {
  readonly work: PropertyWork;
  readonly path: readonly string[];
}

/** Words that stand where a number is not known; they are kept as words. */
const notKnown: ReadonlySet<string> = new Set(["unknown", "not known", "not given"]);

/** A number with its doubt, sealed; or the word that says it is not known. */
export function readSealed(node: Node, form: NumberForm, at: At): Property | undefined {
  const text = textOf(node);
  if (text !== null && (notKnown.has(text) || (form.words ?? []).includes(text))) return text;
  const written = readWritten(node, form, at.work);
  if (written === null) return undefined;
  const number = withDoubt(written, form, at);
  if (!checkPlausible(written, { kind: at.work.kind, path: at.path.join("."), form }, at.work.settingOf(node).troubles))
    return undefined;
  return at.work.book.seal(number, form.dimension, node.place);
}

/** A number and what stands behind it: `99.60 at corner 1`. */
export const tail = /^(.*?[\d)m%])\s+(at|towards)\s+(\D.*)$/;

/** The number in a text: without `at corner 1` or `towards corner 3`, and with a bearing turned to the plan's north. */
function readWritten(node: Node, form: NumberForm, work: PropertyWork): Written | null {
  const { troubles } = work.settingOf(node);
  const text = textOf(node);
  if (text === null) return readNumberText(node, node.data, { dimension: form.dimension, troubles });
  const bearing = form.dimension === "angle" ? /^(.*?)\s*\b(grid|magnetic|true)$/.exec(text) : null;
  if (bearing !== null) {
    const turn = work.turnFrom(bearing[2] as "grid" | "magnetic" | "true", node);
    const written = readNumberText(node, bearing[1], { dimension: "angle", troubles });
    return written === null || turn === null ? null : { ...written, value: written.value + turn };
  }
  return readNumberText(node, tail.exec(text)?.[1] ?? text, { dimension: form.dimension, troubles });
}

/** The number with its doubt, by its class and by whether the thing stands or is to be built. */
export function withDoubt(
  written: Written,
  form: { readonly dimension: Dimension; readonly level?: true },
  at: At,
): Uncertain {
  const setting = at.work.settingOf(written.node);
  const path = at.path.join(".");
  const sort = doubtClass({ kind: at.work.kind, path, dimension: form.dimension, level: form.level === true });
  const how = { sort, dimension: form.dimension, existing: setting.existing };
  return setting.measuring.size(written, `the ${fieldWords(at.path)} of ${setting.whose}`, how);
}

/** `crown.radius` as `crown radius`. */
export function fieldWords(path: readonly string[]): string {
  const listed = path.some((part) => /^\d+$/.test(part));
  return listed ? path.join(" ").replaceAll("_", " ") : propertyWords(path.join("."));
}

/** The number under a key of a feature with its doubt, before it is sealed; null where there is none. */
export function liveNumber(
  node: Node,
  key: string,
  at: { readonly work: PropertyWork; readonly dimension: Dimension },
): Uncertain | null {
  const inner = child(node, key);
  if (inner === null) return null;
  const written = readNumberText(inner, inner.data, {
    dimension: at.dimension,
    troubles: at.work.settingOf(inner).troubles,
  });
  if (written === null) return null;
  const form = { dimension: at.dimension };
  const { troubles } = at.work.settingOf(inner);
  return checkPlausible(written, { kind: at.work.kind, path: key, form }, troubles)
    ? withDoubt(written, form, { work: at.work, path: [key] })
    : null;
}
