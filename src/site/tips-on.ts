// Where a vehicle raises its body: the ground that it goes to, else the tipping places that it uses, else all its ground.

import { type Feature, propertyOf } from "../model/plan.ts";
import type { Scene } from "../model/reading.ts";
import { names } from "./drive-ends.ts";
import { groundNames } from "./used-by.ts";

/** The surfaces on which a manoeuvre that raises something raises it. */
export function tipsOn(manoeuvre: Feature, scene: Scene): readonly Feature[] {
  const surfaces = scene.standing("surfaces");
  const used = groundNames(manoeuvre);
  const target = surfaces.filter(({ name }) => names(manoeuvre, "to", "end.on").includes(name));
  if (target.length > 0) return target;
  const places = surfaces.filter((one) => used.includes(one.name) && propertyOf(one, "tip_place") === true);
  return places.length > 0 ? places : surfaces.filter(({ name }) => names(manoeuvre, "on").includes(name));
}
