// An invented picture: every form and most kinds, with names that would break a careless drawing.

import type { Picture, PictureMark } from "../../src/model/picture.ts";
import type { Point } from "../../src/model/reading.ts";

function mark(
  kind: string,
  name: string,
  part: Partial<PictureMark> & Pick<PictureMark, "form" | "points">,
): PictureMark {
  return { kind, name, label: name, existing: true, ...part };
}

const box = (west: number, south: number, east: number, north: number): readonly Point[] => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
];

const marks: readonly PictureMark[] = [
  mark("boundary", "lane side", {
    form: "line",
    points: [
      [-6, -15],
      [-4, 0],
      [-2, 24],
      [3, 44],
    ],
    label: "boundary, lane side",
  }),
  mark("road", "lane", {
    form: "line",
    points: [
      [-9, -15],
      [-7, 0],
      [-5, 24],
      [0, 44],
    ],
    width: 3.1,
  }),
  mark("surface", "track", {
    form: "line",
    points: [
      [-7, -1],
      [0, -1.5],
      [8, -2.3],
      [24.5, -1.9],
    ],
    width: 3,
    label: "track, 3.0 m",
  }),
  mark("surface", "yard", {
    form: "outline",
    points: box(24.5, -8.6, 36.5, -0.4),
    holes: [box(29, -5, 30.2, -3.8)],
    existing: false,
  }),
  mark("surface", "bay", { form: "outline", points: box(24.5, 0.4, 27.1, 5.4), existing: false }),
  mark("building", "bunkhouse", {
    form: "outline",
    points: [
      [6.1, 7.4],
      [14.6, 7.6],
      [14.5, 12.8],
      [6, 12.6],
    ],
  }),
  mark("wall", "march wall", {
    form: "line",
    points: [
      [0, -12.4],
      [20, -12.9],
      [42.3, -11.8],
    ],
    width: 0.6,
    label: "march wall, 1.26 m",
  }),
  mark("bank", "cutting", {
    form: "line",
    points: [
      [24, -9.4],
      [37, -9.4],
    ],
    existing: false,
  }),
  mark("fence", "goat paddock", {
    form: "line",
    points: [
      [0, -10.9],
      [20, -11.4],
      [22, 0],
      [22, 18],
    ],
    existing: false,
  }),
  mark("gate", "lane gate", {
    form: "line",
    points: [
      [0, 0],
      [-3.4, 0.2],
    ],
  }),
  mark("hedge", "old hedge", {
    form: "line",
    points: [
      [4, 40],
      [20, 38],
      [44, 36],
    ],
    width: 1.4,
  }),
  mark("tree", "ash", { form: "circle", points: [[20, 16]], radius: 6 }),
  mark("tree", "plum", { form: "circle", points: [[33, 14]], radius: 2.5 }),
  mark("tree", "whip", { form: "point", points: [[38, 20]], existing: false }),
  mark("tree", "<b>\u001b[2J=1+1", { form: "circle", points: [[40, 8]], radius: 1.5, label: "<script>&\"'\u202e" }),
  mark("chamber", "inspection 1", { form: "point", points: [[18, 9]] }),
  mark("septic_tank", "tank", { form: "point", points: [[30, 3]] }),
  mark("drain", "washhouse to tank", {
    form: "line",
    points: [
      [14.5, 12.8],
      [18, 9],
      [30, 3],
    ],
    existing: false,
    label: "100 mm foul, 1 in 94",
  }),
  mark("drain", "yard drain", {
    form: "line",
    points: [
      [36.5, -8.6],
      [44, -12.5],
    ],
    existing: false,
  }),
  mark("drainage_field", "lower field", { form: "outline", points: box(36, 26, 48, 32) }),
  mark("water", "pond", {
    form: "outline",
    points: [
      [42, -2],
      [49, -3],
      [51, 2],
      [46, 5],
      [42, 3],
    ],
  }),
  mark("water", "spring head", { form: "point", points: [[5, 40]], label: "spring head (drinking)" }),
  mark("water", "ditch", {
    form: "line",
    points: [
      [42.3, -11.8],
      [60, -14],
    ],
  }),
  mark("heap", "muck", { form: "circle", points: [[12, -7]], radius: 2 }),
  mark("excavation", "tank pit", { form: "outline", points: box(28.5, 1.5, 31.5, 4.5), existing: false }),
  mark("service", "field line", {
    form: "line",
    points: [
      [-2, 21],
      [46, 27],
    ],
    label: "overhead line, owner not asked",
  }),
  mark("manoeuvre", "pickup turns", {
    form: "line",
    points: [
      [8, -2],
      [20, -2],
      [27, -3],
      [30, -6],
    ],
    width: 1.6,
    existing: false,
    label: "pickup in",
  }),
  mark("route", "to the door", {
    form: "line",
    points: [
      [0, 2],
      [5, 5],
      [8, 7.4],
    ],
  }),
  mark("ramp", "barrow ramp", {
    form: "line",
    points: [
      [15, 2],
      [19, 5],
    ],
    width: 1.2,
    existing: false,
  }),
  ...(["P1", "P2", "P3", "B1", "Q2", "Q3"] as const).map((name, index) =>
    mark("peg", name, {
      form: "point",
      points: [
        (
          [
            [0, 0],
            [42.3, 0],
            [26, 22],
            [6.1, 7.4],
            [36.5, -0.4],
            [36.5, -8.6],
          ] as const
        )[index] ?? [0, 0],
      ],
    }),
  ),
];

export const inventedPicture: Picture = { title: "Heather Garth, lower yard", stage: "yard", marks, trueNorth: 0.07 };

/** Nothing drawn, no earth tie. */
export const emptyPicture: Picture = { title: "A plan with nothing in it", stage: "", marks: [], trueNorth: null };

/** A plan of one gate, to see a fine scale. */
export const smallPicture: Picture = {
  title: "One gate",
  stage: "now",
  marks: [
    mark("gate", "lane", {
      form: "line",
      points: [
        [0, 0],
        [3.1, 0.2],
      ],
    }),
    mark("fence", "east", {
      form: "line",
      points: [
        [3.1, 0.2],
        [9, 0.6],
      ],
    }),
    mark("wall", "west", {
      form: "line",
      points: [
        [-5, 0],
        [0, 0],
      ],
      width: 0.45,
    }),
  ],
  trueNorth: null,
};
