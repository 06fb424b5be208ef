// What stands when a manoeuvre is done: before the work of its stage, or from its stage on; and who is parked there.

import { type Feature, propertyOf } from "../model/plan.ts";
import type { Scene } from "../model/reading.ts";
import { bayNames, names } from "./drive-ends.ts";
import { type DriveFound, driveOf } from "./drive.ts";
import type { InTheWay } from "./in-the-way.ts";
import { parkedBody } from "./parked-body.ts";

/**
 * The questions that a manoeuvre asks at a stage. One that names its `stages` is part of their work: it runs on what
 * stood at the end of the stage before, and on what it waits for (`after`). One that must be possible from a stage on
 * is asked of that too, where its ground is there by then, and of what stands at the end of the stage. Other vehicles
 * that park on the plot then stand in their bays.
 */
export function drivesAt(manoeuvre: Feature, scene: Scene): readonly DriveFound[] {
  askAll(scene);
  const known = drivesOf(scene);
  const before = known.get(manoeuvre);
  if (before) return before;
  const founds = laidOutAt(manoeuvre, scene);
  known.set(manoeuvre, founds);
  return founds;
}

/** What was laid out at a scene: many rules ask after the same manoeuvre. */
const laidOut = new WeakMap<Scene, Map<Feature, readonly DriveFound[]>>();

function drivesOf(scene: Scene): Map<Feature, readonly DriveFound[]> {
  const known = laidOut.get(scene) ?? new Map<Feature, readonly DriveFound[]>();
  laidOut.set(scene, known);
  return known;
}

/** A scene notes what it is asked for, so it is asked for all of it whether the answer is known or not. */
function askAll(scene: Scene): void {
  scene.standing();
  scene.before();
  scene.standing("vehicles");
  scene.standing("trailers");
}

function laidOutAt(manoeuvre: Feature, scene: Scene): readonly DriveFound[] {
  const all = scene.standing().filter((feature) => !feature.partOf);
  const founds = statesOf(manoeuvre, scene, all).map((there) => driveIn(manoeuvre, there, scene));
  if (!founds.some(({ is }) => is === "drive")) return founds;
  const parked = all.flatMap((other) => parkedBy(other, manoeuvre, scene));
  return parked.length === 0 ? founds : founds.map((found) => among(found, parked));
}

/** What stands in each of the states that a manoeuvre is asked of. */
function statesOf(manoeuvre: Feature, scene: Scene, standing: readonly Feature[]): readonly (readonly Feature[])[] {
  const after = new Set(names(manoeuvre, "after"));
  const before = scene.before();
  const early = [
    ...before,
    ...standing.filter(({ name }) => after.has(name) && !before.some((one) => one.name === name)),
  ];
  if (propertyOf(manoeuvre, "stages") !== undefined) return [early];
  const ground = names(manoeuvre, "comes_in_by", "goes_out_by", "on", "to", "start.on", "end.on");
  const ready = ground.every((name) => early.some((feature) => feature.name === name));
  return ready && !sameFeatures(early, standing) ? [early, standing] : [standing];
}

function driveIn(manoeuvre: Feature, there: readonly Feature[], scene: Scene): DriveFound {
  const [vehicles, trailers] = [scene.standing("vehicles"), scene.standing("trailers")];
  return driveOf(manoeuvre, { there, vehicles, trailers, read: scene.read });
}

function sameFeatures(a: readonly Feature[], b: readonly Feature[]): boolean {
  const others = new Set(b.filter((feature) => feature.shape !== null));
  const shaped = a.filter((feature) => feature.shape !== null);
  return shaped.length === others.size && shaped.every((feature) => others.has(feature));
}

/** The vehicle of another manoeuvre that parks, where it stands in a bay of its own at the same time. */
function parkedBy(other: Feature, manoeuvre: Feature, scene: Scene): readonly InTheWay[] {
  if (other.kind !== "manoeuvre" || other.name === manoeuvre.name || propertyOf(other, "does") !== "park") return [];
  const isOwn = propertyOf(other, "vehicle") === propertyOf(manoeuvre, "vehicle");
  const own = new Set(bayNames(manoeuvre));
  const sameBay = bayNames(other).some((name) => own.has(name));
  if (isOwn || sameBay || !sharesStage(other, manoeuvre)) return [];
  const found = driveIn(other, scene.standing(), scene);
  const vehicle = scene.standing("vehicles").find(({ name }) => name === propertyOf(other, "vehicle"));
  if (found.is !== "drive" || !vehicle) return [];
  return [{ feature: vehicle, keepsOff: "body", rings: [parkedBody(found.drive, scene.read)] }];
}

/** Whether two manoeuvres can be of the same stage. */
function sharesStage(a: Feature, b: Feature): boolean {
  const [first, second] = [names(a, "stages"), names(b, "stages")];
  return first.length === 0 || second.length === 0 || first.some((stage) => second.includes(stage));
}

const among = (found: DriveFound, parked: readonly InTheWay[]): DriveFound =>
  found.is === "drive"
    ? { ...found, drive: { ...found.drive, inTheWay: [...found.drive.inTheWay, ...parked] } }
    : found;
