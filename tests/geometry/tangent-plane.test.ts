import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  fromEastNorthUp,
  fromPlane,
  metresPerDegree,
  toEastNorthUp,
  toPlane,
} from "../../src/geometry/tangent-plane.ts";
import { distance } from "../../src/geometry/point.ts";
import { plotPoint, seeded } from "./figures.ts";

describe("tangent plane", () => {
  // READ: PROJ documentation, topocentric conversion (EPSG method 9837): 53 48 33.82 N, 2 07 46.38 E.
  const origin = { latitude: 55, longitude: 5, height: 200 };
  const place = { latitude: 53 + 48 / 60 + 33.82 / 3600, longitude: 2 + 7 / 60 + 46.38 / 3600, height: 73 };

  it("gives the published east, north and up to the millimetre", () => {
    const [east, north, up] = toEastNorthUp(origin, place);
    expect(Math.abs(east - -189_013.869)).toBeLessThan(1e-3);
    expect(Math.abs(north - -128_642.04)).toBeLessThan(1e-3);
    expect(Math.abs(up - -4220.171)).toBeLessThan(1e-3);
  });

  it("finds the published place again", () => {
    const again = fromEastNorthUp(origin, toEastNorthUp(origin, place));
    expect(again.latitude).toBeCloseTo(place.latitude, 10);
    expect(again.longitude).toBeCloseTo(place.longitude, 10);
    expect(again.height).toBeCloseTo(73, 4);
  });

  it("goes there and back over a site to the micrometre, at any latitude", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -80, max: 80 }),
        fc.integer({ min: -179, max: 179 }),
        plotPoint,
        (latitude, longitude, at) => {
          const here = { latitude, longitude, height: 120 };
          const [east, north] = [at[0] * 50, at[1] * 50];
          const back = fromPlane(here, [east, north]);
          expect(back.height).toBeCloseTo(120, 6);
          expect(distance(toPlane(here, back), [east, north])).toBeLessThan(1e-6);
        },
      ),
      seeded,
    );
  });

  it("has 111131.777 and 78846.835 metres per degree at 45 degrees (COMPUTED from the radii of curvature)", () => {
    const { north, east } = metresPerDegree(45);
    expect(Math.abs(north - 111_131.777)).toBeLessThan(1e-3);
    expect(Math.abs(east - 78_846.835)).toBeLessThan(1e-3);
  });

  it("agrees with those radii over a small step", () => {
    const here = { latitude: 45, longitude: 9, height: 0 };
    const step = 1e-5;
    const [, north] = toPlane(here, { ...here, latitude: 45 + step });
    const [east] = toPlane(here, { ...here, longitude: 9 + step });
    expect(north / step).toBeCloseTo(111_131.777, 1);
    expect(east / step).toBeCloseTo(78_846.835, 1);
  });
});
