// What stands in the way of a vehicle: rings of live vertices round walls, buildings, fences, stems, heaps and the like.

import { between, distance } from "../geometry/point.ts";
import type { Feature, Property } from "../model/plan.ts";
import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Quantity, Read, Spot } from "../model/quantity.ts";
import { liveSpot, type LivePoint } from "./live-figure.ts";
import { type LiveRing, ringAlong, ringRound } from "./live-ring.ts";
import { outToEaves, passesBelow, passesUnder, type Tall } from "./passes-under.ts";

/** Something that the body, or only the wheels, must keep off. */
export interface InTheWay {
  readonly feature: Feature;
  readonly keepsOff: "body" | "wheels";
  readonly rings: readonly LiveRing[];
}

/** A line without thickness gets two sides this far apart (m), so that it can be met from both. */
const thin = 0.002;
/** A gate post is taken to be so wide (m) where the plan does not say it (common practice). */
const postWidth = 0.15;

const bodyKinds: ReadonlySet<string> = new Set([
  "wall",
  "building",
  "fence",
  "hedge",
  "tree",
  "heap",
  "tank",
  "obstacle",
  "bank",
  "gate",
  "spoil place",
  "excavation",
  "steps",
]);
const wheelKinds: ReadonlySet<string> = new Set(["water"]);

/** How things are looked at: numbers, the heading from which round things are drawn, how tall what comes is, and the gates that let through. */
export interface Looking {
  readonly read: Read;
  readonly heading: number;
  readonly tall: Tall;
  readonly gates: readonly Feature[];
}

/** The rings of a feature that a vehicle must keep off; null where it may pass. */
export function inTheWay(feature: Feature, looking: Looking): InTheWay | null {
  const keepsOff = bodyKinds.has(feature.kind) ? "body" : wheelKinds.has(feature.kind) ? "wheels" : null;
  if (!keepsOff || !feature.shape || propertyOf(feature, "body_may_pass_over") === true) return null;
  if (passesUnder(feature, looking.tall, looking.read)) return null;
  const rings = feature.kind === "gate" ? gatePosts(feature) : ringsOf(feature, looking);
  return rings.length > 0 ? { feature, keepsOff, rings } : null;
}

function ringsOf(feature: Feature, looking: Looking): readonly LiveRing[] {
  const { shape } = feature;
  if (!shape) return [];
  switch (shape.form) {
    case "outline":
      return [outToEaves(feature, shape.outline.map(liveSpot), looking)];
    case "circle":
      return round(liveSpot(shape.centre), (read) => read(shape.across) / 2, looking);
    case "point":
      return round(liveSpot(shape.at), halfOf(feature), looking);
    case "line":
      return alongLine(feature, shape.line, shape.width, looking);
  }
}

const round = (centre: LivePoint, radius: (read: Read) => number, looking: Looking): readonly LiveRing[] => {
  const ring = ringRound(centre, radius, looking);
  return ring ? [ring] : [];
};

/** Half of what is known of the width of a thing at a point: a stem, or `across`; else of a thin post. */
function halfOf(feature: Feature): (read: Read) => number {
  for (const name of ["stem", "across", "width"]) {
    const size = propertyOf(feature, name);
    if (isQuantity(size)) return (read) => read(size) / 2;
  }
  return () => thin / 2;
}

/** A line with its width, cut where it has gaps and where gates are hung in it. */
function alongLine(
  feature: Feature,
  line: readonly Spot[],
  width: Quantity | undefined,
  looking: Looking,
): readonly LiveRing[] {
  const points = line.map(liveSpot);
  const wide = width ?? sizeOf(feature, "spread") ?? sizeOf(feature, "width");
  const widthAt = (read: Read) => Math.max(thin, wide ? read(wide) : 0);
  const gaps = [...gapsOf(feature, looking), ...looking.gates.flatMap((gate) => gateIn(gate, feature))];
  return pieces(points, gaps, looking.read).map((piece) => ringAlong(piece, widthAt));
}

/** The middle line of a wall or hedge less the gaps in it that can be passed, piece by piece. */
export function piecesBetweenGaps(
  feature: Feature,
  line: readonly Spot[],
  read: Read,
): readonly (readonly LivePoint[])[] {
  return pieces(line.map(liveSpot), gapsOf(feature, { tall: 0, read }), read);
}

function sizeOf(feature: Feature, name: string): Quantity | undefined {
  const size = propertyOf(feature, name);
  return isQuantity(size) ? size : undefined;
}

type LiveNumber = (read: Read) => number;
interface Gap {
  readonly from: LiveNumber;
  readonly to: LiveNumber;
}

/** Gaps that a vehicle can pass: not the holes that are for water or for sheep. */
const closedGaps: ReadonlySet<string> = new Set(["drain hole", "stile", "sheep creep"]);

function gapsOf(feature: Feature, { tall, read }: Pick<Looking, "tall" | "read">): readonly Gap[] {
  const { gaps } = feature.properties;
  if (!Array.isArray(gaps)) return [];
  return (gaps as readonly Property[]).flatMap((gap): Gap[] => {
    if (typeof gap !== "object" || Array.isArray(gap) || !("from" in gap) || !("to" in gap)) return [];
    const { from, to, kind, lintel } = gap as { from?: Property; to?: Property; kind?: Property; lintel?: Property };
    if (!isQuantity(from) || !isQuantity(to) || (typeof kind === "string" && closedGaps.has(kind))) return [];
    return passesBelow(lintel, tall, read) ? [{ from: (now) => now(from), to: (now) => now(to) }] : [];
  });
}

function gateIn(gate: Feature, feature: Feature): readonly Gap[] {
  const along = propertyOf(gate, "along");
  const clear = propertyOf(gate, "clear");
  if (propertyOf(gate, "on") !== feature.name || !isQuantity(along) || !isQuantity(clear)) return [];
  return [{ from: (read) => read(along), to: (read) => read(along) + read(clear) }];
}

/** A line less its gaps, each piece with live ends. Which side an end lies on stays as it is now. */
function pieces(line: readonly LivePoint[], gaps: readonly Gap[], read: Read): readonly (readonly LivePoint[])[] {
  const sorted = [...gaps].sort((a, b) => a.from(read) - b.from(read));
  const runs = runsOf(line, read);
  const end = runs.at(-1) ?? 0;
  const found: (readonly LivePoint[])[] = [];
  let start: LiveNumber | null = () => 0;
  for (const gap of [...sorted, null]) {
    const to: LiveNumber = gap ? gap.from : (now) => runsOf(line, now).at(-1) ?? 0;
    if (start && start(read) < Math.min(to(read), end) - 1e-6) found.push(piece(line, { start, to }, { read, runs }));
    if (gap) start = gap.to;
  }
  return found;
}

function runsOf(line: readonly LivePoint[], read: Read): readonly number[] {
  const runs = [0];
  for (let i = 1; i < line.length; i++)
    runs.push((runs[i - 1] as number) + distance((line[i - 1] as LivePoint)(read), (line[i] as LivePoint)(read)));
  return runs;
}

function piece(
  line: readonly LivePoint[],
  span: { readonly start: LiveNumber; readonly to: LiveNumber },
  at: { readonly read: Read; readonly runs: readonly number[] },
): readonly LivePoint[] {
  const [from, to] = [span.start(at.read), span.to(at.read)];
  const inner = line.filter((_, i) => (at.runs[i] as number) > from + 1e-6 && (at.runs[i] as number) < to - 1e-6);
  return [pointAt(line, span.start, at), ...inner, pointAt(line, span.to, at)];
}

/** The point at a live run, on the side of the line that it lies on now. */
function pointAt(
  line: readonly LivePoint[],
  run: LiveNumber,
  { read, runs }: { readonly read: Read; readonly runs: readonly number[] },
): LivePoint {
  const now = Math.max(0, Math.min(run(read), runs.at(-1) ?? 0));
  const after = Math.max(
    1,
    runs.findIndex((far) => far >= now - 1e-9),
  );
  return (moved) => {
    const a = (line[after - 1] as LivePoint)(moved);
    const b = (line[after] as LivePoint)(moved);
    const before = runsOf(line.slice(0, after), moved).at(-1) ?? 0;
    return between(a, b, (run(moved) - before) / Math.max(1e-9, distance(a, b)));
  };
}

/** What is left of the line between the two posts on both sides of the clear opening, or a post where nothing is. */
function gatePosts(gate: Feature): readonly LiveRing[] {
  const { shape } = gate;
  if (shape?.form !== "line" || shape.line.length !== 2 || propertyOf(gate, "on") !== undefined) return [];
  const clear = propertyOf(gate, "clear");
  const [a, b] = shape.line.map(liveSpot) as [LivePoint, LivePoint];
  const half: LiveNumber = isQuantity(clear) ? (read) => read(clear) / 2 : (read) => distance(a(read), b(read)) / 2;
  const post = (one: LivePoint, other: LivePoint): LiveRing => {
    const along = (read: Read, from: number) => {
      const whole = distance(one(read), other(read));
      return between(one(read), other(read), (whole / 2 - from) / Math.max(1e-9, whole));
    };
    const inner: LivePoint = (read) => along(read, half(read));
    const outer: LivePoint = (read) => along(read, Math.max(distance(a(read), b(read)) / 2, half(read) + postWidth));
    return ringAlong([outer, inner], () => postWidth);
  };
  return [post(a, b), post(b, a)];
}
