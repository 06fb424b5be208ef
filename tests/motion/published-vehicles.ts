// Vehicles with published or typical dimensions, in metres, for the checks of this folder.

import { rearAxleRadiusFrom } from "../../src/motion/vehicle.ts";
import type { TurningRadius, Vehicle, VehicleBody } from "../../src/motion/vehicle.ts";

export const foot = 0.3048;

export function drivable(body: VehicleBody, radius: TurningRadius): Vehicle {
  const rearAxleRadius = rearAxleRadiusFrom(radius, body);
  if (rearAxleRadius === null) throw new Error("contradictory test vehicle");
  return { ...body, rearAxleRadius };
}

/** Body from feet: wheelbase, width (tyres as wide as the body), front and rear overhang. */
export function bodyInFeet(wheelbase: number, width: number, front: number, rear: number): VehicleBody {
  return {
    wheelbase: wheelbase * foot,
    frontOverhang: front * foot,
    rearOverhang: rear * foot,
    bodyWidth: width * foot,
    widthOverTyres: width * foot,
  };
}

/** AASHTO Green Book P, SU-30, SU-40, MH: MEMORY (2011/2018 tables); 2004 metric dimensions READ. */
export const aashto = {
  P: drivable(bodyInFeet(11, 7, 3, 5), { of: "front axle centre", radius: 21 * foot }),
  "SU-30": drivable(bodyInFeet(20, 8, 4, 6), { of: "front axle centre", radius: 38 * foot }),
  "SU-40": drivable(bodyInFeet(25, 8, 4, 10.5), { of: "front axle centre", radius: 47.4 * foot }),
  MH: drivable(bodyInFeet(20, 8, 4, 6), { of: "front axle centre", radius: 36 * foot }),
};

/** B85 car of AS/NZS 2890.1:2004 App. B: MEMORY (sums check). */
export const b85: Vehicle = drivable(
  { wheelbase: 2.8, frontOverhang: 0.92, rearOverhang: 1.19, bodyWidth: 1.87, widthOverTyres: 1.77 },
  { of: "outer front tyre", radius: 5.8 },
);

/** Fire pump inferred from Approved Document B circles 16.8 / 19.2 m (READ, local copy); lengths COMPUTED. */
export const firePump: Vehicle = drivable(
  { wheelbase: 3.9, frontOverhang: 1.9, rearOverhang: 2.4, bodyWidth: 2.5, widthOverTyres: 2.3 },
  { of: "outer front tyre", radius: 8.4 },
);

/** Cars and lorries of the turning scenes: P as AASHTO (MEMORY), the others PRACTICE. */
export const sceneVehicles = {
  P: drivable(
    { wheelbase: 3.35, frontOverhang: 0.91, rearOverhang: 1.52, bodyWidth: 2.13, widthOverTyres: 1.83 },
    { of: "outer front tyre", radius: 7.26 },
  ),
  compact: drivable(
    { wheelbase: 2.6, frontOverhang: 0.85, rearOverhang: 0.75, bodyWidth: 1.8, widthOverTyres: 1.74 },
    { of: "outer front tyre", radius: 5.4 },
  ),
  van: drivable(
    { wheelbase: 3.4, frontOverhang: 0.95, rearOverhang: 1.15, bodyWidth: 2.05, widthOverTyres: 1.95 },
    { of: "outer front tyre", radius: 6.2 },
  ),
  tipper: drivable(
    { wheelbase: 3.4, frontOverhang: 1.2, rearOverhang: 1.9, bodyWidth: 2.3, widthOverTyres: 2.2 },
    { of: "outer front tyre", radius: 6.75 },
  ),
};
