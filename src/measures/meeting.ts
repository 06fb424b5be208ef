// What: what is to spare where two vehicles meet: of the way's width, of a passing place's length, between places?
// Formula: widest long enough place less both bodies; its length less what drawing aside takes; the longest way between places.
// Source: plane geometry; sidestep of two arcs sqrt(y (4r - y)) (COMPUTED).
// Valid: ways drawn by a middle line with a width; widenings with square ends; both vehicles rigid.
// Witness: the middle line of the place, or of the way between two.

import { stretchOf } from "../geometry/line.ts";
import { passingPlaceLength } from "../motion/passing-place.ts";
import { overallLength, type Vehicle } from "../motion/vehicle.ts";
import { type Feature, featureWords } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Found, Measure, Missing, Scene } from "../model/reading.ts";
import { names } from "../site/drive-ends.ts";
import { planLength, pointsOf } from "../site/drain-runs.ts";
import { type LivePlace, passingPlaces, wayWidth } from "../site/passing-places.ts";
import { liveVehicle, type LiveVehicle } from "../site/vehicle.ts";

const bears = { is: "does-not-bear" } as const;

interface Meeting {
  readonly way: Feature;
  readonly ours: LiveVehicle;
  readonly others: LiveVehicle;
}

/** Ways and vehicles of a manoeuvre that says whom it meets; or why nothing can be said. */
function meetings(manoeuvre: Feature | undefined, scene: Scene): readonly Meeting[] | Found {
  const [other] = manoeuvre ? names(manoeuvre, "meets") : [];
  if (!manoeuvre || other === undefined) return bears;
  const vehicles = [...names(manoeuvre, "vehicle"), other].map((name) =>
    scene.standing("vehicles").find((one) => one.name === name),
  );
  const [ours, others] = vehicles.map((one) => one && liveVehicle(one));
  if (!ours || !others) return { is: "gave-up", because: "one of its vehicles is not in the plan at this stage" };
  const lacking: readonly Missing[] = [ours, others].flatMap((one) => ("missing" in one ? one.missing : []));
  if ("missing" in ours || "missing" in others) return { is: "missing", missing: lacking };
  if (!ours(scene.read) || !others(scene.read))
    return { is: "gave-up", because: "the lengths of a vehicle do not fit its turning circle" };
  const used = new Set(names(manoeuvre, "comes_in_by", "goes_out_by", "on"));
  const ways = scene.standing("surfaces").filter((one) => used.has(one.name) && wayWidth(one) !== null);
  return ways.length === 0 ? bears : ways.map((way) => ({ way, ours, others }));
}

/** The place of a way at which two meet best: the widest in which the shorter of them fits lengthwise. */
function bestPlace({ way, ours, others }: Meeting, read: Read): LivePlace | null {
  const shorter = Math.min(...[ours, others].map((one) => overallLength(one(read) as Vehicle)));
  const places = passingPlaces(way).filter((place) => place.to(read) - place.from(read) >= shorter);
  return places.reduce<LivePlace | null>(
    (best, one) => (best && best.width(read) >= one.width(read) ? best : one),
    null,
  );
}

const room = (manoeuvre: Feature | undefined, scene: Scene, value: PlaceValue): Found => {
  const found = meetings(manoeuvre, scene);
  if ("is" in found) return found;
  const places = found.flatMap((meeting) => {
    const place = bestPlace(meeting, scene.read);
    const { way } = meeting;
    if (!place || way.shape?.form !== "line") return [];
    const plain = value(meeting, place, scene.read);
    if (plain === null) return [];
    const { line } = way.shape;
    return [
      {
        key: way.name,
        where: `on ${featureWords(way)}${place.words}`,
        value: (read: Read) => value(meeting, place, read) ?? plain,
        witness: (read: Read) => [
          {
            part: "found" as const,
            form: "line" as const,
            points: stretchOf(pointsOf(line, read), place.from(read), place.to(read)),
          },
        ],
      },
    ];
  });
  return places.length === 0 ? bears : { is: "found", places };
};

type PlaceValue = (meeting: Meeting, place: LivePlace, read: Read) => number | null;

const widthLeft: PlaceValue = ({ ours, others }, place, read) =>
  place.width(read) - widthOf(ours, read) - widthOf(others, read);

/** By how much a widening is longer than the one that draws aside needs; the easier of the two. Null where the way is wide all along. */
const lengthLeft: PlaceValue = ({ way, ours, others }, place, read) => {
  const usual = wayWidth(way);
  if (!usual || place.words === "") return null;
  const aside = place.width(read) - usual(read);
  const long = place.to(read) - place.from(read);
  const needs = [ours, others].map((one) => passingPlaceLength(one(read) as Vehicle, aside));
  return long - Math.min(...needs);
};

const widthOf = (vehicle: LiveVehicle, read: Read): number => vehicle(read)?.bodyWidth ?? 0;

const roles = { manoeuvre: "a manoeuvre that says which vehicle it meets" };

export const meetingMeasures: readonly Measure[] = [
  {
    name: "width-left-at-meeting",
    dimension: "length",
    roles,
    parameters: {},
    phrase: "{found} of the width is left beside and between the two",
    shortName: "width left",
    find: ({ manoeuvre }, scene) => room(manoeuvre, scene, widthLeft),
  },
  {
    name: "length-left-at-meeting",
    dimension: "length",
    roles,
    parameters: {},
    phrase: "{found} of the passing place's length is left over",
    shortName: "length left over",
    find: ({ manoeuvre }, scene) => room(manoeuvre, scene, lengthLeft),
  },
  {
    name: "passing-place-spacing",
    dimension: "length",
    roles: { way: "a surface drawn by its middle line" },
    parameters: { wide: { dimension: "length", default: 0 }, long: { dimension: "length", default: 0 } },
    phrase: "it is {found} from one place where two can pass to the next, or to its end",
    shortName: "from place to place",
    find: ({ way }, scene, { wide, long }) =>
      way ? spacing(way, { wide: Number(wide), long: Number(long) }, scene.read) : bears,
  },
];

/** What counts as a place where two can pass: how wide over all and how long at the least, m. */
interface Enough {
  readonly wide: number;
  readonly long: number;
}

/** The longest stretch of a way without a place where two can pass, ends included; none where it is as wide all along. */
function spacing(way: Feature, enough: Enough, now: Read): Found {
  const usual = wayWidth(way);
  if (way.shape?.form !== "line" || !usual || usual(now) >= enough.wide) return bears;
  const { line } = way.shape;
  const widenings = passingPlaces(way)
    .filter(({ words }) => words !== "")
    .filter((one) => one.width(now) >= enough.wide && one.to(now) - one.from(now) >= enough.long)
    .toSorted((a, b) => a.from(now) - b.from(now));
  const ends = [...widenings.map(({ from }) => from), (read: Read) => planLength(line, read)];
  const starts: readonly ((read: Read) => number)[] = [() => 0, ...widenings.map(({ to }) => to)];
  const gaps = ends.map((to, i) => ({ from: starts[i] ?? (() => 0), to }));
  const longest = gaps.reduce((a, b) => (b.to(now) - b.from(now) > a.to(now) - a.from(now) ? b : a));
  return {
    is: "found",
    places: [
      {
        key: "longest",
        value: (read) => longest.to(read) - longest.from(read),
        witness: (read) => [
          {
            part: "found",
            form: "line",
            points: stretchOf(pointsOf(line, read), longest.from(read), longest.to(read)),
          },
        ],
      },
    ],
  };
}
