// A point on a circular path against a straight segment: first touch and nearest approach, in closed form.

/**
 * A point's path: from (x, y) about the centre (centreX, centreY) through the signed angle `turn` (rad), or straight
 * by (centreX, centreY) where `turn` is 0. One record is reused: allocate once, fill per point.
 */
export interface PointPath {
  x: number;
  y: number;
  centreX: number;
  centreY: number;
  turn: number;
}

/** Share of the path (0..1) at which it first meets the segment a-b; Infinity where it does not. */
export function firstTouch(path: PointPath, ax: number, ay: number, bx: number, by: number): number {
  if (path.turn === 0) return firstTouchStraight(path, ax, ay, bx, by);
  const { centreX: ox, centreY: oy } = path;
  const dx = bx - ax;
  const dy = by - ay;
  const lengthSquared = dx * dx + dy * dy;
  const radiusSquared = (path.x - ox) ** 2 + (path.y - oy) ** 2;
  const foot = ((ox - ax) * dx + (oy - ay) * dy) / lengthSquared;
  const offX = ax + foot * dx - ox;
  const offY = ay + foot * dy - oy;
  const under = radiusSquared - offX * offX - offY * offY;
  if (under < 0) return Infinity;
  const half = Math.sqrt(under / lengthSquared);
  let first = Infinity;
  for (let sign = -1; sign <= 1; sign += 2) {
    const t = foot + sign * half;
    if (t < 0 || t > 1) continue;
    first = Math.min(first, shareAt(path, ax + t * dx, ay + t * dy));
  }
  return first <= 1 ? first : Infinity;
}

/** Share of a circular path at which the ray from the centre through (x, y) is reached; above 1 where it is not. */
export function shareAt(path: PointPath, x: number, y: number): number {
  const ux = path.x - path.centreX;
  const uy = path.y - path.centreY;
  const vx = x - path.centreX;
  const vy = y - path.centreY;
  let angle = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  if (path.turn < 0) angle = -angle;
  if (angle < 0) angle += 2 * Math.PI;
  return angle / Math.abs(path.turn);
}

function firstTouchStraight(path: PointPath, ax: number, ay: number, bx: number, by: number): number {
  const { x, y, centreX: mx, centreY: my } = path;
  const dx = bx - ax;
  const dy = by - ay;
  const across = mx * dy - my * dx;
  if (across === 0) return Infinity;
  const share = ((ax - x) * dy - (ay - y) * dx) / across;
  const along = ((ax - x) * my - (ay - y) * mx) / across;
  return share >= 0 && share <= 1 && along >= 0 && along <= 1 ? share : Infinity;
}

/** A segment from (ax, ay) to (bx, by). */
export type Segment = readonly [number, number, number, number];

/** Nearest approach of a path and a segment: distance, share of the path, and the nearest point of the segment. */
export interface Approach {
  distance: number;
  share: number;
  x: number;
  y: number;
}

/**
 * Brings `best` down to the nearest approach of a path that does not cross the segment a-b, where that is nearer.
 * Candidates: both ends of the path against the segment; both ends of the segment against the path; and the point of
 * the circle whose radius is perpendicular to the segment. Returns whether `best` changed.
 */
export function approach(best: Approach, path: PointPath, segment: Segment): boolean {
  const before = best.distance;
  if (surelyFartherThan(before, path, segment)) return false;
  const [ax, ay, bx, by] = segment;
  const straight = path.turn === 0;
  approachEnd(best, path, { share: 0, segment });
  approachEnd(best, path, { share: 1, segment });
  for (let end = 0; end < 2; end++) {
    const x = end === 0 ? ax : bx;
    const y = end === 0 ? ay : by;
    if (straight) approachPointStraight(best, path, x, y);
    else approachPointCircle(best, path, x, y);
  }
  if (!straight) approachSquare(best, path, segment);
  return best.distance < before;
}

/**
 * Whether a segment cannot come as near as `distance` (m): its nearest and farthest points from the centre of the circle
 * lie both within it, or both without, by more; or beside a straight path its box does.
 */
function surelyFartherThan(distance: number, path: PointPath, [ax, ay, bx, by]: Segment): boolean {
  const { x, y, centreX: cx, centreY: cy } = path;
  if (path.turn === 0) {
    const gapX = Math.max(Math.min(ax, bx) - Math.max(x, x + cx), Math.min(x, x + cx) - Math.max(ax, bx));
    const gapY = Math.max(Math.min(ay, by) - Math.max(y, y + cy), Math.min(y, y + cy) - Math.max(ay, by));
    return Math.max(gapX, gapY) > distance;
  }
  const radius = Math.sqrt((x - cx) ** 2 + (y - cy) ** 2);
  const farthest = Math.sqrt(Math.max((ax - cx) ** 2 + (ay - cy) ** 2, (bx - cx) ** 2 + (by - cy) ** 2));
  if (radius - farthest > distance) return true;
  const [dx, dy] = [bx - ax, by - ay];
  const t = Math.max(0, Math.min(1, ((cx - ax) * dx + (cy - ay) * dy) / (dx * dx + dy * dy)));
  return Math.sqrt((ax + t * dx - cx) ** 2 + (ay + t * dy - cy) ** 2) - radius > distance;
}

function approachEnd(best: Approach, path: PointPath, at: { share: number; segment: Segment }): void {
  const [ax, ay, bx, by] = at.segment;
  const [px, py] = pointAt(path, at.share);
  const dx = bx - ax;
  const dy = by - ay;
  const t = Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy)));
  keep(best, Math.hypot(ax + t * dx - px, ay + t * dy - py), at.share, [ax + t * dx, ay + t * dy]);
}

function approachPointStraight(best: Approach, path: PointPath, x: number, y: number): void {
  const { centreX: mx, centreY: my } = path;
  const lengthSquared = mx * mx + my * my;
  if (lengthSquared === 0) return;
  const share = Math.max(0, Math.min(1, ((x - path.x) * mx + (y - path.y) * my) / lengthSquared));
  keep(best, Math.hypot(path.x + share * mx - x, path.y + share * my - y), share, [x, y]);
}

function approachPointCircle(best: Approach, path: PointPath, x: number, y: number): void {
  const share = shareAt(path, x, y);
  if (share > 1) return;
  const radius = Math.hypot(path.x - path.centreX, path.y - path.centreY);
  keep(best, Math.abs(Math.hypot(x - path.centreX, y - path.centreY) - radius), share, [x, y]);
}

function approachSquare(best: Approach, path: PointPath, segment: Segment): void {
  const [ax, ay, bx, by] = segment;
  const dx = bx - ax;
  const dy = by - ay;
  const t = ((path.centreX - ax) * dx + (path.centreY - ay) * dy) / (dx * dx + dy * dy);
  if (t <= 0 || t >= 1) return;
  approachPointCircle(best, path, ax + t * dx, ay + t * dy);
}

/** Point of a path at a share of it. */
export function pointAt(path: PointPath, share: number): readonly [number, number] {
  if (path.turn === 0) return [path.x + share * path.centreX, path.y + share * path.centreY];
  const c = Math.cos(share * path.turn);
  const s = Math.sin(share * path.turn);
  const ux = path.x - path.centreX;
  const uy = path.y - path.centreY;
  return [path.centreX + c * ux - s * uy, path.centreY + s * ux + c * uy];
}

function keep(best: Approach, distance: number, share: number, at: readonly [number, number]): void {
  if (distance >= best.distance) return;
  best.distance = distance;
  best.share = share;
  [best.x, best.y] = at;
}
