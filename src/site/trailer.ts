// The trailer that is on in a manoeuvre, as lengths that can be read again with moved numbers.

import { reachBehindAxle, type Trailer } from "../motion/trailer-pose.ts";
import type { Vehicle } from "../motion/vehicle.ts";
import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Quantity, Read } from "../model/quantity.ts";
import type { Missing } from "../model/reading.ts";
import { names } from "./drive-ends.ts";

/** A trailer at the plan's own values, and read again. */
export interface DriveTrailer {
  readonly feature: Feature;
  readonly live: (read: Read) => Trailer;
  readonly plain: Trailer;
}

export type TrailerFound =
  | { readonly is: "none" }
  | { readonly is: "trailer"; readonly trailer: DriveTrailer }
  | { readonly is: "missing"; readonly missing: readonly Missing[] }
  | { readonly is: "gave-up"; readonly because: string };

/** What is asked for: property, words. The body's place follows from two of front, length and rear overhang. */
const wanted = [
  ["width", "width"],
  ["hitch_to_axle", "length from the hitch to the axle"],
  ["rear_overhang", "length from the axle to the rear end"],
] as const;

/**
 * The trailer that a manoeuvre names (`with_trailer`), else the one that its vehicle tows. Where neither front of the
 * body nor its length is given, the body is taken to begin at the hitch, which is early. The tyres are taken to stand as
 * wide as the body.
 */
export function trailerOf(manoeuvre: Feature, vehicle: Feature, at: TrailerScene): TrailerFound {
  const [name] = [...names(manoeuvre, "with_trailer"), ...names(vehicle, "tows")];
  if (name === undefined) return { is: "none" };
  const feature = at.trailers.find((one) => one.name === name);
  if (!feature) return { is: "gave-up", because: "its trailer is not in the plan at this stage" };
  if (propertyOf(feature, "steered_axle") === true)
    return { is: "gave-up", because: "trailers with a steered front axle are not searched" };
  const number = (from: Feature, property: string): Quantity | null => {
    const quantity = propertyOf(from, property);
    return isQuantity(quantity) ? quantity : null;
  };
  const hitch = number(vehicle, "hitch");
  const [width, drawbar, tail] = wanted.map(([property]) => number(feature, property));
  const angle = number(feature, "greatest_angle");
  if (!hitch || !width || !drawbar || !tail || !angle) {
    const own = wanted.filter(([property]) => number(feature, property) === null);
    return {
      is: "missing",
      missing: [
        ...(hitch ? [] : [lack(vehicle, "hitch", "length from the rear axle back to the hitch")]),
        ...own.map(([property, words]) => lack(feature, property, words)),
        ...(angle
          ? []
          : [lack(feature, "greatest_angle", "angle to the towing vehicle at which something touches,", "angle")]),
      ],
    };
  }
  const [front, length] = [number(feature, "hitch_to_front"), number(feature, "length")];
  const live = (read: Read): Trailer => ({
    hitchBehindAxle: read(hitch),
    hitchToAxle: read(drawbar),
    hitchToFront: front ? read(front) : length ? read(drawbar) + read(tail) - read(length) : 0,
    rearOverhang: read(tail),
    bodyWidth: read(width),
    widthOverTyres: read(width),
    greatestAngle: read(angle),
  });
  return { is: "trailer", trailer: { feature, live, plain: live(at.read) } };
}

/** Trailers of the plan that are there then. */
export interface TrailerScene {
  readonly trailers: readonly Feature[];
  readonly read: Read;
}

function lack(feature: Feature, property: string, words: string, dimension: "length" | "angle" = "length"): Missing {
  return { feature, property, asks: `the ${words} of ${featureWords(feature)}`, dimension, why: "missing" };
}

/** A vehicle with its trailer in line behind it, as one long vehicle: for where it starts and ends. */
export function inLine(vehicle: Vehicle, trailer: DriveTrailer | null): Vehicle {
  return trailer
    ? { ...vehicle, rearOverhang: Math.max(vehicle.rearOverhang, reachBehindAxle(trailer.plain)) }
    : vehicle;
}
