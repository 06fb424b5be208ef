// Reads the properties of a feature by their forms: sealed numbers, words, flags, points, lists and groups.

import type { Properties, Property } from "../model/plan.ts";
import type { Form } from "./kind-table.ts";
import { entries, isMapping, items, textOf, type Node } from "./node.ts";
import { plainAnswer } from "./plain-answers.ts";
import { readPoint } from "./points.ts";
import { fieldWords, readSealed, tail, type At, type PropertyWork } from "./property-numbers.ts";

/** Nesting beyond this is not read: a plan has no use for it. */
const deepest = 12;

/** Reads all properties of a mapping. `path` are the keys from the feature down. */
export function readProperties(node: Node, forms: Readonly<Record<string, Form>>, at: At): Properties {
  const found: Record<string, Property> = {};
  if (at.path.length > deepest) return found;
  for (const [key, inner] of entries(node)) {
    const form = Object.hasOwn(forms, key) ? forms[key] : undefined;
    if (form === undefined) continue;
    const property = readProperty(inner, form, { work: at.work, path: [...at.path, key] });
    if (property !== undefined) found[key] = property;
    Object.assign(found, readTail(inner, form, { work: at.work, path: at.path }));
  }
  return found;
}

function readProperty(node: Node, form: Form, at: At): Property | undefined {
  if (at.path.length > deepest) return undefined;
  switch (form.form) {
    case "number":
      return readSealed(node, form, at);
    case "flag":
      return typeof node.data === "boolean" ? node.data : undefined;
    case "word":
      return readAnswer(node, at.path.at(-1) ?? "");
    case "name":
      return readNames(node, at.work);
    case "point":
      return readSpot(node, at);
    case "list":
      return readList(node, form.of, at);
    case "group":
      return isMapping(node.data) ? readProperties(node, form.properties, at) : undefined;
    case "map":
      return readMap(node, form.of, at);
    case "opening":
      return readOpening(node, at);
    case "either":
      break;
  }
  return readEither(node, form.forms, at);
}

/** The opening of a mesh as width and height: `75 x 75 mm`, one figure for a square one, or a group. */
function readOpening(node: Node, at: At): Property | undefined {
  const length: Form = { form: "number", dimension: "length" };
  if (isMapping(node.data)) return readProperties(node, { width: length, height: length }, at);
  const both = /^([-+\d.]+)\s*([^\dx]*?)\s*x\s*([-+\d.]+\s*(\D*))$/.exec(textOf(node) ?? "");
  const [width, height] =
    both === null
      ? [node.data, node.data]
      : [`${both[1] ?? ""} ${both[2] === "" ? (both[4] ?? "") : (both[2] ?? "")}`.trim(), both[3]];
  const side = (data: unknown, key: string): Property | undefined =>
    readProperty({ ...node, data }, length, { ...at, path: [...at.path, key] });
  const found = { width: side(width, "width"), height: side(height, "height") };
  return found.width === undefined || found.height === undefined ? undefined : found;
}

function readAnswer(node: Node, property: string): Property | undefined {
  const words = readWord(node);
  return typeof words === "string" ? plainAnswer(property, words) : words;
}

function readWord(node: Node): Property | undefined {
  if (typeof node.data === "string") return node.data;
  if (typeof node.data === "number" || typeof node.data === "boolean") return String(node.data);
  if (Array.isArray(node.data)) return items(node).flatMap((item) => readWord(item) ?? []);
  return undefined;
}

function readNames(node: Node, work: PropertyWork): Property | undefined {
  if (Array.isArray(node.data)) return items(node).flatMap((item) => readNames(item, work) ?? []);
  const name = textOf(node);
  if (name === null) return undefined;
  work.checkName(node);
  return name;
}

function readSpot(node: Node, at: At): Property | undefined {
  const point = readPoint(node, at.work.settingOf(node), `the ${fieldWords(at.path)}`);
  return point === null ? undefined : at.work.book.sealPoint(point);
}

/** A list; one of numbers with an entry that could not be read is left out whole: what is left would be judged as all there is. */
function readList(node: Node, form: Form, at: At): Property | undefined {
  const nodes = Array.isArray(node.data) ? items(node) : [node];
  const read = nodes.flatMap((item, i) => {
    const property = readProperty(item, form, { ...at, path: [...at.path, String(i + 1)] });
    return property === undefined ? [] : [property];
  });
  const written = Array.isArray(node.data) ? node.data.length : 1;
  return read.length < written && form.form !== "name" && form.form !== "word" ? undefined : read;
}

function readMap(node: Node, form: Form, at: At): Property | undefined {
  const found: Record<string, Property> = {};
  for (const [key, inner] of entries(node)) {
    at.work.checkName({ ...inner, data: key });
    const property = readProperty(inner, form, { ...at, path: [...at.path, key] });
    if (property !== undefined) found[key] = property;
  }
  return found;
}

/** The first form that fits what was written: a group for a mapping, a list for a list, a number before a word. */
function readEither(node: Node, forms: readonly Form[], at: At): Property | undefined {
  const fits = (form: Form): boolean => {
    if (isMapping(node.data)) return form.form === "group" || form.form === "map" || form.form === "point";
    if (Array.isArray(node.data))
      return form.form === "list" || form.form === "name" || form.form === "word" || form.form === "point";
    if (typeof node.data === "boolean") return form.form === "flag";
    if (typeof node.data === "number") return form.form === "number";
    if (form.form === "number") return /^[-+\d.]/.test(textOf(node) ?? "");
    return form.form === "word" || form.form === "name" || form.form === "point";
  };
  const form = forms.find(fits) ?? forms.find((one) => one.form === "number");
  return form === undefined ? undefined : readProperty(node, form, at);
}

/**
 * What a text says beside its number or word: `99.60 at corner 1` gives `at`, `1 in 60 towards corner 3` and
 * `towards P2` give `towards`, `left of goat fence` gives `on_side` and `on_line`.
 */
function readTail(node: Node, form: Form, at: At): Readonly<Record<string, Property>> {
  const side = form.form === "word" ? /^(left|right|both sides) of (.+)$/.exec(textOf(node) ?? "") : null;
  if (side?.[1] !== undefined && side[2] !== undefined) {
    at.work.checkName({ ...node, data: side[2] });
    return { on_side: side[1], on_line: side[2] };
  }
  const way = form.form === "either" ? /^(towards) (.+)$/.exec(textOf(node) ?? "") : null;
  if (way?.[2] !== undefined) return spotUnder("towards", way[2], { node, at });
  const match = form.form === "number" ? tail.exec(textOf(node) ?? "") : null;
  const [, , key, name] = match ?? [];
  if (key === undefined || name === undefined) return {};
  return spotUnder(key, name, { node, at });
}

function spotUnder(
  key: string,
  name: string,
  { node, at }: { readonly node: Node; readonly at: At },
): Readonly<Record<string, Property>> {
  const spot = readSpot({ ...node, data: name }, { ...at, path: [...at.path, key] });
  return spot === undefined ? {} : { [key]: spot };
}
