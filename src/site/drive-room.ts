// The room round a vehicle on its way: the search of a manoeuvre at the clearance that is wanted, done once for equal content.

import type { Ground } from "../motion/ground.ts";
import type { ManoeuvreQuestion } from "../motion/manoeuvre.ts";
import type { Pose } from "../motion/pose.ts";
import { closeWay, quickWay, type Room, roomAbout } from "../motion/room.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import type { Drive } from "./drive.ts";
import { movedArea, ringAt } from "./live-ring.ts";
import { overallLength } from "../motion/vehicle.ts";
import { findTrainManoeuvre } from "../motion/trailer-manoeuvre.ts";
import { trainRoom } from "../motion/trailer-room.ts";
import { rollingRoom } from "../motion/steering-room.ts";
import { asDrivenThere, type SeenDrive, seenDrive } from "./seen-drive.ts";
import { inLine } from "./trailer.ts";

/** A drive at the plan's own values as it is seen from its start, and the box within which the body can be at all. */
export interface PlainDrive extends SeenDrive {
  readonly box: readonly Point[];
}

/** The plain geometry of a drive. */
export function plainDrive(drive: Drive, read: Read): PlainDrive {
  const rings = (keepsOff: "body" | "wheels") =>
    drive.inTheWay.flatMap((one) => (one.keepsOff === keepsOff ? one.rings.map((ring) => ringAt(ring, read)) : []));
  const running = drive.running.map((ring) => ringAt(ring, read));
  const seen = seenDrive(drive.start, drive.goal, { running, bodies: rings("body"), wheels: rings("wheels") });
  return { ...seen, box: boxRing(seen, overallLength(inLine(drive.plain, drive.trailer))) };
}

/** Ring of the box round the ground that the body, so long (m), can come over. */
function boxRing({ running }: SeenDrive, about: number): readonly Point[] {
  const [xs, ys] = [running.flat().map(([x]) => x), running.flat().map(([, y]) => y)];
  const [back, front] = [Math.min(...xs) - about, Math.max(...xs) + about];
  const [right, left] = [Math.min(...ys) - about, Math.max(...ys) + about];
  return [
    [back, right],
    [front, right],
    [front, left],
    [back, left],
  ];
}

const origin: Pose = { x: 0, y: 0, heading: 0 };

/**
 * The question of a drive at a clearance (m), as it is seen from its start. The wheels' ground is moved out by as much as the clearance lies below the
 * wanted one, and in by as much as it lies above: so the reading says by how much every wall and every edge would have
 * to give way, or could come nearer, alike. Null where an edge cannot be moved so far.
 */
export function questionAt(
  drive: Drive,
  geometry: PlainDrive,
  wanted: number,
): (clearance: number) => ManoeuvreQuestion | null {
  const { plain, firstGear, lastGear } = drive;
  const { goal } = geometry;
  const mostChanges = drive.mostChanges ?? 0;
  return (clearance) => {
    const rings = movedArea(geometry.running, drive.bodyStaysOn ? 0 : wanted - clearance);
    if (!rings) return null;
    const obstacles = drive.bodyStaysOn ? [...geometry.bodies, ...geometry.wheels] : geometry.bodies;
    const clear: Ground = { rings: drive.bodyStaysOn ? rings : [geometry.box], obstacles };
    const running = drive.bodyStaysOn ? clear : { rings, obstacles: geometry.wheels };
    return { vehicle: plain, clear, running, start: origin, goal, firstGear, lastGear, mostChanges, margin: clearance };
  };
}

/** Searches that were done last, by content; the oldest make way. A search depends on nothing else. */
const done = new Map<string, Room>();
const mostKept = 64;

/** Rooms of a drive by the clearance that is wanted, for the read that they were asked with. */
const ofDrive = new WeakMap<Drive, Map<number, { readonly read: Read; readonly room: Room }>>();

/** Room of a drive about a wanted clearance (m). */
export function roomOf(drive: Drive, wanted: number, read: Read): Room {
  const rooms = ofDrive.get(drive) ?? new Map<number, { readonly read: Read; readonly room: Room }>();
  ofDrive.set(drive, rooms);
  const before = rooms.get(wanted);
  if (before?.read === read) return before.room;
  const room = searched(drive, wanted, read);
  rooms.set(wanted, { read, room });
  return room;
}

function searched(drive: Drive, wanted: number, read: Read): Room {
  const geometry = plainDrive(drive, read);
  const { plain, firstGear, lastGear, mostChanges, bodyStaysOn, rollToLock } = drive;
  const asked = { ...geometry, exchanged: null };
  const inPlan = (room: Room): Room => ({ ...room, path: room.path && asDrivenThere(geometry, room.path) });
  const towed = drive.trailer?.plain ?? null;
  const how = [plain, towed, rollToLock, firstGear, lastGear, mostChanges, bodyStaysOn];
  const key = JSON.stringify([asked, how, wanted]);
  const known = done.get(key);
  if (known) return inPlan(known);
  const ask = questionAt(drive, geometry, wanted);
  const alone = roomAbout(ask, wanted);
  const steering = rollToLock === null ? null : { rollToLock, radius: plain.rearAxleRadius };
  const bare = steering ? rollingRoom(alone, ask, { steering, wanted }) : alone;
  const room = towed ? trainRoom(bare, ask, { trailer: towed, wanted }) : bare;
  const [oldest] = done.keys();
  if (done.size >= mostKept && oldest !== undefined) done.delete(oldest);
  done.set(key, room);
  return inPlan(room);
}

/** How a way is looked for: on the coarse lattice or on the fine one. */
export type Look = "quick" | "close";

/**
 * Whether a look finds a way with the room that is wanted, and `spare` metres more on every side. What it finds is
 * checked exactly; that it finds none says little.
 */
export function hasWay(drive: Drive, { wanted, spare, look }: WayWanted, read: Read): boolean {
  // A change of the ground is not tried at a steering rate: a look takes seconds.
  if (drive.rollToLock !== null) return false;
  const ask = questionAt(drive, plainDrive(drive, read), wanted);
  if (drive.trailer) {
    const question = ask(wanted + spare);
    const train = question && { ...question, trailer: drive.trailer.plain };
    return train !== null && findTrainManoeuvre(train, { mostLooks: 1 }).answer === "possible";
  }
  return (look === "quick" ? quickWay : closeWay)(ask, wanted + spare) !== null;
}

/** Room that is wanted, m, and more than that. */
export interface WayWanted {
  readonly wanted: number;
  readonly spare: number;
  readonly look: Look;
}
