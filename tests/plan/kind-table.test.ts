// The table of property forms made from the schemas.

import { describe, expect, it } from "vitest";
import { kinds } from "../../src/model/kinds.ts";
import { baseUnit } from "../../src/model/units.ts";
import type { Form } from "../../src/plan/kind-table.ts";
import { kindTable } from "./resolved.ts";

function formsIn(form: Form): readonly Form[] {
  if (form.form === "list" || form.form === "map") return [form, ...formsIn(form.of)];
  if (form.form === "group") return [form, ...Object.values(form.properties).flatMap(formsIn)];
  return form.form === "either" ? [form, ...form.forms.flatMap(formsIn)] : [form];
}

describe("the table of kinds", () => {
  it("has every kind of feature, and the plot", () => {
    expect(Object.keys(kindTable).sort()).toEqual([...Object.keys(kinds), "site"].sort());
    for (const forms of Object.values(kindTable)) expect(Object.keys(forms).length).toBeGreaterThan(0);
  });
  it("knows the dimension of every number", () => {
    const numbers = Object.values(kindTable)
      .flatMap((forms) => Object.values(forms).flatMap(formsIn))
      .filter((form) => form.form === "number");
    expect(numbers.length).toBeGreaterThan(300);
    for (const one of numbers) expect(Object.keys(baseUnit)).toContain(one.dimension);
  });
  it("tells levels, openings, names and points apart", () => {
    expect(kindTable["buildings"]?.["damp_course"]).toEqual({ form: "number", dimension: "length", level: true });
    expect(kindTable["walls"]?.["height"]).toEqual({ form: "number", dimension: "length" });
    expect(kindTable["fences"]?.["mesh"]).toEqual({ form: "opening" });
    expect(kindTable["drains"]?.["takes"]).toEqual({ form: "name" });
    expect(kindTable["drains"]?.["inverts"]).toEqual({
      form: "map",
      of: { form: "number", dimension: "length", level: true },
    });
    expect(kindTable["stock"]?.["at"]).toEqual({ form: "point" });
    expect(kindTable["site"]?.["rain"]).toMatchObject({
      form: "group",
      properties: { intensity: { form: "number", dimension: "rain" } },
    });
  });
});
