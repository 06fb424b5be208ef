// The vehicle of a manoeuvre as five lengths and a radius that can be read again with moved numbers.

import { rearAxleRadiusFrom, type TurningRadius, type Vehicle, type VehicleBody } from "../motion/vehicle.ts";
import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Missing } from "../model/reading.ts";
import { wordOf } from "./drive-ends.ts";

/** A vehicle at a read; null where its lengths contradict its turning circle. */
export type LiveVehicle = (read: Read) => Vehicle | null;

type LiveNumber = (read: Read) => number;

/**
 * The vehicle, or what is missing. Rear overhang follows from the whole length where it is not given. Where no width
 * over the tyres is given the tyres are taken to stand as wide as the body: that keeps wheels on a surface early, and
 * makes the smallest radius of a kerb circle smaller by half the difference, at most 0.1 m for published cars and
 * lorries (COMPUTED).
 */
export function liveVehicle(vehicle: Feature): LiveVehicle | { readonly missing: readonly Missing[] } {
  const number = (property: string): LiveNumber | null => {
    const quantity = propertyOf(vehicle, property);
    return isQuantity(quantity) ? (read) => read(quantity) : null;
  };
  const [wheelbase, front, width] = [number("wheelbase"), number("front_overhang"), number("width")];
  const [rear, length, track] = [number("rear_overhang"), number("length"), number("track")];
  const turns = turningOf(vehicle, number);
  const tail: LiveNumber | null =
    rear ?? (length && wheelbase && front ? (read) => length(read) - wheelbase(read) - front(read) : null);
  if (!wheelbase || !front || !width || !tail || !turns) {
    const lacking = [
      [wheelbase, "wheelbase", "distance from front axle to rear axle"],
      [front, "front_overhang", "length from the front axle to the front end"],
      [width, "width", "width of the body"],
      [rear ?? length, "length", "whole length"],
      [turns, "turning_circle", "turning circle, with what it was measured between,"],
    ] as const;
    return {
      missing: lacking.flatMap(([given, property, words]) => (given ? [] : [lack(vehicle, property, words)])),
    };
  }
  return (read) => {
    const body: VehicleBody = {
      wheelbase: wheelbase(read),
      frontOverhang: front(read),
      rearOverhang: tail(read),
      bodyWidth: width(read),
      widthOverTyres: (track ?? width)(read),
    };
    const rearAxleRadius = turns(read, body);
    return rearAxleRadius === null ? null : { ...body, rearAxleRadius };
  };
}

/**
 * Mean angles of the front wheels at full lock outside which a turning figure is more likely a radius taken for a
 * diameter, or the other way round, rad. Road vehicles lie between about 20 and 45 degrees (PRACTICE; published design
 * vehicles 20.3 to 36 degrees, MEMORY and COMPUTED); a figure taken double brings a car from 34 to 15.
 */
const usualLock = { least: (17 * Math.PI) / 180, most: (60 * Math.PI) / 180 };

/** Whether a vehicle would turn its wheels so little or so far that its turning figure looks halved or doubled. */
export function looksSlipped(vehicle: Vehicle): boolean {
  const lock = Math.atan2(vehicle.wheelbase, vehicle.rearAxleRadius);
  return lock < usualLock.least || lock > usualLock.most;
}

function lack(feature: Feature, property: string, words: string): Missing {
  return { feature, property, asks: `the ${words} of ${featureWords(feature)}`, dimension: "length", why: "missing" };
}

type Turns = (read: Read, body: VehicleBody) => number | null;

/** What a circle was measured between, and what its radius is the radius of. */
const betweenWords: Readonly<Record<string, TurningRadius["of"]>> = {
  kerbs: "outer front tyre",
  walls: "outer front corner",
};
const radiusWords: Readonly<Record<string, TurningRadius["of"]>> = {
  "front axle centre": "front axle centre",
  "outer front tyre": "outer front tyre",
  "outer front corner": "outer front corner",
  "inner rear body": "inner rear side",
};

/** The smallest radius of the rear axle from whichever figure of turning the plan gives. */
function turningOf(vehicle: Feature, number: (property: string) => LiveNumber | null): Turns | null {
  const across = number("turning_circle.across");
  const between = betweenWords[wordOf(vehicle, "turning_circle.between")];
  if (across && between) return (read, body) => rearAxleRadiusFrom({ of: between, radius: across(read) / 2 }, body);
  const radius = number("turning_radius.radius");
  const to = wordOf(vehicle, "turning_radius.to");
  if (radius && to === "rear axle centre") return (read) => radius(read);
  const of = radiusWords[to];
  if (radius && of) return (read, body) => rearAxleRadiusFrom({ of, radius: radius(read) }, body);
  const lock = number("full_lock");
  // r = L / tan(lock), with the mean angle of the front wheels (COMPUTED).
  return lock ? (read, body) => body.wheelbase / Math.tan(lock(read)) : null;
}
