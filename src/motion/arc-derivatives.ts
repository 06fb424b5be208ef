// The pose after part of an arc, and how it moves with the arc's start, length and curvature.

/** Pose after the first `share` of an arc and its derivatives; one record is reused. */
export interface ArcPoint {
  x: number;
  y: number;
  heading: number;
  /** Rows x, y, heading; columns start x, start y, start heading, length, curvature. */
  readonly by: Float64Array;
}

export function newArcPoint(): ArcPoint {
  return { x: 0, y: 0, heading: 0, by: new Float64Array(15) };
}

/** Start of an arc and the arc, as five numbers: x, y, heading, signed length, curvature. */
export type ArcState = Float64Array;

/** The state as a tuple; taken by index, for the iterator of an array of numbers is slow before it is optimised. */
type FiveNumbers = [number, number, number, number, number];

/**
 * Fills `point`. With l = share s, a = k l, chord c = l sinc(a/2) under heading + a/2:
 * d(x, y)/d heading = (-dy, dx); /ds = share (cos, sin)(heading + a);
 * /dk = ((l cos(heading + a) - dx) / k, (l sin(heading + a) - dy) / k), its limit for k -> 0 where a is tiny.
 */
export function fillArcPoint(point: ArcPoint, state: ArcState, share: number): void {
  const { 0: x, 1: y, 2: heading, 3: length, 4: curvature } = state as unknown as FiveNumbers;
  const l = share * length;
  const turned = curvature * l;
  const half = turned / 2;
  const chord = Math.abs(half) < 1e-6 ? l : (l * Math.sin(half)) / half;
  const dx = chord * Math.cos(heading + half);
  const dy = chord * Math.sin(heading + half);
  const c = Math.cos(heading + turned);
  const s = Math.sin(heading + turned);
  point.x = x + dx;
  point.y = y + dy;
  point.heading = heading + turned;
  const flat = Math.abs(turned) < 1e-4;
  const { by } = point;
  by[0] = 1;
  by[2] = -dy;
  by[3] = share * c;
  by[4] = flat ? (-l * l * Math.sin(heading + (2 * turned) / 3)) / 2 : (l * c - dx) / curvature;
  by[6] = 1;
  by[7] = dx;
  by[8] = share * s;
  by[9] = flat ? (l * l * Math.cos(heading + (2 * turned) / 3)) / 2 : (l * s - dy) / curvature;
  by[12] = 1;
  by[13] = share * curvature;
  by[14] = l;
}
