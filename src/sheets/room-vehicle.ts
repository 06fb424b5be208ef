// A vehicle of a plan, or of the library, as the search for room wants it: its lengths, its far end, what they rest on.

import type { Seen, Source, Table } from "../model/card.ts";
import { type Feature, featureWords, type Plan } from "../model/plan.ts";
import type { Missing } from "../model/reading.ts";
import { type Quantity, type Read, swayLength } from "../model/quantity.ts";
import { type RoomTrailer, roomTrailer } from "./room-trailer.ts";
import { overallLength, steadyCircle, type Vehicle } from "../motion/vehicle.ts";
import { liveVehicle } from "../site/vehicle.ts";

/** A vehicle whose room is looked for. */
export interface RoomVehicle {
  readonly name: string;
  readonly vehicle: Vehicle;
  /** All its lengths and its turning circle at the far end of their ±; null where they have none. */
  readonly largest: Vehicle | null;
  /** Width over both mirrors, m, where the plan says it. */
  readonly overMirrors: number | null;
  /** The trailer behind it; null where it tows none. */
  readonly trailer: RoomTrailer | null;
  /** Its lengths and circles in one sentence. */
  readonly words: string;
  /** What the figures rest on, a sentence each. */
  readonly rests: readonly string[];
}

/** A vehicle, or why there is none: what to measure, in words. */
export type RoomVehicleFound = RoomVehicle | { readonly name: string; readonly lacks: readonly string[] };

/** Half-width of a 95 % interval in standard uncertainties, as the plan words its ± (19 times in 20). */
const nineteenInTwenty = 1.96;

/** The table of vehicles and the bibliography. */
export interface Library {
  readonly trailers?: Table | undefined;
  readonly vehicles: Table | undefined;
  readonly sources: ReadonlyMap<string, Source>;
  /** Names to be printed in place of those of the plan. */
  readonly shown?: Readonly<Record<string, string>>;
  /** The trailer of the plan that every vehicle is to tow; null or not there where each tows its own. */
  readonly trailer?: string | null;
}

/** The vehicles of a plan by name, all of them where none is named. Unknown names come back with the names there are. */
export function roomVehicles(plan: Plan, named: readonly string[], library: Library): readonly RoomVehicleFound[] {
  return namedVehicles(plan, named, library).map((found) => shownAs(found, library.shown ?? {}));
}

/** The vehicle under the name that is to be printed. */
function shownAs(found: RoomVehicleFound, shown: Readonly<Record<string, string>>): RoomVehicleFound {
  const name = shown[found.name] ?? found.name;
  return "lacks" in found
    ? { name, lacks: found.lacks.map((words) => words.replaceAll(`"${found.name}"`, `"${name}"`)) }
    : { ...found, name };
}

function namedVehicles(plan: Plan, named: readonly string[], library: Library): readonly RoomVehicleFound[] {
  const there = plan.features.filter(({ kind }) => kind === "vehicle");
  const wanted = named.length > 0 ? named : there.map(({ name }) => name);
  return wanted.map((name) => {
    const feature = there.find((one) => one.name === name);
    if (feature) return roomVehicle(feature, plan, library);
    const known = there.map((one) => `"${one.name}"`).join(", ");
    return { name, lacks: [`The plan has no vehicle "${name}"; it has ${known === "" ? "none" : known}.`] };
  });
}

function roomVehicle(feature: Feature, plan: Plan, library: Library): RoomVehicleFound {
  const { name } = feature;
  const live = liveVehicle(feature);
  if ("missing" in live) return { name, lacks: live.missing.map(lackWords) };
  const { values, sways } = plan.numbers;
  const read: Read = ({ id }) => values[id] as number;
  const alone = live(read);
  if (alone === null)
    return { name, lacks: [`The lengths of ${featureWords(feature)} do not fit its turning circle.`] };
  const vehicle = towingBody(feature, alone, library);
  const towed = roomTrailer(feature, plan, { library, named: library.trailer ?? null, read });
  if (towed.is === "lacks") return { name, lacks: towed.lacks };
  const over = feature.properties["width_with_mirrors"];
  const far: Read = ({ id }) => (values[id] as number) + nineteenInTwenty * swayLength(sways[id] ?? new Map());
  const largest = live(far);
  const same = largest === null || JSON.stringify(largest) === JSON.stringify(vehicle);
  return {
    name,
    vehicle,
    largest: same ? null : largest,
    trailer: towed.is === "trailer" ? towed.trailer : null,
    overMirrors: isNumber(over) ? read(over) : null,
    words: vehicleWords(vehicle),
    rests: restsOn(feature, read, library),
  };
}

/** A row with a trailer gives the tail of the trailer: the vehicle's own is taken to end at the hitch. */
function towingBody(feature: Feature, vehicle: Vehicle, { vehicles }: Library): Vehicle {
  const like = feature.properties["like"];
  const row = typeof like === "string" ? vehicles?.rows.get(like) : undefined;
  return row?.["trailer_wheelbase"] === undefined ? vehicle : { ...vehicle, rearOverhang: row["hitch"]?.value ?? 0 };
}

const lackWords = ({ asks }: Missing): string => `needed is ${asks}, which nobody has given. Measure it and give it.`;

const metres = (value: number) => `${value.toFixed(2)} m`;

function vehicleWords(vehicle: Vehicle): string {
  const { kerbRadius, wallRadius } = steadyCircle(vehicle, vehicle.rearAxleRadius);
  return (
    `${metres(overallLength(vehicle))} long, ${metres(vehicle.bodyWidth)} wide without mirrors, ` +
    `${metres(vehicle.wheelbase)} between axles, ${metres(vehicle.frontOverhang)} before the front axle and ` +
    `${metres(vehicle.rearOverhang)} behind the rear one; turns in a circle ${(2 * kerbRadius).toFixed(1)} m across ` +
    `between kerbs, ${(2 * wallRadius).toFixed(1)} m between walls`
  );
}

const seenWords: Readonly<Record<Seen, string>> = {
  read: "page read",
  "read second-hand": "read second-hand",
  memory: "recalled, page not seen",
  computed: "worked out",
  none: "no publisher",
};

/** Properties of a vehicle, the column of the table they may come from, and words. */
const lengths = [
  ["length", "length", "length"],
  ["width", "width", "width"],
  ["wheelbase", "wheelbase", "wheelbase"],
  ["front_overhang", "front_overhang", "front overhang"],
  ["rear_overhang", "rear_overhang", "rear overhang"],
  ["track", "front_track", "width over the tyres"],
] as const;
const radii = ["radius_of_front_axle", "radius_between_kerbs", "radius_between_walls", "radius_inside"] as const;

/** Whose figures they are, grouped by source; a figure that is not the library's is the owner's. */
function restsOn(feature: Feature, read: Read, { vehicles, sources }: Library): readonly string[] {
  const like = feature.properties["like"];
  const row = typeof like === "string" ? vehicles?.rows.get(like) : undefined;
  const groups = new Map<string, string[]>();
  const add = (source: string, words: string) => groups.set(source, [...(groups.get(source) ?? []), words]);
  for (const [property, column, words] of lengths) {
    const quantity = feature.properties[property];
    if (!isNumber(quantity)) continue;
    const cell = row?.[column];
    add(cell !== undefined && cell.value === read(quantity) ? cell.source : "own", words);
  }
  const turning = feature.properties["turning_radius"];
  const radius = typeof turning === "object" && "radius" in turning ? turning.radius : undefined;
  const cell = radii.flatMap((column) => row?.[column] ?? [])[0];
  const fromTable = isNumber(radius) && cell !== undefined && cell.value === read(radius);
  add(fromTable ? cell.source : "own", "turning circle");
  const [over, body] = [feature.properties["width_with_mirrors"], feature.properties["width"]];
  const mirrors =
    isNumber(over) && isNumber(body)
      ? [
          `Mirrors: ${metres(read(over))} over both, ${metres((read(over) - read(body)) / 2)} on each side beyond the body.`,
        ]
      : [];
  const tyres =
    feature.properties["track"] === undefined ? ["Width over the tyres: not given, taken as the body's."] : [];
  return [
    ...[...groups].map(([id, what]) => `${capital(what.join(", "))}: ${sourceWords(sources.get(id))}.`),
    ...tyres,
    ...mirrors,
  ];
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function isNumber(property: unknown): property is Quantity {
  return typeof property === "object" && property !== null && "id" in property && "dimension" in property;
}

export function sourceWords(source: Source | undefined): string {
  if (!source) return "your own figures";
  const publisher = source.publisher === undefined ? "" : `, ${source.publisher}`;
  const edition = source.edition === undefined ? "" : `, ${source.edition}`;
  return `${source.title}${publisher}${edition} (${seenWords[source.seen]})`;
}
