// Latitude and longitude (WGS 84) to metres east and north of a chosen place, and back.

import type { Point } from "./point.ts";

/** Degrees, north and east above 0; height above the ellipsoid in metres. */
export interface Geographic {
  readonly latitude: number;
  readonly longitude: number;
  readonly height: number;
}

/** Metres east, north and up. */
export type EastNorthUp = readonly [number, number, number];

// WGS 84: half the long axis in metres, flattening (MEMORY: NGA.STND.0036).
const halfAxis = 6_378_137;
const flattening = 1 / 298.257_223_563;
const eccentricitySquared = flattening * (2 - flattening);
const radians = Math.PI / 180;
// Each round of the way back gains three digits or more near the ground; this many leave only rounding.
const rounds = 8;

/** Radius of curvature across the meridian at a latitude in radians, metres: N = a / sqrt(1 - e^2 sin^2 phi). */
function acrossMeridian(phi: number): number {
  return halfAxis / Math.sqrt(1 - eccentricitySquared * Math.sin(phi) ** 2);
}

/** Earth-centred coordinates: X = (N + h) cos phi cos lambda, ..., Z = ((1 - e^2) N + h) sin phi. */
function earthCentred({ latitude, longitude, height }: Geographic): EastNorthUp {
  const [phi, lambda] = [latitude * radians, longitude * radians];
  const across = acrossMeridian(phi);
  const fromAxis = (across + height) * Math.cos(phi);
  const z = ((1 - eccentricitySquared) * across + height) * Math.sin(phi);
  return [fromAxis * Math.cos(lambda), fromAxis * Math.sin(lambda), z];
}

/**
 * Metres east, north and up of `origin` in the plane that touches the ellipsoid there: geographic to earth-centred,
 * then turned. EPSG method 9837 (READ: PROJ documentation, topocentric conversion). Over a site of 1 km the distances
 * on the plane agree with those on the ellipsoid to 0.01 mm; up falls away by 8 cm at 1 km and is left out of plans.
 */
export function toEastNorthUp(origin: Geographic, place: Geographic): EastNorthUp {
  const [x0, y0, z0] = earthCentred(origin);
  const [x1, y1, z1] = earthCentred(place);
  const [dx, dy, dz] = [x1 - x0, y1 - y0, z1 - z0];
  const [sinPhi, cosPhi] = [Math.sin(origin.latitude * radians), Math.cos(origin.latitude * radians)];
  const [sinLambda, cosLambda] = [Math.sin(origin.longitude * radians), Math.cos(origin.longitude * radians)];
  const outward = dx * cosLambda + dy * sinLambda;
  return [dy * cosLambda - dx * sinLambda, dz * cosPhi - outward * sinPhi, outward * cosPhi + dz * sinPhi];
}

/** As `toEastNorthUp`, east and north only. */
export function toPlane(origin: Geographic, place: Geographic): Point {
  const [east, north] = toEastNorthUp(origin, place);
  return [east, north];
}

/** Latitude, longitude and height of a place given by metres east, north and up of `origin`. */
export function fromEastNorthUp(origin: Geographic, [east, north, up]: EastNorthUp): Geographic {
  const [sinPhi, cosPhi] = [Math.sin(origin.latitude * radians), Math.cos(origin.latitude * radians)];
  const [sinLambda, cosLambda] = [Math.sin(origin.longitude * radians), Math.cos(origin.longitude * radians)];
  const [x0, y0, z0] = earthCentred(origin);
  const outward = up * cosPhi - north * sinPhi;
  const x = x0 + outward * cosLambda - east * sinLambda;
  const y = y0 + outward * sinLambda + east * cosLambda;
  const z = z0 + north * cosPhi + up * sinPhi;
  const fromAxis = Math.hypot(x, y);
  let phi = Math.atan2(z, fromAxis * (1 - eccentricitySquared));
  for (let i = 0; i < rounds; i++) {
    phi = Math.atan2(z + eccentricitySquared * acrossMeridian(phi) * Math.sin(phi), fromAxis);
  }
  const height = fromAxis * Math.cos(phi) + z * Math.sin(phi) - halfAxis ** 2 / acrossMeridian(phi);
  return { latitude: phi / radians, longitude: Math.atan2(y, x) / radians, height };
}

/** The place at the height of `origin` that lies `point` metres east and north of it: `toPlane` turned round. */
export function fromPlane(origin: Geographic, [east, north]: Point): Geographic {
  let up = 0;
  let place = fromEastNorthUp(origin, [east, north, up]);
  for (let i = 0; i < rounds; i++) {
    up -= place.height - origin.height;
    place = fromEastNorthUp(origin, [east, north, up]);
  }
  return place;
}

/**
 * Metres per degree of latitude and of longitude on the ellipsoid at a latitude in degrees:
 * M pi/180 with M = a (1 - e^2) / (1 - e^2 sin^2 phi)^(3/2), and N cos phi pi/180.
 */
export function metresPerDegree(latitude: number): { readonly north: number; readonly east: number } {
  const phi = latitude * radians;
  const across = acrossMeridian(phi);
  const along = (across ** 3 * (1 - eccentricitySquared)) / halfAxis ** 2;
  return { north: along * radians, east: across * Math.cos(phi) * radians };
}
