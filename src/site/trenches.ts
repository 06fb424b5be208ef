// The trench that a drain or a buried service is laid in: a dig like any other, while it is being laid.

import { type Feature, isQuantity, propertyOf, type Properties } from "../model/plan.ts";
import type { Quantity } from "../model/quantity.ts";

/** Forms of a drain that lie in no dig of their own worth the name. */
const shallow: ReadonlySet<string> = new Set(["gutter", "slot", "channel"]);

/** Whether a drain or service is laid in a dig by this plan: it is new, or made deeper, or nobody has said that it is there. */
export function isDug(feature: Feature): boolean {
  if (feature.existing && !feature.standingUnsaid && !feature.reworked) return false;
  if (feature.kind === "drain") return !isForm(feature, shallow);
  return feature.kind === "service" && propertyOf(feature, "buried") !== undefined;
}

/** Whether a drain is of one of these forms. */
export function isForm(drain: Feature, forms: ReadonlySet<string>): boolean {
  const form = propertyOf(drain, "form");
  return typeof form === "string" && forms.has(form);
}

/** Width at the top of the dig, where the plan gives it. */
function widthOf(feature: Feature): Quantity | null {
  const given = ["trench.width", "stone.width", "section.top"].map((property) => propertyOf(feature, property));
  return given.find(isQuantity) ?? null;
}

/** The trench of a drain or service as a subject; none where it is not dug in this stage. */
export function trenchOf(whole: Feature, stage: number): readonly Feature[] {
  if (whole.from !== stage || !isDug(whole) || whole.shape?.form !== "line") return [];
  const width = widthOf(whole);
  const { line } = whole.shape;
  return [
    {
      ...whole,
      kind: "trench",
      place: { file: whole.place.file, path: [...whole.place.path, "trench"] },
      shape: { form: "line", line, ...(width ? { width: width as Quantity<"length"> } : {}) },
      properties: (propertyOf(whole, "trench") ?? {}) as Properties,
      partOf: whole,
    },
  ];
}

/** Whether a trench is drawn by its middle only, so that nobody can say where its edges are. */
export function lacksWidth({ kind, shape }: Feature): boolean {
  return kind === "trench" && shape?.form === "line" && shape.width === undefined;
}
