// The turning scenes written as plans: pads and tracks as somebody would draw them, vehicles by their lengths.

/** Lengths and circle of the two cars of the scenes: P as AASHTO (MEMORY), compact PRACTICE. */
const cars = {
  P: {
    wheelbase: 3.35,
    front_overhang: 0.91,
    rear_overhang: 1.52,
    length: 5.78,
    width: 2.13,
    track: 1.83,
    turning_circle: { across: 14.52, between: "kerbs" },
  },
  compact: {
    wheelbase: 2.6,
    front_overhang: 0.85,
    rear_overhang: 0.75,
    length: 4.2,
    width: 1.8,
    track: 1.74,
    turning_circle: { across: 10.8, between: "kerbs" },
  },
} as const;

type Point = readonly [number, number];
export type Move = (point: Point) => Point;
export const asDrawn: Move = (point) => point;

interface Scene {
  readonly car: keyof typeof cars;
  readonly pad: readonly Point[];
  readonly track: readonly Point[];
  readonly clear: number;
}

/** Quarter circles of 5 m at the two inner corners of the T head of scene c, from its bar to its stem, as drawn. */
const rounded: readonly Point[] = Array.from({ length: 7 }, (_, i): Point => {
  const angle = (i * Math.PI) / 12;
  return [-6.5 + 5 * Math.sin(angle), -5 + 5 * Math.cos(angle)];
});

/** Scenes a, b, c and f of the turning search. */
export const scenes = {
  a: {
    car: "P",
    pad: [
      [0, 0],
      [14.5, 0],
      [14.5, 7.2],
      [0, 7.2],
    ],
    track: [
      [7.25, -18],
      [7.25, 1],
    ],
    clear: 0.08,
  },
  b: {
    car: "compact",
    pad: [
      [0, 0],
      [14.5, 0],
      [14.5, 7.2],
      [0, 7.2],
    ],
    track: [
      [-18, 1.5],
      [1, 1.5],
    ],
    clear: 0.15,
  },
  c: {
    car: "compact",
    pad: [[-7, 0], ...rounded, ...rounded.toReversed().map(([x, y]): Point => [-x, y]), [7, 0], [7, 3.2], [-7, 3.2]],
    track: [
      [0, -18],
      [0, -4],
    ],
    clear: 0.15,
  },
  f: {
    car: "P",
    pad: [
      [0, 0],
      [7, 0],
      [7, 4.5],
      [0, 4.5],
    ],
    track: [
      [3.5, -18],
      [3.5, 1],
    ],
    clear: 0.05,
  },
} as const satisfies Readonly<Record<string, Scene>>;

export interface Written {
  readonly moves: number;
  readonly moved?: Move;
  readonly clear?: number;
  readonly more?: Readonly<Record<string, unknown>>;
}

/** A scene as a plan; numbers carry no doubt of their own, so that the search alone is looked at. */
export function planOfScene(scene: Scene, { moves, moved = asDrawn, clear = scene.clear, more = {} }: Written): string {
  const exact = (point: Point) => moved(point).map((value) => `${value.toFixed(9)} ± 0`);
  return JSON.stringify({
    sightrail: 1,
    title: "a turning place",
    place: ["anywhere"],
    as_of: "2026-11-25",
    stages: ["works"],
    surfaces: {
      pad: { outline: scene.pad.map(exact), for: ["vehicles"], existing: true },
      track: { centre_line: scene.track.map(exact), width: 3, for: ["vehicles"], existing: true },
    },
    vehicles: { car: cars[scene.car] },
    manoeuvres: {
      turn: {
        vehicle: "car",
        does: "turn round",
        comes_in_by: "track",
        on: ["track", "pad"],
        moves,
        clear,
        body_over_edge: false,
      },
    },
    ...more,
  });
}
