// Runs of a drain: one from each chamber, tank, outfall or levelled node to the next, with their inverts and length.

import { type Feature, featureWords, isQuantity, propertyOf, type Properties } from "../model/plan.ts";
import type { Read, Spot } from "../model/quantity.ts";
import type { Missing, Point, Scene } from "../model/reading.ts";
import { type DrainNode, drainNodes, type LiveNumber, type StandingOf } from "./drain-nodes.ts";

/** One run, from its upper to its lower node. */
export interface DrainRun {
  readonly drain: Feature;
  /** The drain's name, a comma, and the two nodes. */
  readonly name: string;
  readonly upper: DrainNode;
  readonly lower: DrainNode;
  readonly line: readonly Spot[];
  /** Length on plan, metres. */
  readonly length: LiveNumber;
  /** Fall, rise over run, above 0 downstream; from the inverts, else as the plan states it. */
  readonly fall: LiveNumber | null;
}

/** Runs of a drain in the order of its line; none where it has no line. */
export function drainRuns(drain: Feature, standingOf: StandingOf): readonly DrainRun[] {
  const nodes = drainNodes(drain, standingOf);
  const stops = nodes.flatMap((node, index) =>
    index === 0 || index === nodes.length - 1 || node.feature || node.own ? [index] : [],
  );
  const known = withStatedFall(drain, nodes);
  return stops.slice(1).map((to, k) => runBetween(drain, known, stops[k] as number, to));
}

function runBetween(drain: Feature, nodes: readonly DrainNode[], from: number, to: number): DrainRun {
  const upper = nodes[from] as DrainNode;
  const lower = nodes[to] as DrainNode;
  const line = nodes.slice(from, to + 1).map((node) => node.spot);
  const length: LiveNumber = (read) => planLength(line, read);
  const stated = propertyOf(drain, "fall");
  const { invert: top } = upper;
  const { invert: bottom } = lower;
  return {
    drain,
    name: `${drain.name}, ${upper.name} to ${lower.name}`,
    upper,
    lower,
    line,
    length,
    fall:
      top && bottom
        ? (read) => (top(read) - bottom(read)) / length(read)
        : isQuantity(stated)
          ? (read) => read(stated)
          : null,
  };
}

/** Where the drain states its fall, every invert follows from the nearest one that is known. */
function withStatedFall(drain: Feature, nodes: readonly DrainNode[]): readonly DrainNode[] {
  const stated = propertyOf(drain, "fall");
  if (!isQuantity(stated)) return nodes;
  const spots = nodes.map((node) => node.spot);
  const fallBetween = (a: number, b: number, read: Read) =>
    Math.sign(b - a) * read(stated) * planLength(spots.slice(Math.min(a, b), Math.max(a, b) + 1), read);
  return nodes.map((node, index) => {
    if (node.invert) return node;
    const [nearest] = nodes
      .flatMap((other, at) => (other.invert ? [{ at, invert: other.invert }] : []))
      .sort((a, b) => Math.abs(a.at - index) - Math.abs(b.at - index) || a.at - b.at);
    if (!nearest) return node;
    return { ...node, invert: (read) => nearest.invert(read) - fallBetween(nearest.at, index, read) };
  });
}

/** Length of a line of spots on plan, metres. */
export function planLength(line: readonly Spot[], read: Read): number {
  let sum = 0;
  for (const [index, to] of line.slice(1).entries()) {
    const from = line[index] as Spot;
    sum += Math.hypot(read(to.east) - read(from.east), read(to.north) - read(from.north));
  }
  return sum;
}

/** The points of a line at a read. */
export function pointsOf(line: readonly Spot[], read: Read): readonly Point[] {
  return line.map((spot): Point => [read(spot.east), read(spot.north)]);
}

/** The run that a part stands for; null for anything else. */
export function runOf(part: Feature | undefined, scene: Pick<Scene, "standing">): DrainRun | null {
  if (part?.kind !== "drain run" || !part.partOf) return null;
  const runs = drainRuns(part.partOf, (kind) => scene.standing(kind));
  return runs.find((run) => run.name === part.name) ?? null;
}

/** What would have to be known for the inverts of a run. */
export function missingInverts(run: DrainRun): readonly Missing[] {
  return [run.upper, run.lower].flatMap((node) => (node.invert ? [] : [missingInvert(run.drain, node)]));
}

function missingInvert(drain: Feature, node: DrainNode): Missing {
  const chamber = node.feature?.kind === "chamber" ? node.feature : null;
  return {
    feature: chamber ?? drain,
    property: chamber ? "invert" : `inverts.${node.name}`,
    asks: chamber
      ? `the level of the invert in ${featureWords(chamber)}`
      : `the level of the invert of ${featureWords(drain)} at ${node.name}`,
    dimension: "length",
    why: "missing",
  };
}

/** What sort of opening a node is for rods: a place to walk down to, a chamber to reach into, or an eye (or open end). */
function openingAt({ feature }: DrainNode): "manhole" | "chamber" | "eye" {
  const kind = feature?.kind === "chamber" ? (feature.properties["kind"] ?? "inspection chamber") : feature?.kind;
  if (kind === "manhole") return "manhole";
  return kind === "inspection chamber" || kind === "access fitting" || kind === "septic tank" ? "chamber" : "eye";
}

/** The openings at both ends of the stretch that this run ends: `eye to chamber`, the lesser opening first. */
function openings(runs: readonly DrainRun[], index: number): string {
  const above = runs.slice(0, index).findLast((run) => run.lower.feature !== null);
  const first = above ? above.lower : (runs[0] as DrainRun).upper;
  const ends = [openingAt(first), openingAt((runs[index] as DrainRun).lower)];
  const lesser = (["eye", "chamber", "manhole"] as const).find((word) => ends.includes(word)) as string;
  const other = ends[0] === lesser ? ends[1] : ends[0];
  return `${lesser} to ${lesser === "eye" && other === "manhole" ? "manhole" : lesser === "eye" ? "chamber" : lesser}`;
}

/** Properties of run `index` as a subject: the drain's own, what sort it is, its ends, and how it can be rodded. */
export function runProperties(runs: readonly DrainRun[], index: number): Properties {
  const { upper, lower, drain } = runs[index] as DrainRun;
  return {
    ...drain.properties,
    form: drain.properties["form"] ?? "pipe",
    upper: upper.name,
    lower: lower.name,
    openings: openings(runs, index),
    between_chambers: upper.feature?.kind === "chamber" && lower.feature?.kind === "chamber",
    to_septic_tank: lower.feature?.kind === "septic tank",
    to_drainage_field: lower.feature?.kind === "drainage field",
    protected: drain.properties["cover_by"] !== undefined && drain.properties["cover_by"] !== "nothing",
    with_rain_tank: upper.feature?.kind === "tank" || lower.feature?.kind === "tank",
    ...(upper.own ? { upper_invert: upper.own } : {}),
    ...(lower.own ? { lower_invert: lower.own } : {}),
  };
}
