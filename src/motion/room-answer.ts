// The room that one vehicle takes to turn round: the size, the way it is driven, the pegs, what would change it.

import type { Point } from "../model/reading.ts";
import { type Arc, type Move, movesOf } from "./pose.ts";
import { circleMiddle, pegsOf, type RoomLayout, type RoomSize, type Turner, turnQuestion } from "./room-layout.ts";
import { type CurvePoint, curveLengths, depthCurve, depthRange, longestUseful, smallestArea } from "./room-curve.ts";
import { type AskSize, keepsClear, noneBelow, type SizeRange, type SizeWithPath, smallestSize } from "./room-size.ts";
import { type SweptOutline, sweptOutline } from "./swept-outline.ts";
import { prepareEnvelopes } from "./checked.ts";
import { envelopesOf } from "./envelope.ts";
import { sweepPath } from "./sweep.ts";
import type { Tightest } from "./tightest.ts";
import { overallLength } from "./vehicle.ts";

/** What is asked. A length or depth (m) that is given is kept; what is not given is looked for. */
export interface RoomAsked {
  readonly turner: Turner;
  readonly layout: RoomLayout;
  readonly long: number | null;
  readonly deep: number | null;
}

/** What somebody might do otherwise, in place of what is asked. */
export interface RoomOtherwise {
  readonly key: string;
  readonly turner: Turner;
  readonly layout: RoomLayout;
}

/** A ground on which the vehicle turns round, m, with all that a drawing shows. */
export interface RoomFound {
  readonly size: RoomSize;
  /** Which of the two was looked for. */
  readonly solved: "long" | "deep";
  /** No way was found below this, m, for a vehicle 5 cm smaller all round; null where that was not looked for or not so. */
  readonly noneBelow: number | null;
  readonly path: readonly Arc[];
  readonly moves: readonly Move[];
  readonly swept: SweptOutline;
  /** Where the bare body comes nearest to an edge. */
  readonly tightest: Tightest;
  /** The whole ground with its track, and the corners to peg. */
  readonly ground: readonly Point[];
  readonly pegs: readonly Point[];
  /** Diameter of the island that can stay in a circle, m; null for other forms or where there is room for none. */
  readonly island: number | null;
}

/** The same with something else: the new size of what was looked for, m; null where none was found. */
export interface RoomChange extends RoomOtherwise {
  readonly size: number | null;
}

export interface RoomAnswer {
  readonly asked: RoomAsked;
  readonly found: RoomFound | null;
  /** Least depths by length, for a rectangle whose length is not given. */
  readonly curve: readonly CurvePoint[];
  readonly changes: readonly RoomChange[];
}

/** The smallest ground for one vehicle, and what other wishes would make of it. Pure; the same asked, the same answer. */
export function roomFor(asked: RoomAsked, otherwise: readonly RoomOtherwise[]): RoomAnswer {
  const { turner, layout } = asked;
  const curve = wantsCurve(asked) ? depthCurve(layout, turner, curveLengths(turner)) : [];
  const best = smallestArea(curve);
  const found = best?.found
    ? { at: best.found, solved: "deep" as const, size: { long: best.long, deep: best.found.size } }
    : wantsCurve(asked)
      ? null
      : solve(asked);
  if (found === null) return { asked, found: null, curve, changes: [] };
  const kept: RoomAsked = { ...asked, [found.solved === "deep" ? "long" : "deep"]: otherOf(found) };
  const changes = otherwise.map(({ key, ...rest }) => ({ key, ...rest, size: changed(kept, rest, found.at) }));
  const below = noneBelow(askerOf(kept, found.solved), found.at.size, rangeOf(kept, found.solved).from);
  return { asked, found: { ...finished(kept, found), noneBelow: below }, curve, changes };
}

const wantsCurve = ({ layout, long, deep }: RoomAsked) => layout.form === "rectangle" && long === null && deep === null;

interface Solved {
  readonly at: SizeWithPath;
  readonly solved: "long" | "deep";
  readonly size: RoomSize;
}

const otherOf = ({ solved, size }: Solved) => (solved === "deep" ? size.long : size.deep);

/** Which of length and depth is looked for: the depth, but where it is given, or where the form has only a length. */
function unknownOf({ layout, deep }: RoomAsked): "long" | "deep" {
  if (layout.form === "road") return "deep";
  return layout.form !== "rectangle" || deep !== null ? "long" : "deep";
}

function askerOf({ layout, turner, long, deep }: RoomAsked, unknown: "long" | "deep"): AskSize {
  const kept = { long: long ?? 0, deep: deep ?? 0 };
  return (size) => turnQuestion(layout, { ...kept, [unknown]: size }, turner);
}

function rangeOf({ layout, turner }: RoomAsked, unknown: "long" | "deep"): SizeRange {
  const range = depthRange(turner, layout);
  if (unknown === "deep") return range;
  // A circle is driven round without reversing, which takes two of them across; the arms of a Y are half a bar.
  return { from: range.from, to: (layout.form === "circle" ? 2 : 1) * longestUseful(turner) + 2 * range.from };
}

function solve(asked: RoomAsked): Solved | null {
  const solved = unknownOf(asked);
  const at = smallestSize(askerOf(asked, solved), rangeOf(asked, solved));
  return at && { at, solved, size: { long: asked.long ?? 0, deep: asked.deep ?? 0, [solved]: at.size } };
}

function changed(kept: RoomAsked, other: Omit<RoomOtherwise, "key">, before: SizeWithPath): number | null {
  const asked = { ...kept, ...other };
  const unknown = unknownOf(asked);
  const ask = askerOf(asked, unknown);
  const known = before.path.length > 0 && keepsClear(ask(before.size), before.path) ? before : undefined;
  return smallestSize(ask, rangeOf(asked, unknown), known)?.size ?? null;
}

function finished(asked: RoomAsked, { at, solved, size }: Solved): RoomFound {
  const { turner, layout } = asked;
  const question = turnQuestion(layout, size, turner);
  const bare = prepareEnvelopes(envelopesOf(turner.vehicle, question, Math.min(0, turner.clearance)));
  const swept = sweepPath(bare, question.start, at.path);
  const tightest: Tightest =
    swept.is === "accepted"
      ? swept.tightest
      : { clearance: turner.clearance, at: [0, 0], part: "body", arc: 0, along: 0 };
  const outline = sweptOutline(turner.vehicle, question.start, at.path);
  return {
    size,
    solved,
    noneBelow: null,
    path: at.path,
    moves: movesOf(at.path),
    swept: outline,
    tightest,
    ground: question.clear.rings[0] ?? [],
    pegs: pegsOf(layout, size),
    island: layout.form === "circle" ? islandIn(asked, size, at.path) : null,
  };
}

/** Corners of an island drawn as a polygon around it. */
const islandCorners = 48;
const islandGrain = 0.1;

/** Largest round island, m across, in tenths, that the path keeps clear of, by the exact sweep; null where none. */
function islandIn({ layout, turner }: RoomAsked, size: RoomSize, path: readonly Arc[]): number | null {
  if (layout.form !== "circle") return null;
  const question = turnQuestion(layout, size, turner);
  const [x, y] = circleMiddle(layout.track, size.long);
  const fits = (across: number): boolean => {
    const radius = across / 2 / Math.cos(Math.PI / islandCorners);
    const island = Array.from({ length: islandCorners }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / islandCorners;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    });
    const ground = { ...question.clear, obstacles: [island] };
    return keepsClear({ ...question, clear: ground, running: ground }, path);
  };
  let across = 0;
  while (across + islandGrain < size.long && fits(across + islandGrain)) across += islandGrain;
  return across > 0 ? across : null;
}

/** How much clearance there is on a ground of a given size. */
export interface RoomTried {
  readonly size: RoomSize;
  /** Largest clearance, m, for which a path was found and checked exactly; null where there is none even of nothing. */
  readonly clearance: number | null;
  /** Above this, m, no way was found even for a vehicle 5 cm smaller. */
  readonly noMoreThan: number;
  readonly found: RoomFound | null;
}

/** Clearances among which the largest is looked for, m. */
const mostClearance = 1.5;
const leastClearance = -0.1;
/** A centimetre of clearance is worth several of length. */
const clearanceSteps = 0.15;

/**
 * The largest clearance on a ground whose length and depth are both given (m), in whole centimetres from below. Less
 * clearance is more room, so it is looked for like a size.
 */
export function clearanceOn(asked: RoomAsked & { readonly long: number; readonly deep: number }): RoomTried {
  const { turner, layout, long, deep } = asked;
  const size = { long, deep };
  const ask: AskSize = (less) => turnQuestion(layout, size, { ...turner, clearance: -less });
  const at = smallestSize(ask, { from: -mostClearance, to: -leastClearance, steps: clearanceSteps });
  const below = noneBelow(ask, at?.size ?? -leastClearance, -mostClearance);
  const noMoreThan = below === null ? mostClearance : -below;
  if (at === null || at.size > 1e-6) return { size, clearance: null, noMoreThan, found: null };
  const clearance = Math.max(0, -at.size);
  const found = finished(
    { ...asked, turner: { ...turner, clearance } },
    { at: { size: deep, path: at.path }, solved: "deep", size },
  );
  return { size, clearance, noMoreThan, found };
}

/** Length of straight track before the mouth that was reckoned with, m. */
export function trackBefore({ vehicle }: Turner, found: RoomFound): number {
  const start = found.swept.stops[0]?.pose;
  return start ? -start.y + vehicle.wheelbase + vehicle.frontOverhang : overallLength(vehicle);
}
