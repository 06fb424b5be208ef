// What can be said against a network before any arithmetic: names, numbers, start values, connection.

import type { Network, Refused } from "./network.ts";
import { stationsOf } from "./observation.ts";
import type { Observation } from "./observation.ts";

/** The first obstacle to adjusting a network, or null. */
export function whatCannotBeAdjusted(network: Network): Refused | null {
  const badStations = unreadableStations(network);
  const badObservations = unreadableObservations(network);
  if (badStations.length + badObservations.length > 0) {
    return { refused: "unreadable", stations: badStations, observations: badObservations };
  }
  const loose = looseStations(network.stations, network.observations);
  if (loose.length > 0) return { refused: "not-connected", stations: loose, observations: [] };
  return null;
}

function unreadableStations({ stations, observations, approximate }: Network): string[] {
  const east = new Set<string>();
  const north = new Set<string>();
  for (const observation of observations) {
    if (observation.kind === "east") east.add(observation.of);
    if (observation.kind === "north") north.add(observation.of);
  }
  const seen = new Set<string>();
  return stations.filter((name) => {
    const twice = seen.has(name);
    seen.add(name);
    const start = approximate?.get(name);
    const placed = start === undefined ? east.has(name) && north.has(name) : start.every(Number.isFinite);
    return twice || !placed;
  });
}

function unreadableObservations({ stations, observations }: Network): string[] {
  const known = new Set(stations);
  const bad = observations.filter((observation) => {
    const names = stationsOf(observation);
    const numbers = Number.isFinite(observation.value) && Number.isFinite(observation.u) && observation.u >= 0;
    const line = !("from" in observation) || observation.from !== observation.to;
    return !numbers || !line || !names.every((name) => known.has(name));
  });
  return bad.map(({ id }) => id);
}

/** Stations that no chain of observations joins to one whose east or north is observed. */
function looseStations(stations: readonly string[], observations: readonly Observation[]): string[] {
  const parent = new Map(stations.map((name) => [name, name]));
  const placed: string[] = [];
  for (const observation of observations) {
    const [first, ...others] = stationsOf(observation);
    for (const other of others) parent.set(root(parent, other), root(parent, first!));
    if (observation.kind === "east" || observation.kind === "north") placed.push(observation.of);
  }
  const held = new Set(placed.map((name) => root(parent, name)));
  return stations.filter((name) => !held.has(root(parent, name)));
}

function root(parent: Map<string, string>, name: string): string {
  let at = name;
  for (let up = parent.get(at)!; up !== at; up = parent.get(at)!) {
    parent.set(at, parent.get(up)!);
    at = up;
  }
  return at;
}
