// Places the stations: first in the order in which they hang on each other, then all together by least squares.

import { adjustNetwork, type Adjusted, type Network } from "../adjustment/network.ts";
import type { Observation } from "../adjustment/observation.ts";
import { swayLength } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import type { LivePoint } from "./number-book.ts";
import { type Observed, reelStation } from "./station-observed.ts";
import type { StationPlan } from "./station-plan.ts";
import { isFault, type StartFault } from "./station-start.ts";
import { follows, type Uncertain } from "./sway.ts";
import type { Troubles } from "./troubles.ts";

/** The stations that could be placed, with what the adjustment says of the measurements. */
export interface Placed {
  readonly pegs: ReadonlyMap<string, LivePoint>;
  readonly observed: readonly Observed[];
  readonly adjusted: Adjusted | null;
  /** What was adjusted, to be asked again where residuals do not show the error; null where nothing was. */
  readonly network: Network | null;
}

/** First places of all stations that can be had; problems name those that hang on each other or cannot close. */
export function startStations(plans: readonly StationPlan[], troubles: Troubles): ReadonlyMap<string, Point> {
  const placed = new Map<string, Point>();
  const failed = new Set<string>();
  const at = (station: string): Point => placed.get(station) as Point;
  let waiting = plans;
  for (;;) {
    const ready = waiting.filter((plan) => plan.needs.every((need) => placed.has(need)));
    if (ready.length === 0) break;
    for (const plan of ready) {
      const start = plan.start(at);
      if (!isFault(start)) placed.set(plan.name, start);
      else {
        failed.add(plan.name);
        reportFault(plan, start, { leftOut: hangingOn(plan.name, plans), troubles });
      }
    }
    waiting = waiting.filter((plan) => !placed.has(plan.name) && !failed.has(plan.name));
  }
  reportCircles(waiting, plans, troubles);
  return placed;
}

/** The stations that hang on one, directly or through others. */
export function hangingOn(name: string, plans: readonly StationPlan[]): readonly string[] {
  const found = new Set([name]);
  for (let before = 0; before !== found.size;) {
    before = found.size;
    for (const plan of plans) if (plan.needs.some((need) => found.has(need))) found.add(plan.name);
  }
  found.delete(name);
  return [...found];
}

const leftOutWords = (names: readonly string[]): string =>
  names.length === 0
    ? ""
    : `; left out with it: ${names.slice(0, 8).join(", ")}${names.length > 8 ? " and others" : ""}`;

function reportFault(
  plan: StationPlan,
  fault: StartFault,
  also: { readonly leftOut: readonly string[]; readonly troubles: Troubles },
): void {
  const more = leftOutWords(also.leftOut);
  if (fault.fault === "cannot-close") {
    const expected = `tapes that meet at peg ${plan.name}`;
    also.troubles.report(plan.node, { code: "cannot-close", expected, got: fault.words, hint: `${fault.hint}${more}` });
    return;
  }
  if (fault.fault === "which-side") {
    const expected = `on which side of which line peg ${plan.name} lies`;
    const hint = `add side: left of A to B, where A and B are pegs with ${plan.name} plainly on one side of their line${more}`;
    also.troubles.report(plan.node, {
      code: "missing-key",
      expected,
      got: "two places that fit the tapes as well",
      hint,
    });
    return;
  }
  const expected = "two pegs that stand apart";
  also.troubles.report(plan.node, {
    code: "bad-geometry",
    expected,
    got: fault.words,
    hint: `look at the pegs that ${plan.name} hangs on${more}`,
  });
}

/** Stations that wait for each other in a ring are a problem; those that only hang on the ring are named in it. */
function reportCircles(waiting: readonly StationPlan[], plans: readonly StationPlan[], troubles: Troubles): void {
  const names = new Set(waiting.map((plan) => plan.name));
  const inRing = waiting.filter(
    (plan) =>
      names.has(plan.name) && [plan.name, ...hangingOn(plan.name, plans)].some((other) => plan.needs.includes(other)),
  );
  const told = new Set<string>();
  for (const plan of inRing) {
    if (told.has(plan.name)) continue;
    const behind = new Set(hangingOn(plan.name, plans));
    const ring = inRing.filter(
      (other) =>
        other.name === plan.name || (behind.has(other.name) && hangingOn(other.name, plans).includes(plan.name)),
    );
    for (const other of ring) told.add(other.name);
    troubles.report(plan.node, {
      code: "circular",
      expected: "pegs that hang on pegs placed before them",
      got: `${ring.map((other) => other.name).join(", ")} hang on each other`,
      hint: "tape one of them from pegs that are placed already",
    });
  }
}

/**
 * Adjusts the placed stations. Where no place fits, the measurement that stands out most is left out and the rest is
 * adjusted again; stations that the adjustment still refuses are named in a problem and left out.
 */
export function adjustStations(plans: readonly StationPlan[], checks: readonly Observed[], troubles: Troubles): Placed {
  const wild = new Set<Observed>();
  let start = startStations(plans, troubles);
  for (;;) {
    const kept = plans.filter((plan) => start.has(plan.name));
    const observed = [...kept.flatMap((plan) => plan.observed), ...checks].filter(
      (one) => !wild.has(one) && stationsIn(one).every((name) => start.has(name)),
    );
    if (kept.length === 0) return { pegs: new Map(), observed: [], adjusted: null, network: null };
    const network = withReel({
      stations: kept.map((plan) => plan.name),
      observations: observed.map((one) => one.observation),
      approximate: start,
    });
    const adjusted = adjustNetwork(network);
    if (adjusted.refused === undefined) {
      const pegs = new Map(kept.map((plan) => [plan.name, pegOf(plan, observed, adjusted)]));
      return { pegs, observed, adjusted, network };
    }
    const worst = adjusted.refused === "not-converged" ? observedBy(adjusted.observations, observed) : undefined;
    if (worst !== undefined) {
      wild.add(worst);
      reportWild(worst, troubles);
      continue;
    }
    const bad = adjusted.stations.length > 0 ? adjusted.stations : kept.map((plan) => plan.name);
    reportRefused(adjusted.refused, bad, { kept, troubles });
    const out = new Set(bad.flatMap((name) => [name, ...hangingOn(name, plans)]));
    start = new Map([...start].filter(([name]) => !out.has(name)));
  }
}

/**
 * The network with the reel's own error as an unknown, where something else tells of lengths: points given by coordinates,
 * or a tape with a ± of its own. Among tapes of one reel alone it cannot be told and changes nothing but the doubt.
 */
function withReel(network: Network): Network {
  const { stations, observations, approximate } = network;
  const fromReel = observations.some(({ shared }) => shared !== undefined);
  const other = observations.some(
    ({ kind, u, shared }) => u > 0 && (kind === "east" || kind === "north" || (kind === "distance" && !shared)),
  );
  if (!fromReel || !other) return { ...network, observations: observations.map(byItself) };
  return {
    stations: [...stations, reelStation],
    observations: [
      ...observations,
      { id: "the reel", kind: "east", of: reelStation, value: 0, u: 1 },
      { id: "the reel, exactly", kind: "north", of: reelStation, value: 0, u: 0 },
    ],
    approximate: new Map([...(approximate ?? []), [reelStation, [0, 0]]]),
  };
}

function byItself(observation: Observation): Observation {
  const { shared, ...alone } = observation;
  return shared === undefined ? observation : alone;
}

/** The measurement of the first id of a list. */
function observedBy(ids: readonly string[], observed: readonly Observed[]): Observed | undefined {
  return observed.find((one) => one.observation.id === ids[0]);
}

function reportWild({ words, place, observation }: Observed, troubles: Troubles): void {
  const angle = observation.kind === "bearing";
  const value = angle ? `${((observation.value * 180) / Math.PI).toFixed(1)} deg` : `${observation.value.toFixed(3)} m`;
  troubles.report(place, {
    code: "cannot-close",
    expected: "measurements that fit together",
    got: `${words}, ${value}, which no place of the pegs comes near`,
    hint: `measure ${words} again; it was left out and the rest used`,
  });
}

/** The stations in a measurement. */
export function stationsIn({ observation }: Observed): readonly string[] {
  if ("of" in observation && !("from" in observation)) return [observation.of];
  const { from, to } = observation as { from: string; to: string };
  return "of" in observation ? [observation.of, from, to] : [from, to];
}

/** Coordinates of a peg with the sway of every measurement in the network: row of G times the sway of each number. */
function pegOf(plan: StationPlan, observed: readonly Observed[], adjusted: Adjusted): LivePoint {
  const [east, north] = adjusted.coordinates.get(plan.name) as Point;
  const rows = adjusted.sensitivities(plan.name);
  const moves = (slope: number, one: Observed): number =>
    Math.abs(slope) * swayLength(one.number.sway) < leastMove ? 0 : slope;
  const swayed = (value: number, row: Float64Array): Uncertain =>
    follows(
      value,
      observed.map((one, k) => [moves(row[k] as number, one), one.number] as const),
    );
  return { east: swayed(east, rows.east), north: swayed(north, rows.north), place: plan.place, name: plan.name };
}

/** A measurement that moves a peg by less than this, metres, is left out of its sway: a tenth of a millionth of a millimetre. */
const leastMove = 1e-10;

function reportRefused(
  refused: string,
  bad: readonly string[],
  { kept, troubles }: { readonly kept: readonly StationPlan[]; readonly troubles: Troubles },
): void {
  const first = kept.find((plan) => bad.includes(plan.name)) ?? kept[0];
  if (first === undefined) return;
  const names = `${bad.slice(0, 8).join(", ")}${bad.length > 8 ? " and others" : ""}`;
  const loose = refused === "not-connected" || refused === "singular";
  troubles.report(first.node, {
    code: loose ? "bad-geometry" : "cannot-close",
    expected: loose ? "pegs that are measured firmly from pegs already placed" : "measurements that fit together",
    got: loose ? `${names} can still move` : `no place fits what was measured for ${names}`,
    hint: loose
      ? "tape one more line to them; two tapes that nearly run into each other do not hold a peg"
      : "measure these pegs again",
  });
}
