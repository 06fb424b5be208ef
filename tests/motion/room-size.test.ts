import { describe, expect, it } from "vitest";
import { envelopesOf, grown } from "../../src/motion/envelope.ts";
import { largestClearance } from "../../src/motion/largest-clearance.ts";
import { directionChanges, posesAlong, wrapAngle } from "../../src/motion/pose.ts";
import { type RectangleEntry, type RoomLayout, type RoomSize, turnQuestion } from "../../src/motion/room-layout.ts";
import { keepsClear, noneBelow, type SizeWithPath, smallestSize } from "../../src/motion/room-size.ts";
import { threePointTurn } from "../../src/motion/three-point-turn.ts";
import { steadyCircle } from "../../src/motion/vehicle.ts";
import { firstLeaving } from "./dense-check.ts";
import { sceneVehicles } from "./published-vehicles.ts";

type Name = keyof typeof sceneVehicles;
interface Case {
  readonly entry: RectangleEntry;
  readonly name: Name;
  readonly clearance: number;
  readonly moves: number;
  readonly track?: number;
}

const ordinaryTrack = (name: Name) => (name === "van" || name === "tipper" ? 3.5 : 3);
const turner = (name: Name, clearance: number, moves: number) => ({
  vehicle: sceneVehicles[name],
  clearance,
  changes: moves - 1,
});

function layoutOf({ entry, name, track }: Case): RoomLayout {
  return { form: "rectangle", entry, track: track ?? ordinaryTrack(name), splay: 0 };
}

function depthOf(one: Case, long: number): number {
  const ask = (deep: number) => turnQuestion(layoutOf(one), { long, deep }, turner(one.name, one.clearance, one.moves));
  return smallestSize(ask, { from: 2, to: 16 })?.size ?? Infinity;
}

/** Another program's way of looking: outlines put down every centimetre; gear changes, lock and end looked at too. */
function checkByHand(layout: RoomLayout, size: RoomSize, found: SizeWithPath, who: ReturnType<typeof turner>): void {
  const question = turnQuestion(layout, size, who);
  const envelopes = envelopesOf(who.vehicle, question, who.clearance).map((one) => grown(one, -1e-5));
  expect(firstLeaving(envelopes, { start: question.start, arcs: found.path }, 0.01)).toBeNull();
  const end = posesAlong(question.start, found.path).at(-1) ?? question.start;
  expect(Math.hypot(end.x - question.goal.x, end.y - question.goal.y)).toBeLessThan(0.02);
  expect(Math.abs(wrapAngle(end.heading - question.goal.heading))).toBeLessThan(0.01);
  expect(directionChanges(found.path)).toBeLessThanOrEqual(who.changes);
  for (const { curvature } of found.path) {
    expect(Math.abs(curvature) * who.vehicle.rearAxleRadius).toBeLessThan(1 + 1e-9);
  }
}

describe("road between two walls, three moves", () => {
  it.each([
    // Three full-lock arcs, closed form (COMPUTED): compact 6.42, P 8.87, van 7.79, tipper 9.04 m on a grid of splits
    // of 0.02 rad, of which 0.01 rad finds up to 2.5 cm less.
    ["compact" as const, 6.42],
    ["P" as const, 8.87],
    ["van" as const, 7.79],
    ["tipper" as const, 9.04],
  ])("%s: the search stops at the closed form of %d m", (name, closed) => {
    const who = turner(name, 0, 3);
    const exact = threePointTurn(who.vehicle).width;
    expect(Math.abs(exact - closed)).toBeLessThan(0.03);
    const ask = (deep: number) => turnQuestion({ form: "road" }, { long: 0, deep }, who);
    const found = smallestSize(ask, { from: 3, to: 16 });
    if (!found) throw new Error("nothing found");
    // Below: a first swing the other way gains at most 2 cm (COMPUTED). Above: one squeeze and one rounding.
    expect(found.size).toBeGreaterThan(exact - 0.02);
    expect(found.size).toBeLessThan(exact + 0.05);
    checkByHand({ form: "road" }, { long: 0, deep: found.size }, found, who);
    const none = noneBelow(ask, found.size, 3) ?? 0;
    expect(none).toBeLessThan(exact);
    expect(none).toBeGreaterThan(exact - 0.35);
  });
});

describe("rectangles of a length: depth, m", () => {
  it.each([
    // Upper estimates of another program on a 5 cm lattice (COMPUTED); ours may be less, by what a lattice cannot tell
    // (up to 0.66 m where the mouth is tight), and more by no more than it costs to be 8 cm short of a better way.
    ["along", "compact", 0, 3, 14.5, 6.52],
    ["along", "compact", 0.3, 3, 14.5, 7.26],
    ["along", "compact", 0.3, 5, 8, 7.01],
    ["along", "P", 0, 3, 14.5, 9.22],
    ["along", "van", 0.3, 3, 10, 10.25],
    ["along", "tipper", 0, 5, 12, 8.26],
    ["middle", "compact", 0.3, 3, 10, 8.25],
    ["middle", "compact", 0, 5, 8, 5.0],
    ["middle", "P", 0, 3, 14.5, 7.31],
    ["middle", "P", 0, 5, 10, 7.56],
    ["middle", "P", 0.3, 3, 14.5, 11.31],
    ["middle", "P", 0.3, 5, 14.5, 8.37],
    ["middle", "van", 0.3, 3, 14.5, 7.23],
    ["middle", "tipper", 0.3, 3, 20, 8.09],
  ] as const)("%s %s clearance %d, %d moves, length %d: %d", (entry, name, clearance, moves, long, table) => {
    const one = { entry, name, clearance, moves };
    const who = turner(name, clearance, moves);
    const ask = (deep: number) => turnQuestion(layoutOf(one), { long, deep }, who);
    const found = smallestSize(ask, { from: 2, to: 16 });
    if (!found) throw new Error("nothing found");
    expect(found.size).toBeLessThan(table + 0.08);
    expect(found.size).toBeGreaterThan(table - 0.66);
    checkByHand(layoutOf(one), { long, deep: found.size }, found, who);
  });

  it("none where the vehicle cannot even stand in the track", () => {
    expect(depthOf({ entry: "middle", name: "tipper", clearance: 0.3, moves: 3, track: 2.8 }, 12)).toBe(Infinity);
  });
});

describe("14.5 x 7.2 m, common practice for a car's three-point turn (PRACTICE, no source)", () => {
  it("fits the P car in at right angles to the middle off a 3 m track with about 2 cm clear, and no more (COMPUTED)", () => {
    const layout: RoomLayout = { form: "rectangle", entry: "middle", track: 3, splay: 0 };
    const question = turnQuestion(layout, { long: 14.5, deep: 7.2 }, turner("P", 0, 3));
    const room = largestClearance(question, { from: -0.1, to: 0.3, within: 0.01 });
    expect(room.proven ?? -1).toBeGreaterThan(-0.02);
    expect(room.proven ?? 1).toBeLessThan(0.05);
    expect(room.noMoreThan).toBeLessThan(0.12);
  });
});

describe("what makes it smaller or larger", () => {
  const base: Case = { entry: "middle", name: "compact", clearance: 0.3, moves: 3 };
  const depth = depthOf(base, 12);
  it("a longer rectangle, a wider track, two more moves: never deeper; more clearance: deeper", () => {
    expect(depthOf(base, 14)).toBeLessThanOrEqual(depth);
    expect(depthOf({ ...base, track: 3.5 }, 12)).toBeLessThan(depth);
    expect(depthOf({ ...base, moves: 5 }, 12)).toBeLessThan(depth);
    expect(depthOf({ ...base, clearance: 0.4 }, 12)).toBeGreaterThan(depth);
  });
  it("each 0.1 m of clearance adds 0.25 m to a road (COMPUTED; 0.05 m)", () => {
    const road = (clearance: number) =>
      smallestSize((deep) => turnQuestion({ form: "road" }, { long: 0, deep }, turner("compact", clearance, 3)), {
        from: 3,
        to: 16,
      })?.size ?? 0;
    expect(Math.abs(road(0.2) - road(0) - 0.5)).toBeLessThan(0.05);
  });
});

describe("other forms", () => {
  it("a circle for driving round without reversing is wider than twice the wall radius", () => {
    const who = turner("compact", 0, 1);
    const { wallRadius } = steadyCircle(who.vehicle, who.vehicle.rearAxleRadius);
    const layout: RoomLayout = { form: "circle", track: 3, splay: 0 };
    const found = smallestSize((long) => turnQuestion(layout, { long, deep: 0 }, who), { from: 6, to: 40 });
    if (!found) throw new Error("nothing found");
    expect(found.size).toBeGreaterThan(2 * wallRadius);
    expect(found.size).toBeLessThan(4 * wallRadius);
    checkByHand(layout, { long: found.size, deep: 0 }, found, who);
  });
  it("a Y of the track's own width with the corners cut off lets a car turn in three moves", () => {
    const who = turner("compact", 0.1, 3);
    const layout: RoomLayout = { form: "wye", track: 3, splay: 3 };
    const found = smallestSize((long) => turnQuestion(layout, { long, deep: 0 }, who), { from: 3, to: 20 });
    if (!found) throw new Error("nothing found");
    checkByHand(layout, { long: found.size, deep: 0 }, found, who);
    // On a larger one the same path keeps clear, on a smaller one not.
    const at = (long: number) => keepsClear(turnQuestion(layout, { long, deep: 0 }, who), found.path);
    expect(at(found.size + 1)).toBe(true);
    expect(at(found.size - 0.05)).toBe(false);
  });
});
