// Where a vehicle starts and ends a manoeuvre: as the plan writes it, else by the way in and out, and by the bay.

import type { Gear, Pose } from "../motion/pose.ts";
import { overallLength, type Vehicle } from "../motion/vehicle.ts";
import { type Feature, featureWords, isQuantity, isSpot, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Missing, Point } from "../model/reading.ts";
import { groundFigure, liveSpot } from "./live-figure.ts";
import { type LiveRing, ringAlong, ringAt } from "./live-ring.ts";
import { roundedLine } from "./rounded-line.ts";
import { widerRings } from "./wider-stretches.ts";
import { type BayAt, bayAt, joinedOn, type WayIn, type WayWork } from "./way-in.ts";

/** A word of a feature; empty where it says none. */
export function wordOf(feature: Feature, property: string): string {
  const word = propertyOf(feature, property);
  return typeof word === "string" ? word : "";
}

/** Names of features under some properties of a manoeuvre. */
export const names = (manoeuvre: Feature, ...properties: readonly string[]): readonly string[] =>
  properties.flatMap((property) => {
    const value = propertyOf(manoeuvre, property);
    return (Array.isArray(value) ? value : [value]).filter((name): name is string => typeof name === "string");
  });

const drivenOn: ReadonlySet<string> = new Set(["surface", "ramp", "strip", "crossing"]);

/** The ground of a feature that wheels may use; none for other things. */
export function areaOf(feature: Feature | undefined): readonly LiveRing[] {
  if (!feature || !drivenOn.has(feature.kind)) return [];
  const [outline] = groundFigure(feature)?.chains.filter((chain) => chain.ends === "closed") ?? [];
  return outline ? [outline.points] : [];
}

/** The ground of a feature, carried on to what it joins where it is drawn by its middle line. */
export function joinedArea(feature: Feature | undefined, work: Pick<WayWork, "read" | "others">): readonly LiveRing[] {
  const { shape } = feature ?? {};
  if (!feature || shape?.form !== "line" || !shape.width) return areaOf(feature);
  const { width } = shape;
  if (areaOf(feature).length === 0) return [];
  const line = roundedLine(feature, shape.line.map(liveSpot), width);
  return [
    ringAlong(
      joinedOn(line, (read) => read(width), work),
      (read) => read(width),
    ),
    ...widerRings(feature, work.read),
  ];
}

/** Something about a manoeuvre that the plan does not say. */
export function notSaid(manoeuvre: Feature, property: string, words: string): Missing {
  return { feature: manoeuvre, property, asks: `${words} ${featureWords(manoeuvre)} is to be done`, why: "missing" };
}

/** Whether a manoeuvre ends where its vehicle stands, and not on the way out. */
export const endsInABay = (manoeuvre: Feature): boolean => toABay.has(wordOf(manoeuvre, "does"));

/** Where a manoeuvre starts and ends, and in which gear. */
export interface Ends {
  readonly start: Pose;
  readonly goal: Pose;
  readonly firstGear: Gear;
  readonly lastGear: Gear;
}

export interface EndWork {
  readonly entries: ReadonlyMap<string, WayIn>;
  readonly work: WayWork;
  readonly there: (name: string) => Feature | undefined;
}

const toABay: ReadonlySet<string> = new Set(["park", "reverse to", "come in"]);
const fromABay: ReadonlySet<string> = new Set(["leave a bay", "go out"]);

/** Whether it is still going backwards where it leaves the ground: who only leaves a bay backwards drives away forwards. */
function backsOut(manoeuvre: Feature): boolean {
  return wordOf(manoeuvre, "backwards") === "out" && wordOf(manoeuvre, "does") !== "leave a bay";
}

/** Going out, it stands as it came in: unless it is said which way round that was, or it has the moves to turn, nobody can tell. */
function facingUnsaid(manoeuvre: Feature): boolean {
  const said = ["backwards", "moves", "start.heading", "start.towards", "start.gear"];
  return (
    wordOf(manoeuvre, "does") === "go out" && said.every((property) => propertyOf(manoeuvre, property) === undefined)
  );
}

/** What a vehicle stands in before or after, by name; none for a manoeuvre that only passes. */
export function bayNames(manoeuvre: Feature): readonly string[] {
  const does = wordOf(manoeuvre, "does");
  return toABay.has(does) || fromABay.has(does) ? names(manoeuvre, "to", "start.on", "end.on") : [];
}

/** Start and goal: as the plan writes them, else by the way in and out, and by the bay. */
export function endsOf(manoeuvre: Feature, plain: Vehicle, at: EndWork): Ends | Missing {
  const does = wordOf(manoeuvre, "does");
  const backwards = wordOf(manoeuvre, "backwards");
  const inBy = names(manoeuvre, "comes_in_by")[0] ?? "";
  const outBy = names(manoeuvre, "goes_out_by")[0] ?? inBy;
  const entry = at.entries.get(inBy) ?? null;
  const exit = at.entries.get(outBy) ?? null;
  const inReverse = backwards === "in" || does === "reverse to";
  if (facingUnsaid(manoeuvre)) return notSaid(manoeuvre, "backwards", "whether backwards or forwards");
  const start =
    written(manoeuvre, "start", at.work.read) ??
    (fromABay.has(does)
      ? standing(bayFor(manoeuvre, ["start.on", "to"], at, plain), plain, backwards === "in" ? "nose out" : "nose in")
      : comingIn(entry, plain, inReverse && !toABay.has(does) ? "backwards" : "forwards"));
  if (!start) return notSaid(manoeuvre, "start.at", "where and facing which way the vehicle stands when");
  const goal =
    written(manoeuvre, "end", at.work.read) ??
    (toABay.has(does)
      ? standing(bayFor(manoeuvre, ["end.on", "to"], at, plain), plain, inReverse ? "nose out" : "nose in")
      : (goingOut(exit, plain, backsOut(manoeuvre) ? "backwards" : "forwards") ?? turnedRound(start)));
  if (!goal) return notSaid(manoeuvre, "end.at", "where and facing which way the vehicle is to stand when");
  const gear = (part: string): Gear | null => gearWords[wordOf(manoeuvre, `${part}.gear`)] ?? null;
  const setsOffBackwards = fromABay.has(does) ? backwards !== "in" : inReverse && !toABay.has(does);
  return {
    start,
    goal,
    firstGear: gear("start") ?? (setsOffBackwards ? "reverse" : "forward"),
    lastGear:
      gear("end") ??
      ((toABay.has(does) && inReverse) || (backsOut(manoeuvre) && !toABay.has(does)) ? "reverse" : "forward"),
  };
}

const gearWords: Readonly<Record<string, Gear>> = { forwards: "forward", backwards: "reverse" };

function turnedRound(start: Pose): Pose {
  return { ...start, heading: start.heading + Math.PI };
}

/** A pose written in the plan: the middle of the rear axle, and a bearing or a point that it faces. */
function written(manoeuvre: Feature, part: "start" | "end", read: Read): Pose | null {
  const at = propertyOf(manoeuvre, `${part}.at`);
  const bearing = propertyOf(manoeuvre, `${part}.heading`);
  const towards = propertyOf(manoeuvre, `${part}.towards`);
  if (!isSpot(at)) return null;
  const [x, y] = [read(at.east), read(at.north)];
  if (isQuantity(bearing)) return { x, y, heading: Math.PI / 2 - read(bearing) };
  if (!isSpot(towards)) return null;
  return { x, y, heading: Math.atan2(read(towards.north) - y, read(towards.east) - x) };
}

/** On the run outside a way in, nose (or tail) at its open end. */
function comingIn(way: WayIn | null, plain: Vehicle, how: "forwards" | "backwards"): Pose | null {
  if (!way) return null;
  const back = how === "forwards" ? plain.wheelbase + plain.frontOverhang : plain.rearOverhang;
  return along(way.at, way.heading, -back, how === "forwards" ? 0 : Math.PI);
}

/** On the run outside a way out, tail (or nose) at its open end. */
function goingOut(way: WayIn | null, plain: Vehicle, how: "forwards" | "backwards"): Pose | null {
  if (!way) return null;
  const back = how === "forwards" ? plain.rearOverhang : plain.wheelbase + plain.frontOverhang;
  return along(way.at, way.heading, -back, how === "forwards" ? Math.PI : 0);
}

function along(from: Point, heading: number, by: number, turn: number): Pose {
  return { x: from[0] + by * Math.cos(heading), y: from[1] + by * Math.sin(heading), heading: heading + turn };
}

function bayFor(manoeuvre: Feature, properties: readonly string[], at: EndWork, plain: Vehicle): BayAt | null {
  const [name] = names(manoeuvre, ...properties);
  const way = at.entries.get(name ?? "");
  if (way?.innerEnd) return atInnerEnd(way.innerEnd, plain);
  const [ring] = name === undefined ? [] : areaOf(at.there(name));
  if (!ring) return null;
  const outline = ringAt(ring, at.work.read);
  const ways = [...at.entries.values()].flatMap((one) => one.rings.map((its) => ringAt(its, at.work.read)));
  const others = at.work.others.filter((other) => JSON.stringify(other) !== JSON.stringify(outline));
  return bayAt(outline, [...others, ...ways]);
}

/** On a track with its nose at the inner end; null where the track bends there within the vehicle's length. */
function atInnerEnd({ at, heading, straight }: NonNullable<WayIn["innerEnd"]>, plain: Vehicle): BayAt | null {
  const length = overallLength(plain);
  const { x, y } = along(at, heading, -length / 2, 0);
  return straight < length ? null : { middle: [x, y], heading };
}

/** In the middle of a bay. */
function standing(bay: BayAt | null, plain: Vehicle, how: "nose in" | "nose out"): Pose | null {
  if (!bay) return null;
  const heading = how === "nose in" ? bay.heading : bay.heading + Math.PI;
  const middle = (plain.wheelbase + plain.frontOverhang - plain.rearOverhang) / 2;
  return along(bay.middle, heading, -middle, 0);
}
