// What: how much room is there beside a parked vehicle to open a door?
// Formula: least distance from its two long sides to what stands there.
// Source: plane geometry, with the vehicle in the middle of its bay, or as the plan writes its end.
// Valid: walls, fences, buildings, and vehicles that other manoeuvres park beside it; a driver stands a hand's breadth off the middle.
// Witness: the side and what stands beside it.

import { propertyOf } from "../model/plan.ts";
import type { CandidatePlace, Measure } from "../model/reading.ts";
import type { LiveFigure } from "../site/live-figure.ts";
import { drivesAt } from "../site/manoeuvre-states.ts";
import { ringAt } from "../site/live-ring.ts";
import { nearPlaces } from "../site/near-places.ts";
import { parkedBody } from "../site/parked-body.ts";

/** Things farther off than this hinder no door, m. */
const reach = 3;

export const roomBesideParked: Measure = {
  name: "room-beside-parked",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre that parks a vehicle" },
  parameters: {},
  phrase: "{found} is left beside the vehicle",
  below: { phrase: "the vehicle overlaps what stands beside it by {found}", wanted: "clear" },
  shortName: "beside the vehicle",
  find: ({ manoeuvre }, scene) => {
    if (!manoeuvre || propertyOf(manoeuvre, "does") !== "park") return { is: "does-not-bear" };
    const found = drivesAt(manoeuvre, scene).at(-1);
    if (!found) return { is: "does-not-bear" };
    if (found.is !== "drive") return found;
    const { drive } = found;
    const body = parkedBody(drive, scene.read);
    const [backRight, frontRight, frontLeft, backLeft] = body;
    if (!backRight || !frontRight || !frontLeft || !backLeft) return { is: "does-not-bear" };
    const long: LiveFigure = {
      chains: [
        { points: [backRight, frontRight], ends: "open" },
        { points: [backLeft, frontLeft], ends: "open" },
      ],
      solid: false,
      grow: () => 0,
    };
    const places = drive.inTheWay.flatMap((one) => {
      const figure: LiveFigure = {
        chains: one.rings.map((points) => ({ points, ends: "closed" as const })),
        solid: false,
        grow: () => 0,
      };
      return nearPlaces(long, figure, reach, scene.read).map((near): CandidatePlace => ({
        key: `${one.feature.name} ${near.key}`,
        value: near.distance,
        where: `at ${one.feature.kind} "${one.feature.name}"`,
        witness: (read) => [
          { part: "thing", form: "outline", points: ringAt(body, read) },
          { part: "found", form: "line", points: near.ends(read) },
        ],
      }));
    });
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};
