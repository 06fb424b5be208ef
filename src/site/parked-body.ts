// A vehicle that stands in its bay, with the doubt of its own lengths and of the bay that it stands in the middle of.

import { bodyOutline } from "../motion/swept-outline.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { carriedBy } from "./carried.ts";
import type { Drive } from "./drive.ts";
import type { LiveRing } from "./live-ring.ts";

const cornerNumbers = [0, 1, 2, 3] as const;

/** Corners of the body at the end of a drive: back right, front right, front left, back left. It goes where its bay goes. */
export function parkedBody(drive: Drive, plain: Read): LiveRing {
  const carried = drive.bay ? carriedBy([drive.bay], plain) : drive.carried;
  return cornerNumbers.map((corner) => (read) => {
    const body = drive.vehicle(read) ?? drive.plain;
    const at = bodyOutline(body, drive.goal)[corner] as Point;
    return carried(read).to(at);
  });
}
