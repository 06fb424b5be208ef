// What stands when a manoeuvre is done: before the work of its stage, or from its stage on.

import { type Feature, propertyOf } from "../model/plan.ts";
import type { Scene } from "../model/reading.ts";
import { names } from "./drive-ends.ts";
import { type DriveFound, driveOf } from "./drive.ts";

/**
 * The questions that a manoeuvre asks at a stage. One that names its `stages` is part of their work: it runs on what
 * stood at the end of the stage before, and on what it waits for (`after`). One that must be possible from a stage on
 * is asked of that too, where its ground is there by then, and of what stands at the end of the stage.
 */
export function drivesAt(manoeuvre: Feature, scene: Scene): readonly DriveFound[] {
  const after = new Set(names(manoeuvre, "after"));
  const standing = scene.standing().filter((feature) => !feature.partOf);
  const before = scene.before();
  const early = [
    ...before,
    ...standing.filter(({ name }) => after.has(name) && !before.some((one) => one.name === name)),
  ];
  const ask = (there: readonly Feature[]) =>
    driveOf(manoeuvre, { there, vehicles: standing.filter(({ kind }) => kind === "vehicle"), read: scene.read });
  if (propertyOf(manoeuvre, "stages") !== undefined) return [ask(early)];
  const ground = names(manoeuvre, "comes_in_by", "goes_out_by", "on", "to", "start.on", "end.on");
  const ready = ground.every((name) => early.some((feature) => feature.name === name));
  return ready && !sameFeatures(early, standing) ? [ask(early), ask(standing)] : [ask(standing)];
}

function sameFeatures(a: readonly Feature[], b: readonly Feature[]): boolean {
  const others = new Set(b.filter((feature) => feature.shape !== null));
  const shaped = a.filter((feature) => feature.shape !== null);
  return shaped.length === others.size && shaped.every((feature) => others.has(feature));
}
