// What: how steep is the ground on which a vehicle raises its body, boom or loader?
// Formula: the fall that the plan states of it; else the steepest of the planes through its levels, or of the ground under it.
// Source: plane geometry.
// Valid: the surface that it goes to, else every surface for tipping that it uses; ruts and a soft wheel make it steeper.
// Witness: the plane.

import { propertyOf } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { tipsOn } from "../site/tips-on.ts";
import { fallOfSurface } from "./fall-of-surface.ts";

export const tippingSlope: Measure = {
  name: "tipping-slope",
  dimension: "slope",
  roles: { manoeuvre: "a manoeuvre that raises a body, boom or loader", ground: "a surface" },
  parameters: {},
  phrase: "{ground} slopes {found} where it raises its body",
  shortName: "slope where it tips",
  shownIn: "%",
  find: ({ manoeuvre, ground }, scene) => {
    if (!manoeuvre || !ground || propertyOf(manoeuvre, "raises") !== true) return { is: "does-not-bear" };
    if (!tipsOn(manoeuvre, scene).includes(ground)) return { is: "does-not-bear" };
    return fallOfSurface.find({ surface: ground }, scene, {});
  },
};
