// A manoeuvre as a question that can be searched: which ground its wheels may use, what stands in its way, and where it
// starts and ends.

import type { Pose } from "../motion/pose.ts";
import { overallLength, type Vehicle } from "../motion/vehicle.ts";
import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Missing, Point } from "../model/reading.ts";
import { areaOf, bayNames, joinedArea, type Ends, endsOf, names, notSaid, wordOf } from "./drive-ends.ts";
import { type Carried, carriedBy } from "./carried.ts";
import { type InTheWay, inTheWay } from "./in-the-way.ts";
import { joinedRings, type LiveRing, ringAt } from "./live-ring.ts";
import { type LiveVehicle, liveVehicle, looksSlipped } from "./vehicle.ts";
import { type Tall, tallestOf } from "./passes-under.ts";
import { type DriveTrailer, inLine, trailerOf } from "./trailer.ts";
import { type WayIn, wayIn, type WayWork } from "./way-in.ts";

/** A manoeuvre ready to be searched. Poses are those of the plan's own values: when numbers are nudged the path keeps its form. */
export interface Drive extends Ends {
  readonly manoeuvre: Feature;
  readonly vehicle: LiveVehicle;
  readonly plain: Vehicle;
  /** The trailer that is on; null where there is none. */
  readonly trailer: DriveTrailer | null;
  /** How tall it is with its trailer, m; null where the plan does not say it. */
  readonly tall: Tall;
  /** How far it rolls from wheels straight ahead to full lock, m; null where they are turned on the spot. */
  readonly rollToLock: number | null;
  /** Changes of direction allowed; null where the plan does not say in how many moves. */
  readonly mostChanges: number | null;
  /** What it stands in before or after, where the plan names it. */
  readonly bay: LiveRing | null;
  /** Ground for the wheels; outlines counter-clockwise, holes clockwise. */
  readonly running: readonly LiveRing[];
  readonly inTheWay: readonly InTheWay[];
  /** A path that was found goes with the wheels' ground when numbers are nudged. */
  readonly carried: Carried;
  /** True where the body must stay over the surface too. */
  readonly bodyStaysOn: boolean;
  /** Surfaces that it is to use and that are not there yet. */
  readonly absent: readonly string[];
}

export type DriveFound =
  | { readonly is: "drive"; readonly drive: Drive }
  | { readonly is: "missing"; readonly missing: readonly Missing[] }
  | { readonly is: "gave-up"; readonly because: string };

/** What stands when the manoeuvre is done, and all vehicles of the plan. */
export interface DriveScene {
  readonly there: readonly Feature[];
  readonly vehicles: readonly Feature[];
  readonly trailers: readonly Feature[];
  readonly read: Read;
}

/** Ground beyond the vehicle's own length outside a way in, m. */
const spareOutside = 1.5;
/** A long track is looked at for so many vehicle lengths before it meets the rest. */
const keptLengths = 2;

/** Makes the question of a manoeuvre at what stands then. */
export function driveOf(manoeuvre: Feature, scene: DriveScene): DriveFound {
  const vehicle = scene.vehicles.find((one) => one.name === propertyOf(manoeuvre, "vehicle"));
  if (!vehicle) return gaveUp("its vehicle is not in the plan at this stage");
  const unfit = beyondUs(manoeuvre, vehicle);
  if (unfit) return gaveUp(unfit);
  const live = liveVehicle(vehicle);
  if ("missing" in live) return { is: "missing", missing: live.missing };
  const plain = live(scene.read);
  if (!plain || looksSlipped(plain))
    return gaveUp(
      `the lengths of ${featureWords(vehicle)} do not fit its turning circle: is a radius written for a diameter, or the other way round?`,
    );
  const towed = trailerOf(manoeuvre, vehicle, scene);
  if (towed.is === "gave-up" || towed.is === "missing") return towed;
  const trailer = towed.is === "trailer" ? towed.trailer : null;
  const mostChanges = changesAllowed(manoeuvre, scene.read);
  const rolls = rollToLock(vehicle, scene.read);
  if (typeof rolls === "object" && rolls !== null) return missing(rolls);
  if (rolls !== null && trailer) return gaveUp("steering while rolling is not searched with a trailer on");
  const tall = tallestOf([vehicle, ...(trailer ? [trailer.feature] : [])], scene.read);
  return laidOut({ manoeuvre, vehicle: live, plain, trailer, tall, rollToLock: rolls, mostChanges, scene });
}

const gaveUp = (because: string): DriveFound => ({ is: "gave-up", because });
const missing = (...lacking: readonly Missing[]): DriveFound => ({ is: "missing", missing: lacking });

/** What our search cannot do. */
function beyondUs(manoeuvre: Feature, vehicle: Feature): string | null {
  const steers = propertyOf(vehicle, "steers");
  if (steers !== undefined && steers !== "front")
    return `only vehicles that steer with their front wheels are searched`;
  return propertyOf(manoeuvre, "does") === "pass" ? "passing another vehicle is not searched" : null;
}

const straightThrough: ReadonlySet<string> = new Set(["drive through", "come in", "go out"]);

/** Changes of direction allowed: moves less one. */
function changesAllowed(manoeuvre: Feature, read: Read): number | null {
  const moves = propertyOf(manoeuvre, "moves");
  if (isQuantity(moves)) return Math.max(0, Math.round(read(moves)) - 1);
  return straightThrough.has(wordOf(manoeuvre, "does")) ? 0 : null;
}

/** Null where the wheels may be turned while it stands, which is taken where the plan does not say. */
function rollToLock(vehicle: Feature, read: Read): number | null | Missing {
  if (propertyOf(vehicle, "steers_when_stopped") !== false) return null;
  const rolls = propertyOf(vehicle, "rolls_to_lock");
  if (isQuantity(rolls)) return read(rolls);
  const asks = `how far ${featureWords(vehicle)} rolls while its wheels are turned from straight ahead to full lock`;
  return { feature: vehicle, property: "rolls_to_lock", asks, dimension: "length", why: "missing" };
}

interface Layout {
  readonly manoeuvre: Feature;
  readonly vehicle: LiveVehicle;
  readonly plain: Vehicle;
  readonly trailer: DriveTrailer | null;
  readonly tall: Tall;
  readonly rollToLock: number | null;
  readonly mostChanges: number | null;
  readonly scene: DriveScene;
}

function laidOut(layout: Layout): DriveFound {
  const { manoeuvre, scene } = layout;
  const train = inLine(layout.plain, layout.trailer);
  const given = names(manoeuvre, "on");
  const ways = [...new Set(names(manoeuvre, "comes_in_by", "goes_out_by"))];
  const wanted = new Set([
    ...(given.length > 0 ? given : names(manoeuvre, "to")),
    ...names(manoeuvre, "start.on", "end.on"),
    ...names(manoeuvre, "to"),
  ]);
  const there = (name: string) => scene.there.find((feature) => feature.name === name);
  const absent = [...new Set([...wanted, ...ways])].filter((name) => there(name) === undefined);
  const [needed] = [...ways, ...bayNames(manoeuvre)].filter((name) => absent.includes(name));
  if (needed !== undefined)
    return gaveUp(`"${needed}" is not there yet when it is to be done, and it does not wait for it`);
  const grounds = [...wanted].filter((name) => !ways.includes(name)).map(there);
  const raw = grounds.map((feature) => areaOf(feature).map((ring) => ringAt(ring, scene.read)));
  const areas = grounds.flatMap((feature, i) =>
    joinedArea(feature, { read: scene.read, others: raw.filter((_, k) => k !== i).flat() }),
  );
  const work: WayWork = {
    read: scene.read,
    others: areas.map((ring) => ringAt(ring, scene.read)),
    outside: overallLength(train) + spareOutside,
    keep: keptLengths * overallLength(train),
  };
  const entries = new Map(ways.flatMap((name) => entryOf(name, there(name), work)));
  const wide = ways.flatMap((name) => (entries.has(name) ? [] : areaOf(there(name))));
  const running = joinedRings([...areas, ...wide, ...[...entries.values()].flatMap((way) => way.rings)], scene.read);
  if (!running || running.length === 0) return missing(notSaid(manoeuvre, "on", "on which surfaces"));
  const ends = endsOf(manoeuvre, train, { entries, work, there });
  if ("asks" in ends) return missing(ends);
  const looking = {
    read: scene.read,
    heading: ends.start.heading,
    tall: layout.tall,
    gates: scene.there.filter((one) => one.kind === "gate"),
  };
  const box = boxAbout(running, ends.start, scene.read, overallLength(train));
  const drive: Drive = {
    ...layout,
    ...ends,
    bay: areaOf(there(bayNames(manoeuvre)[0] ?? ""))[0] ?? null,
    running,
    carried: carriedBy(running, scene.read),
    inTheWay: scene.there
      .flatMap((feature) => inTheWay(feature, looking) ?? [])
      .filter((one) => reaches(one, box, ends.start, scene.read)),
    bodyStaysOn: propertyOf(manoeuvre, "body_over_edge") === false,
    absent,
  };
  return { is: "drive", drive };
}

function entryOf(name: string, feature: Feature | undefined, work: WayWork): readonly (readonly [string, WayIn])[] {
  const way = feature ? wayIn(feature, work) : null;
  return way ? [[name, way]] : [];
}

/** A box in the frame of a pose: back, right, front, left, m. */
export type PoseBox = readonly [number, number, number, number];

/** The box round the ground that the body can come over, as seen from the start. */
export function boxAbout(rings: readonly LiveRing[], start: Pose, read: Read, about: number): PoseBox {
  const points = rings.flatMap((ring) => ringAt(ring, read)).map((point) => seenFrom(start, point));
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.min(...xs) - about, Math.min(...ys) - about, Math.max(...xs) + about, Math.max(...ys) + about];
}

function reaches(one: InTheWay, box: PoseBox, start: Pose, read: Read): boolean {
  return one.rings.some((ring) => {
    const points = ringAt(ring, read).map((point) => seenFrom(start, point));
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    return Math.max(...xs) > box[0] && Math.max(...ys) > box[1] && Math.min(...xs) < box[2] && Math.min(...ys) < box[3];
  });
}

function seenFrom(start: Pose, [x, y]: Point): Point {
  const [c, s] = [Math.cos(start.heading), Math.sin(start.heading)];
  return [c * (x - start.x) + s * (y - start.y), c * (y - start.y) - s * (x - start.x)];
}
