// Lines of live points: directions, places along them, lines beside them. All by the chain rule, so pegs keep their doubt.

import type { Place } from "../model/path.ts";
import type { LivePoint } from "./number-book.ts";
import { difference, exact, hypotenuse, product, quotient, scaled, sum, type Uncertain } from "./sway.ts";

/** A line or ring of points; `name` as it is called in the plan. */
export interface LiveLine {
  readonly points: readonly LivePoint[];
  readonly closed: boolean;
  readonly name: string;
}

interface Pair {
  readonly east: Uncertain;
  readonly north: Uncertain;
}

/** Direction of length 1 from one point to another, with the distance; null where they lie on each other. */
export interface Direction extends Pair {
  readonly length: Uncertain;
}

export function directionOf(from: LivePoint, to: LivePoint): Direction | null {
  const east = difference(to.east, from.east);
  const north = difference(to.north, from.north);
  const length = hypotenuse(east, north);
  if (!(length.value > 0)) return null;
  return { east: quotient(east, length), north: quotient(north, length), length };
}

/** from + run e + left n, with e along the direction and n to its left. */
export function offsetFrom(
  from: Pair,
  way: Pair,
  { run, left }: { readonly run: Uncertain; readonly left: Uncertain },
): Pair {
  return {
    east: sum(from.east, product(run, way.east), scaled(product(left, way.north), -1)),
    north: sum(from.north, product(run, way.north), product(left, way.east)),
  };
}

interface Piece {
  readonly from: LivePoint;
  readonly to: LivePoint;
  readonly way: Direction;
}

/** The straight pieces of a line, with the closing one of a ring. Pieces without length are passed over. */
function piecesOf(line: LiveLine): readonly Piece[] {
  const ends = line.closed ? [...line.points.slice(1), ...line.points.slice(0, 1)] : line.points.slice(1);
  return ends.flatMap((to, i) => {
    const from = line.points[i] as LivePoint;
    const way = directionOf(from, to);
    return way === null ? [] : [{ from, to, way }];
  });
}

/** Length of a line as far as it is known, metres. */
export function lengthOf(line: LiveLine): Uncertain {
  return sum(...piecesOf(line).map((piece) => piece.way.length));
}

/**
 * The point `run` metres along a line and `left` metres to its left. Before the start and past the end the end
 * pieces are carried on straight. Null for a line without length.
 */
export function pointAlong(
  line: LiveLine,
  at: { readonly run: Uncertain; readonly left: Uncertain },
  place: Place,
): LivePoint | null {
  const pieces = piecesOf(line);
  let before = exact(0);
  for (const [i, piece] of pieces.entries()) {
    const left = difference(at.run, before);
    if (left.value <= piece.way.length.value || i === pieces.length - 1) {
      return { ...offsetFrom(piece.from, piece.way, { run: left, left: at.left }), place };
    }
    before = sum(before, piece.way.length);
  }
  return null;
}

/**
 * The line `left` metres to the left of another (below 0: right), with mitred bends: at a bend between directions
 * e1, e2 with left normals n1, n2 the vertex moves by d (n1 + n2) / (1 + e1.e2). Exact for straight pieces.
 * Null where the line has no length or turns back on itself.
 */
export function lineBeside(line: LiveLine, left: Uncertain, place: Place): LiveLine | null {
  const pieces = piecesOf(line);
  if (pieces.length === 0) return null;
  const points: LivePoint[] = [];
  const corners = line.closed ? pieces.length : pieces.length + 1;
  for (let i = 0; i < corners; i += 1) {
    const before = pieces[i - 1] ?? (line.closed ? pieces.at(-1) : undefined);
    const after = pieces[i];
    const moved = besideCorner(before ?? (after as Piece), after ?? (before as Piece), {
      left,
      at: after?.from ?? (before as Piece).to,
    });
    if (moved === null) return null;
    points.push({ ...moved, place });
  }
  return { points, closed: line.closed, name: line.name };
}

/** The least 1 + cos of a bend that still has a mitre: sharper than about 6 degrees the mitre runs away. */
const sharpestMitre = 0.005;

function besideCorner(
  before: Piece,
  after: Piece,
  { left, at }: { readonly left: Uncertain; readonly at: LivePoint },
): Pair | null {
  if (before === after) return offsetFrom(at, after.way, { run: exact(0), left });
  const onePlusCosine = sum(
    exact(1),
    product(before.way.east, after.way.east),
    product(before.way.north, after.way.north),
  );
  if (onePlusCosine.value < sharpestMitre) return null;
  const by = quotient(left, onePlusCosine);
  const both = { east: sum(before.way.east, after.way.east), north: sum(before.way.north, after.way.north) };
  return offsetFrom(at, both, { run: exact(0), left: by });
}

/** A line walked the other way. */
export function turnedRound(line: LiveLine): LiveLine {
  return { ...line, points: line.points.toReversed() };
}

/** Mean of the corners: where a thing drawn by its outline is meant as one point. */
export function middleOf(points: readonly LivePoint[], place: Place): LivePoint {
  const share = 1 / Math.max(1, points.length);
  return {
    east: scaled(sum(...points.map((point) => point.east)), share),
    north: scaled(sum(...points.map((point) => point.north)), share),
    place,
  };
}
