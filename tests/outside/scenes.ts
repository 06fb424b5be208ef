// Ten invented turning scenes beside those of the motion tests: small pads, through roads, a yard with a tree, bays.

import type { Point } from "../../src/model/reading.ts";
import type { ManoeuvreQuestion } from "../../src/motion/manoeuvre.ts";
import { sceneVehicles } from "../motion/published-vehicles.ts";

type Name = keyof typeof sceneVehicles;

interface Sketch {
  readonly vehicle: Name;
  readonly margin: number;
  readonly outline: readonly Point[];
  readonly obstacles?: readonly (readonly Point[])[];
  readonly start: readonly [number, number, number];
  readonly goal?: readonly [number, number, number];
  readonly firstGear?: "forward" | "reverse";
}

const east = 0;
const north = Math.PI / 2;

/** A pad that is `long` by `deep` off a track of width `track`, which meets the middle of its long side. */
function middle(vehicle: Name, [long, deep, track]: readonly [number, number, number], margin: number): Sketch {
  const [from, to] = [(long - track) / 2, (long + track) / 2];
  const outline: readonly Point[] = [
    [0, 0],
    [from, 0],
    [from, -18],
    [to, -18],
    [to, 0],
    [long, 0],
    [long, deep],
    [0, deep],
  ];
  return { vehicle, margin, outline, start: [long / 2, -10, north] };
}

/** The same with the track running on along its long side from one end. */
function end(vehicle: Name, [long, deep, track]: readonly [number, number, number], margin: number): Sketch {
  const outline: readonly Point[] = [
    [-18, 0],
    [long, 0],
    [long, deep],
    [0, deep],
    [0, track],
    [-18, track],
  ];
  return { vehicle, margin, outline, start: [-10, track / 2, east] };
}

const tree: readonly Point[] = [
  [6.5, 4.6],
  [7.5, 4.6],
  [7.5, 5.6],
  [6.5, 5.6],
];

const sketches: Readonly<Record<string, Sketch>> = {
  "pad of 35 m2": middle("compact", [8, 4.4, 3], 0.05),
  "long car on a pad for a short one": end("P", [14.5, 7.2, 3], 0.05),
  "too small for twelve": middle("P", [9, 5.4, 3], 0.1),
  "end of a track": end("compact", [11, 6.6, 3], 0.2),
  "pad across the track": middle("compact", [10, 5, 3], 0.1),
  "van at a wide mouth": middle("van", [13, 7.5, 3.5], 0.2),
  "tipper on a yard": middle("tipper", [16, 9, 3.5], 0.2),
  "tipper at the end of a track": end("tipper", [18, 9.2, 3.5], 0.1),
  "yard with a tree": { ...end("compact", [14, 9, 3], 0.15), obstacles: [tree] },
  "out of a bay": {
    vehicle: "compact",
    margin: 0.1,
    outline: [
      [-20, 0],
      [6, 0],
      [6, 4.2],
      [2.8, 4.2],
      [2.8, 9.2],
      [0, 9.2],
      [0, 4.2],
      [-20, 4.2],
    ],
    start: [1.4, 5.6, north],
    goal: [-12, 2.1, Math.PI],
    firstGear: "reverse",
  },
};

/** The scenes as questions; a goal that is left out is the start the other way round. */
export const ownScenes: readonly { readonly name: string; readonly question: ManoeuvreQuestion }[] = Object.entries(
  sketches,
).map(([name, sketch]) => {
  const { vehicle, margin, outline, obstacles, start, goal, firstGear } = sketch;
  const ground = { rings: [outline], ...(obstacles ? { obstacles } : {}) };
  const [x, y, heading] = start;
  const [gx, gy, turned] = goal ?? [x, y, heading + Math.PI];
  return {
    name,
    question: {
      vehicle: sceneVehicles[vehicle],
      clear: ground,
      running: ground,
      margin,
      start: { x, y, heading },
      goal: { x: gx, y: gy, heading: turned },
      mostChanges: 12,
      ...(firstGear ? { firstGear } : {}),
    },
  };
});
