// Pieces of ground on which a vehicle turns round: a rectangle, a Y, a circle, a road, each with the track that leads
// in. Larger ones contain smaller ones of the same layout, so that a path of a small one is a path of a large one.

import type { Point } from "../model/reading.ts";
import type { Ground } from "./ground.ts";
import type { ManoeuvreQuestion } from "./manoeuvre.ts";
import { mirrorStrip, type TurnerMirrors } from "./room-mirrors.ts";
import { overallLength, type Vehicle } from "./vehicle.ts";

/**
 * How a track comes to a rectangle. `along`: it runs through along one long side, which is a lay-by; the depth counts
 * from the track's far edge. `middle`, `end`: at right angles to the long side, in its middle or flush with its end.
 * `short side`: through a short side, flush with a long one. In the last three the depth or length excludes the track.
 */
export const rectangleEntries = ["along", "middle", "end", "short side"] as const;
export type RectangleEntry = (typeof rectangleEntries)[number];

/** Lengths in metres. `splay`: how far the corners of the mouth are cut off, along the track and along the side. */
export type RoomLayout =
  | {
      readonly form: "rectangle";
      readonly entry: RectangleEntry;
      readonly track: number;
      readonly splay: number;
    }
  /** Three legs of the track's width, 120 degrees apart; the length is that of the two arms from where the middles meet. */
  | { readonly form: "wye"; readonly track: number; readonly splay: number }
  /** A circle that the track leads into towards its middle; the length is the distance across. */
  | { readonly form: "circle"; readonly track: number; readonly splay: number }
  /** Between two parallel edges without end, in and out the same way; the depth is the distance between them. */
  | { readonly form: "road" };

/** Length and depth of a piece of ground, m; what they are depends on the layout. */
export interface RoomSize {
  readonly long: number;
  readonly deep: number;
}

/** A vehicle that is to turn round: clearance wanted all round its body (m) and changes of direction allowed. */
export interface Turner {
  readonly vehicle: Vehicle;
  readonly clearance: number;
  readonly changes: number;
  /** Mirrors, where edges stand as high as they hang; the clearance is kept from them too. */
  readonly mirrors?: TurnerMirrors;
}

/** How far before the mouth the front stands at the start and behind the tail is free at the end, m (method constant). */
const runIn = 1.5;
/** Corners of a circle drawn as a polygon inside it: it is at most 0.1 % smaller across. */
const circleCorners = 72;
/** Half the length of a road, in lengths of the vehicle: room to get to either edge and back to the middle. */
const roadLengths = 3.5;

/**
 * The question whether a vehicle can come in, turn round on a ground of some size, and go out the way it came,
 * forwards. The track comes in along +y with its middle on x = 0 and its mouth at y = 0.
 */
export function turnQuestion(layout: RoomLayout, size: RoomSize, turner: Turner): ManoeuvreQuestion {
  const { vehicle, clearance, changes } = turner;
  const reach = vehicle.wheelbase + vehicle.frontOverhang;
  const before = reach + runIn + ("splay" in layout ? layout.splay : 0);
  const far = before + reach + Math.max(0, clearance) + runIn;
  const ring = ringOf(layout, size, { far, beyond: overallLength(vehicle) + 2 * runIn });
  const ground: Ground = { rings: [layout.form === "road" ? roadRing(size.deep, vehicle) : ring] };
  const [x, y] = layout.form === "road" ? [0, -roadLengths * overallLength(vehicle) + far - before] : [0, -before];
  return {
    vehicle,
    clear: ground,
    running: ground,
    ...(turner.mirrors ? { mirrors: mirrorStrip(vehicle, turner.mirrors, { layout, size, ground }) } : {}),
    start: { x, y, heading: Math.PI / 2 },
    goal: { x, y, heading: -Math.PI / 2 },
    margin: clearance,
    mostChanges: changes,
  };
}

interface Approach {
  /** How far the track reaches back from the mouth, and on beyond a lay-by, m. */
  readonly far: number;
  readonly beyond: number;
}

function roadRing(width: number, vehicle: Vehicle): readonly Point[] {
  const half = roadLengths * overallLength(vehicle);
  return [
    [-width / 2, -half],
    [width / 2, -half],
    [width / 2, half],
    [-width / 2, half],
  ];
}

/** Corners of a layout, counter-clockwise, m; the pegs of the ground itself are those of `pegsOf`. */
function ringOf(layout: RoomLayout, size: RoomSize, approach: Approach): readonly Point[] {
  if (layout.form === "road") return [];
  const half = layout.track / 2;
  const { far, beyond } = approach;
  const pegs = pegsOf(layout, size);
  if (layout.form !== "rectangle" || layout.entry !== "along") return [[-half, -far], [half, -far], ...pegs];
  const [low, high] = [pegs[0]!, pegs[1]!];
  return [
    [-half, -far],
    [half, -far],
    [half, 0],
    low,
    high,
    [half, size.long],
    [half, size.long + beyond],
    [-half, size.long + beyond],
  ];
}

/**
 * Corners to peg, m, counter-clockwise from the right-hand side of the mouth, in the frame of `turnQuestion`. Those
 * of a lay-by are the two that stand off the track first, then the two on the track's own edge.
 */
export function pegsOf(layout: RoomLayout, size: RoomSize): readonly Point[] {
  if (layout.form === "rectangle") return rectanglePegs(layout, size);
  if (layout.form === "wye") return wyePegs(layout, size.long);
  if (layout.form === "circle") return circlePegs(layout, size.long);
  return [];
}

function rectanglePegs(layout: Extract<RoomLayout, { form: "rectangle" }>, { long, deep }: RoomSize): readonly Point[] {
  const { entry, splay } = layout;
  const half = layout.track / 2;
  if (entry === "along") {
    return [
      [deep - half, 0],
      [deep - half, long],
      [-half, long],
      [-half, 0],
    ];
  }
  const [left, right] = entry === "middle" ? [-long / 2, long / 2] : [-half, (entry === "end" ? long : deep) - half];
  const high = entry === "short side" ? long : deep;
  // A mouth flush with a side has no corner there.
  const rightSide: readonly Point[] = right > half ? [...cornerCut(half, splay, right - half), [right, 0]] : [];
  const leftSide: readonly Point[] =
    left < -half
      ? [
          [left, 0],
          ...cornerCut(half, splay, -half - left)
            .map(mirrored)
            .reverse(),
        ]
      : [];
  return [...rightSide, [right, high], [left, high], ...leftSide];
}

const mirrored = ([x, y]: Point): Point => [-x, y];

/** Corner of a mouth on the right, cut off by a splay that the side has room for. */
function cornerCut(half: number, splay: number, room: number): Point[] {
  const cut = Math.min(splay, room);
  if (cut <= 0) return [[half, 0]];
  return [
    [half, -splay],
    [half + cut, 0],
  ];
}

/** Legs 120 degrees apart meet in corners at w / (2 sqrt 3) along each leg from the middle. */
function wyePegs({ track, splay }: { readonly track: number; readonly splay: number }, long: number): readonly Point[] {
  const half = track / 2;
  const inner = half / Math.sqrt(3);
  const legs = [Math.PI / 6, (5 * Math.PI) / 6];
  // The mouth of the stem stands where its sides meet those of the arms.
  const at = (direction: number, along: number, left: number): Point => [
    along * Math.cos(direction) - left * Math.sin(direction),
    along * Math.sin(direction) + left * Math.cos(direction) + inner,
  ];
  const cut = Math.min(splay, Math.max(0, long - inner));
  const [right, left] = legs as [number, number];
  const between = (from: number, to: number): readonly Point[] =>
    cut <= 0 ? [at(from, inner, half)] : [at(from, inner + cut, half), at(to, inner + cut, -half)];
  const mouth = cut <= 0 ? [] : [[half, -splay] as Point];
  return [
    ...mouth,
    at(right, inner + cut, -half),
    at(right, long, -half),
    at(right, long, half),
    ...between(right, left),
    at(left, long, -half),
    at(left, long, half),
    at(left, inner + cut, half),
    ...mouth.map(mirrored),
  ];
}

function circlePegs(
  { track, splay }: { readonly track: number; readonly splay: number },
  across: number,
): readonly Point[] {
  const radius = Math.max(across / 2, track / 2);
  const half = track / 2;
  const middle = Math.sqrt(radius ** 2 - half ** 2);
  const first = Math.atan2(-middle, half) + Math.min(splay / radius, 1);
  const last = Math.PI - first;
  const round = Array.from({ length: circleCorners + 1 }, (_, i): Point => {
    const angle = first + ((last - first) * i) / circleCorners;
    return [radius * Math.cos(angle), middle + radius * Math.sin(angle)];
  });
  return splay <= 0 ? round : [[half, -splay], ...round, [-half, -splay]];
}

/** Middle of a circle in the frame of `turnQuestion`. */
export function circleMiddle(track: number, across: number): Point {
  return [0, Math.sqrt(Math.max(0, (across / 2) ** 2 - (track / 2) ** 2))];
}
