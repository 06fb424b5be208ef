// A parked vehicle carries the doubt of its own width and of the bay that it stands in the middle of.

import { expect, it } from "vitest";
import { readPlain, spread } from "../../src/engine/spread.ts";
import { stageViews } from "../../src/engine/stages.ts";
import { roomBesideParked } from "../../src/measures/room-beside-parked.ts";
import { planOf } from "../plan/resolved.ts";

/** A bay 3 m wide known to `bay`, a car 1.8 m wide known to `width`, and a wall 1 m from the car, known exactly. */
function besideWall(width: string, bay: string) {
  const plan = planOf(`
sightrail: 1
title: t
place: [anywhere]
stages: [works]
surfaces:
  bay: {outline: [[0 ± ${bay}, 0 ± 0], [3 ± ${bay}, 0 ± 0], [3 ± ${bay}, 5 ± 0], [0 ± ${bay}, 5 ± 0]], for: [parking], existing: true}
  track: {centre_line: [[1.5, -20], [1.5, 0.5]], width: 3, for: [vehicles], existing: true}
walls: {side: {line: [[3.4 ± 0, -5 ± 0], [3.4 ± 0, 9 ± 0]], height: 2, existing: true}}
vehicles: {car: {length: 4.2 ± 0, wheelbase: 2.6 ± 0, front_overhang: 0.85 ± 0, width: 1.8 ± ${width}, turning_circle: {across: 10.8 ± 0, between: kerbs}}}
manoeuvres: {home: {vehicle: car, does: park, comes_in_by: track, to: bay, on: [track, bay], moves: 1, clear: 0.05}}
`);
  const read = readPlain(plan.numbers);
  const [view] = stageViews(plan, [0], read, () => []);
  const manoeuvre = plan.features.find((feature) => feature.kind === "manoeuvre");
  const found = view && manoeuvre ? roomBesideParked.find({ manoeuvre }, view.scene, {}) : null;
  if (found?.is !== "found") throw new Error(JSON.stringify(found));
  const place = found.places.toSorted((a, b) => a.value(read) - b.value(read))[0];
  return { value: place?.value(read), u: place ? spread(place.value, read, plan.numbers).u : 0 };
}

const ofBay = Math.hypot(0.01, (2.1 * 0.02 * 5) / 34);

it.each([
  // A given ± holds 19 times in 20: half of it is the standard uncertainty (k = 2). Half of the width's counts on each side.
  ["the car's width alone", "0.04", "0", 0.01],
  // The middle of four corners, 20 mm each along one axis: 20 / sqrt(4). The bay turns by 20 x sqrt(4 x 2.5^2) / (4 x (1.5^2 + 2.5^2)),
  // which moves the car's corner, 2.1 m before its middle, sideways.
  ["the bay's corners alone", "0", "0.04", ofBay],
  ["both", "0.04", "0.04", Math.hypot(0.01, ofBay)],
  ["nothing in doubt", "0", "0", 0],
])("%s (COMPUTED)", (_, width, bay, u) => {
  const room = besideWall(width, bay);
  expect(room.value).toBeCloseTo(1, 2); // half of a line drawn 2 mm thick
  expect(room.u).toBeCloseTo(u, 3);
});
