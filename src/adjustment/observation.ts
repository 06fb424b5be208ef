// What is measured in the plane, as it is measured, and how it changes when a station moves.

/** Common to all: name, measured value (metres or radians) and standard uncertainty (same unit); 0 means exact. */
interface Measured {
  readonly id: string;
  readonly value: number;
  readonly u: number;
  /**
   * An error that this shares with others: `of` is a station whose east is its size k in standard uncertainties (observe
   * it as 0 with u = 1, and its north as 0 exactly), and the observation reads `by` times k too much.
   */
  readonly shared?: { readonly of: string; readonly by: number };
}

/**
 * One observation of a plane network. `bearing` is the grid azimuth from `from` to `to`, radians clockwise from
 * north. `run` is the chainage of `of` along the line `from` to `to`, from `from`; `offset` its signed distance
 * from that line, left positive.
 */
export type Observation = Measured &
  (
    | { readonly kind: "east" | "north"; readonly of: string }
    | { readonly kind: "distance" | "bearing"; readonly from: string; readonly to: string }
    | { readonly kind: "run" | "offset"; readonly of: string; readonly from: string; readonly to: string }
  );

/** Plane metres, east and north. */
export type Coordinates = readonly [number, number];

/** Value of an observation at given coordinates, with its derivatives by the coordinates of the stations in it. */
export interface Linearised {
  readonly value: number;
  readonly parts: readonly { readonly station: string; readonly east: number; readonly north: number }[];
}

/** The stations an observation names. */
export function stationsOf(observation: Observation): readonly string[] {
  const shared = observation.shared === undefined ? [] : [observation.shared.of];
  if (!("from" in observation)) return [observation.of, ...shared];
  const ends = [observation.from, observation.to, ...shared];
  return "of" in observation ? [observation.of, ...ends] : ends;
}

/**
 * f(x) and df/dx of one observation; null where its line has no length, so that no direction exists.
 *
 * With d = to - from, s = |d|, e = d/s, n = e turned left: distance s, ds = e.(dTo - dFrom); azimuth
 * a = atan2(east, north), da = -n.(dTo - dFrom)/s; run c = e.(P - from); offset o = n.(P - from);
 * dc/dTo = o n/s, do/dTo = -c n/s. COMPUTED, checked against differences.
 */
export function linearise(observation: Observation, at: (station: string) => Coordinates): Linearised | null {
  const own = lineariseAlone(observation, at);
  const { shared } = observation;
  if (own === null || shared === undefined) return own;
  const parts = [...own.parts, { station: shared.of, east: shared.by, north: 0 }];
  return { value: own.value + shared.by * at(shared.of)[0], parts };
}

function lineariseAlone(observation: Observation, at: (station: string) => Coordinates): Linearised | null {
  if (!("from" in observation)) return coordinate(observation, at);
  const [fromEast, fromNorth] = at(observation.from);
  const [toEast, toNorth] = at(observation.to);
  const east = toEast - fromEast;
  const north = toNorth - fromNorth;
  const length = Math.sqrt(east * east + north * north);
  if (!(length > 0)) return null;
  const line: Line = { along: [east / length, north / length], length };
  if ("of" in observation) return alongOrAcross(observation, line, at);
  const [e, n] = line.along;
  return observation.kind === "distance"
    ? { value: length, parts: difference(observation, e, n) }
    : { value: Math.atan2(east, north), parts: difference(observation, n / length, -e / length) };
}

interface Line {
  readonly along: Coordinates;
  readonly length: number;
}

function coordinate(
  observation: Observation & { readonly kind: "east" | "north" },
  at: (station: string) => Coordinates,
): Linearised {
  const [east, north] = at(observation.of);
  return observation.kind === "east"
    ? { value: east, parts: [{ station: observation.of, east: 1, north: 0 }] }
    : { value: north, parts: [{ station: observation.of, east: 0, north: 1 }] };
}

function difference(ends: { readonly from: string; readonly to: string }, east: number, north: number) {
  return [
    { station: ends.from, east: -east, north: -north },
    { station: ends.to, east, north },
  ];
}

function alongOrAcross(
  observation: Observation & { readonly kind: "run" | "offset" },
  line: Line,
  at: (station: string) => Coordinates,
): Linearised {
  const [e, n] = line.along;
  const left: Coordinates = [-n, e];
  const [pointEast, pointNorth] = at(observation.of);
  const [fromEast, fromNorth] = at(observation.from);
  const run = (pointEast - fromEast) * e + (pointNorth - fromNorth) * n;
  const offset = (pointEast - fromEast) * left[0] + (pointNorth - fromNorth) * left[1];
  const isRun = observation.kind === "run";
  const own = isRun ? line.along : left;
  const swing = (isRun ? offset : -run) / line.length;
  const byTo: Coordinates = [swing * left[0], swing * left[1]];
  return {
    value: isRun ? run : offset,
    parts: [
      { station: observation.of, east: own[0], north: own[1] },
      { station: observation.from, east: -own[0] - byTo[0], north: -own[1] - byTo[1] },
      { station: observation.to, east: byTo[0], north: byTo[1] },
    ],
  };
}

/** Observed less computed; bearings come round to the short way about the circle. */
export function misfit(observation: Observation, computed: number): number {
  const gap = observation.value - computed;
  return observation.kind === "bearing" ? gap - 2 * Math.PI * Math.round(gap / (2 * Math.PI)) : gap;
}
