// The trailer behind a vehicle whose room is looked for: of the plan, or of the library's row of the vehicle.

import { type Feature, featureWords, isQuantity, type Plan, propertyOf } from "../model/plan.ts";
import type { Quantity, Read } from "../model/quantity.ts";
import type { Trailer } from "../motion/trailer-pose.ts";
import { type Library, sourceWords } from "./room-vehicle.ts";

/** A trailer with its lengths in one sentence. */
export interface RoomTrailer {
  readonly name: string;
  readonly trailer: Trailer;
  /** True where the plan says at which angle something touches. */
  readonly angleGiven: boolean;
  readonly words: string;
}

export type RoomTrailerFound =
  | { readonly is: "none" }
  | { readonly is: "trailer"; readonly trailer: RoomTrailer }
  | { readonly is: "lacks"; readonly lacks: readonly string[] };

const metres = (value: number) => `${value.toFixed(2)} m`;
const needed = (what: string) => `needed is ${what}, which nobody has given. Measure it and give it.`;

/** What a vehicle tows: the one that is named, else its own of the plan, else that of its row of the library. */
export function roomTrailer(
  vehicle: Feature,
  plan: Plan,
  at: { readonly library: Library; readonly named: string | null; readonly read: Read },
): RoomTrailerFound {
  const { library, read } = at;
  const tows = propertyOf(vehicle, "tows");
  const name = at.named ?? (typeof tows === "string" ? tows : undefined);
  if (name === undefined) return fromRow(vehicle, library);
  const there = plan.features.filter(({ kind }) => kind === "trailer");
  const feature = there.find((one) => one.name === name);
  if (!feature) {
    const known = there.map((one) => `"${one.name}"`).join(", ");
    return {
      is: "lacks",
      lacks: [`The plan has no trailer "${name}"; it has ${known === "" ? "none" : known}.`],
    };
  }
  if (propertyOf(feature, "steered_axle") === true)
    return { is: "lacks", lacks: ["a trailer with a steered front axle is not reckoned with here."] };
  return fromPlan(vehicle, feature, { read, library });
}

interface PlanWork {
  readonly read: Read;
  readonly library: Library;
}

function fromPlan(vehicle: Feature, feature: Feature, { read, library }: PlanWork): RoomTrailerFound {
  const number = (from: Feature, property: string): Quantity | null => {
    const quantity = propertyOf(from, property);
    return isQuantity(quantity) ? quantity : null;
  };
  const hitch = number(vehicle, "hitch");
  const [width, drawbar] = [number(feature, "width"), number(feature, "hitch_to_axle")];
  const tail = number(feature, "rear_overhang");
  const wanted = [
    [hitch, `the length from the rear axle back to the hitch of ${featureWords(vehicle)}`],
    [width, `the width of ${featureWords(feature)}`],
    [drawbar, `the length from the hitch to the axle of ${featureWords(feature)}`],
    [tail, `the length from the axle to the rear end of ${featureWords(feature)}`],
  ] as const;
  if (!hitch || !width || !drawbar || !tail)
    return { is: "lacks", lacks: wanted.flatMap(([given, words]) => (given ? [] : [needed(words)])) };
  const [front, length, angle] = [
    number(feature, "hitch_to_front"),
    number(feature, "length"),
    number(feature, "greatest_angle"),
  ];
  const trailer: Trailer = {
    hitchBehindAxle: read(hitch),
    hitchToAxle: read(drawbar),
    hitchToFront: front ? read(front) : length ? Math.max(0, read(drawbar) + read(tail) - read(length)) : 0,
    rearOverhang: read(tail),
    bodyWidth: read(width),
    widthOverTyres: read(width),
    greatestAngle: angle ? read(angle) : Math.PI / 2,
  };
  const row = library.trailers?.rows.get(feature.name)?.["wheelbase"];
  const source = row && row.value === trailer.hitchToAxle ? library.sources.get(row.source) : undefined;
  return told(feature.name, trailer, { angleGiven: angle !== null, rests: sourceWords(source) });
}

/** A row with a trailer gives the rear overhang and the width of the trailer; its body is taken to begin at the hitch. */
function fromRow(vehicle: Feature, { vehicles, sources }: Library): RoomTrailerFound {
  const like = vehicle.properties["like"];
  const row = typeof like === "string" ? vehicles?.rows.get(like) : undefined;
  const [hitch, drawbar, tail, width] = ["hitch", "trailer_wheelbase", "rear_overhang", "width"].map(
    (column) => row?.[column]?.value,
  );
  if (drawbar === undefined) return { is: "none" };
  const trailer: Trailer = {
    hitchBehindAxle: hitch ?? 0,
    hitchToAxle: drawbar,
    hitchToFront: 0,
    rearOverhang: tail ?? 0,
    bodyWidth: width ?? 0,
    widthOverTyres: width ?? 0,
    greatestAngle: Math.PI / 2,
  };
  const source = row?.["trailer_wheelbase"]?.source;
  const rests = sourceWords(source === undefined ? undefined : sources.get(source));
  return told("its trailer", trailer, { angleGiven: false, rests });
}

function told(
  name: string,
  trailer: Trailer,
  { angleGiven, rests }: { readonly angleGiven: boolean; readonly rests: string },
): RoomTrailerFound {
  const { hitchBehindAxle, hitchToAxle, rearOverhang, bodyWidth } = trailer;
  const words =
    `${metres(bodyWidth)} wide, ${metres(hitchToAxle)} from hitch to axle, ${metres(rearOverhang)} behind the axle; ` +
    `hitched ${metres(hitchBehindAxle)} behind the rear axle of the vehicle (${rests})`;
  return { is: "trailer", trailer: { name, trailer, angleGiven, words } };
}
