// What: how much room is there round the vehicle where it is tightest, doing what it must in the moves it may take?
// Formula: the largest clearance by which the body can be grown all round, and the wheels' ground drawn in, and a path remain.
// Source: search on a 5 cm, 2.5 degree lattice, exact arcs, exact sweep of rigid outlines (COMPUTED; scenes of the tests).
// Valid: rigid vehicles steered by the front wheels at walking pace, wheels turned on the spot; one trailer without steered axle; no mirrors.
// Witness: the tightest place, the ground covered, the body at every change of direction with the number of the move.

import { directionChanges } from "../motion/pose.ts";
import type { Room } from "../motion/room.ts";
import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Found, Measure, Parameters, Subject } from "../model/reading.ts";
import { notSaid } from "../site/drive-ends.ts";
import type { Drive } from "../site/drive.ts";
import { roomOf } from "../site/drive-room.ts";
import { drivenPath } from "../site/found-path.ts";
import { drivesAt } from "../site/manoeuvre-states.ts";
import { pathWitness } from "../site/path-witness.ts";
import { type TightPlace, tightPlaces } from "../site/tight-places.ts";

/** A found path cannot tell the largest clearance better than this (m): one cell of the lattice. */
const cell = 0.05;

/** Standard deviation of a value that is as likely anywhere in an interval: its width over the root of 12 (JCGM 100 4.3.7, MEMORY). */
const evenSpread = 1 / Math.sqrt(12);

export const turningRoom: Measure = {
  name: "turning-room",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre with its vehicle, its surfaces and its way in" },
  parameters: { clear: { dimension: "length", default: 0 } },
  phrase: "{found} is clear all round at the tightest place",
  below: { phrase: "it overlaps what stands there by {found} at the tightest place", wanted: "clear" },
  shortName: "room round it",
  find: (subject, scene, parameters) => {
    const { manoeuvre } = subject;
    // Passing another vehicle is a question of the way's width and places, which other rules ask.
    if (!manoeuvre || propertyOf(manoeuvre, "does") === "pass") return { is: "does-not-bear" };
    const founds = drivesAt(manoeuvre, scene).map((found): Found => {
      if (found.is !== "drive") return found;
      if (found.drive.mostChanges === null)
        return { is: "missing", missing: [notSaid(manoeuvre, "moves", "in how many moves")] };
      return roomFound(found.drive, wantedOf(subject, scene.read, parameters), scene.read);
    });
    const open = founds.find((found) => found.is !== "found");
    return open ?? { is: "found", places: placesOf(founds) };
  },
};

/** The places of all states, each with a key of its own. */
function placesOf(founds: readonly Found[]): readonly CandidatePlace[] {
  return founds.flatMap((found, i) =>
    found.is === "found" ? found.places.map((place) => ({ ...place, key: `${i} ${place.key}` })) : [],
  );
}

function wantedOf({ manoeuvre }: Subject, read: Read, parameters: Parameters): number {
  const own = manoeuvre && propertyOf(manoeuvre, "clear");
  return isQuantity(own) ? read(own) : Number(parameters["clear"]);
}

function roomFound(drive: Drive, wanted: number, read: Read): Found {
  const room = roomOf(drive, wanted, read);
  if (room.tooLarge)
    return { is: "gave-up", because: "the ground is too large for our search; cut it to where it turns" };
  const { noMoreThan } = room;
  const driven = drivenPath(drive, room, wanted);
  if (driven === null) {
    if (noMoreThan === null) return { is: "gave-up", because: "no path could be found, nor ruled out" };
    return { is: "found", places: [atMost(drive, noMoreThan, moreMoves(room))] };
  }
  const { arcs, proven } = driven;
  const tight = tightPlaces(driven, read);
  const places = tight.length > 0 ? tight : [nowhere(drive, proven)];
  const least = places[0]?.room(read) ?? proven;
  const known = proven >= wanted;
  const high = Math.max(noMoreThan ?? wanted + cell, least);
  const raise = known ? 0 : (high - least) / 2;
  const changes = directionChanges(arcs);
  return {
    is: "found",
    places: places.map((place): CandidatePlace => ({
      key: place.key,
      value: (now) => place.room(now) + raise,
      where: `${at(place.words)}, in ${movesWords(changes)}${known ? "" : moreMoves(room)}${lacking(drive)}`,
      ...(known ? { bound: "at_least" } : { methodU: (high - least) * evenSpread }),
      witness: (now) => pathWitness(driven, place, now),
    })),
  };
}

const at = (words: string) =>
  words.startsWith("the wheels") || words.startsWith("the trailer's") ? words : `at ${words}`;

/** Whether more moves would help it to the room that is wanted. */
function moreMoves({ never }: Room): string {
  if (never === null) return "; with more moves it may find more room";
  if (never === "cut off") return "; no number of moves gives it the room that is wanted";
  return `; more moves do not help, for it has not that room where it ${never === "start" ? "starts" : "ends"}`;
}

const movesWords = (changes: number) => `${changes + 1} ${changes === 0 ? "move" : "moves"}`;

const lacking = ({ absent }: Drive) =>
  absent.length === 0 ? "" : `; ${absent.map((name) => `"${name}"`).join(", ")} is not there yet`;

/** Where nothing comes near, the clearance that was searched stands for the room. */
function nowhere({ start }: Drive, proven: number): TightPlace {
  return { key: "nowhere", words: "no one place", room: () => proven, at: [start.x, start.y], arc: 0, along: 0 };
}

/** Not even a much smaller vehicle finds a way. */
function atMost(drive: Drive, most: number, moves: string): CandidatePlace {
  return {
    key: "none",
    value: () => most,
    bound: "at_most",
    methodU: cell,
    where: `no way was found in ${movesWords(drive.mostChanges ?? 0)} even at that${moves}${lacking(drive)}`,
    witness: () => [{ part: "found", form: "point", points: [[drive.start.x, drive.start.y]], label: "comes in here" }],
  };
}
