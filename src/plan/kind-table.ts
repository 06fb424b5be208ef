// What the resolver knows of the properties of each kind: their form. Made from the schemas by a build script.

import type { Dimension } from "../model/quantity.ts";

export type Form =
  /** `level` marks a height above the datum; `words` are texts allowed in place of the number (`unknown`). */
  | {
      readonly form: "number";
      readonly dimension: Dimension;
      readonly level?: true;
      readonly words?: readonly string[];
    }
  | { readonly form: "word" }
  | { readonly form: "flag" }
  /** A feature or peg by name, or a list of them. */
  | { readonly form: "name" }
  | { readonly form: "point" }
  /** The opening of a mesh: `75 x 75 mm`, one figure for both, or width and height. */
  | { readonly form: "opening" }
  | { readonly form: "list"; readonly of: Form }
  | { readonly form: "group"; readonly properties: Readonly<Record<string, Form>> }
  /** A mapping whose keys are names in the plan. */
  | { readonly form: "map"; readonly of: Form }
  /** Several forms are allowed: the first that fits the data is taken. */
  | { readonly form: "either"; readonly forms: readonly Form[] };

/** Properties of every kind by the plan's key (`walls`). */
export type KindTable = Readonly<Record<string, Readonly<Record<string, Form>>>>;

/** Dotted names of all properties in a group of forms, those inside groups and lists of groups too (`foundation.depth`). */
export function propertyNames(properties: Readonly<Record<string, Form>>): readonly string[] {
  return Object.entries(properties).flatMap(([name, form]) => [
    name,
    ...innerNames(form).map((inner) => `${name}.${inner}`),
  ]);
}

function innerNames(form: Form): readonly string[] {
  if (form.form === "group") return propertyNames(form.properties);
  if (form.form === "list" || form.form === "map") return innerNames(form.of);
  return form.form === "either" ? form.forms.flatMap(innerNames) : [];
}
