// What: how often must the vehicle change direction at the least to do this with the room that is wanted?
// Formula: changes of the path with the fewest that was found and checked exactly.
// Source: search on a 5 cm, 2.5 degree lattice with the wanted clearance (COMPUTED; scenes of the tests).
// Valid: as for the room round it; up to twelve changes. Fewer are ruled out only where the search did not find them.
// Witness: the ground covered, the body at every change of direction with the number of the move.

import { findManoeuvre } from "../motion/find-manoeuvre.ts";
import type { ManoeuvreAnswer } from "../motion/manoeuvre.ts";
import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Found, Measure } from "../model/reading.ts";
import type { Drive } from "../site/drive.ts";
import { plainDrive, questionAt } from "../site/drive-room.ts";
import { asDrivenThere } from "../site/seen-drive.ts";
import { drivesAt } from "../site/manoeuvre-states.ts";
import { type DrivenPath, tightPlaces } from "../site/tight-places.ts";
import { pathWitness } from "../site/path-witness.ts";
import type { Read } from "../model/quantity.ts";

/** More changes than this are not looked for. */
const most = 12;

export const changesOfDirection: Measure = {
  name: "changes-of-direction",
  dimension: "count",
  roles: { manoeuvre: "a manoeuvre with its vehicle, its surfaces and its way in" },
  parameters: { clear: { dimension: "length", default: 0 } },
  phrase: "it takes {found} changes of direction",
  shortName: "changes of direction",
  find: ({ manoeuvre }, scene, parameters) => {
    if (!manoeuvre) return { is: "does-not-bear" };
    const own = propertyOf(manoeuvre, "clear");
    const wanted = isQuantity(own) ? scene.read(own) : Number(parameters["clear"]);
    const found = drivesAt(manoeuvre, scene).at(-1);
    if (!found) return { is: "does-not-bear" };
    if (found.is === "drive" && (found.drive.trailer || found.drive.rollToLock !== null))
      return { is: "gave-up", because: "how few changes it takes is not searched with a trailer or a steering rate" };
    return found.is === "drive" ? leastChanges(found.drive, wanted, scene.read) : found;
  },
};

/** Two noes are kept apart: not in so many moves, and not in any number of them. */
function whyNone(answer: Exclude<ManoeuvreAnswer, { answer: "possible" }> | null): string {
  if (answer?.answer === "not-however-many") {
    if (answer.why === "cut off") return "no number of moves gets it through";
    return `it does not fit where it ${answer.why === "start" ? "starts" : "ends"}`;
  }
  if (answer?.answer === "cannot-tell" && answer.why === "too large") return "the ground is too large for our search";
  if (answer?.answer === "cannot-tell") return "it is too close for our search to tell";
  return `no way was found in ${most + 1} moves`;
}

function leastChanges(drive: Drive, wanted: number, read: Read): Found {
  const seen = plainDrive(drive, read);
  const question = questionAt(drive, seen, wanted)(wanted);
  const answer = question && findManoeuvre({ ...question, mostChanges: most });
  if (!answer || answer.answer !== "possible") return { is: "gave-up", because: whyNone(answer) };
  const driven: DrivenPath = { drive, arcs: asDrivenThere(seen, answer.path), proven: wanted, wanted };
  const [tightest] = tightPlaces(driven, read);
  return {
    is: "found",
    places: [
      {
        key: "changes",
        value: () => answer.changes,
        witness: (now) => (tightest ? pathWitness(driven, tightest, now) : []),
      },
    ],
  };
}
