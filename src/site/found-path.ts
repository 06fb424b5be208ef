// The path that the search found for a manoeuvre, for measures that look at more than its room.

import { isQuantity, propertyOf, type Feature } from "../model/plan.ts";
import type { Found, Scene } from "../model/reading.ts";
import type { Room } from "../motion/room.ts";
import type { Drive } from "./drive.ts";
import { roomOf } from "./drive-room.ts";
import { drivesAt } from "./manoeuvre-states.ts";
import type { DrivenPath } from "./tight-places.ts";

/** The path at the manoeuvre's own clearance, else at `clear` (m), in the last state that is asked about; or why there is none. */
export function foundPath(
  manoeuvre: Feature,
  scene: Scene,
  clear: number,
): { readonly path: DrivenPath } | { readonly not: Found } {
  const own = propertyOf(manoeuvre, "clear");
  const wanted = isQuantity(own) ? scene.read(own) : clear;
  const found = drivesAt(manoeuvre, scene).at(-1);
  if (!found) return { not: { is: "does-not-bear" } };
  // What the search itself lacks is asked for by the rule of room, once.
  if (found.is !== "drive" || found.drive.mostChanges === null) return { not: { is: "does-not-bear" } };
  const path = drivenPath(found.drive, roomOf(found.drive, wanted, scene.read), wanted);
  // Where there is no way at all another rule says so.
  return path ? { path } : { not: { is: "does-not-bear" } };
}

const ofRoom = new WeakMap<Room, DrivenPath>();

/** The path of a room that was found for a drive: the same object for the same room, so that what hangs on it is worked out once. */
export function drivenPath(drive: Drive, room: Room, wanted: number): DrivenPath | null {
  const { path, proven } = room;
  if (path === null || proven === null) return null;
  const known = ofRoom.get(room);
  if (known?.drive === drive && known.wanted === wanted) return known;
  const driven: DrivenPath = { drive, arcs: path, proven, wanted };
  ofRoom.set(room, driven);
  return driven;
}
