// GeoJSON against RFC 7946 and against the length of a degree on the WGS 84 ellipsoid.

import { describe, expect, it } from "vitest";
import type { Picture } from "../../src/model/picture.ts";
import type { Point } from "../../src/model/reading.ts";
import { geoJson, type EarthTie } from "../../src/report/geojson.ts";
import { inventedPicture } from "./invented-picture.ts";
import { inventedReport, quietReport } from "./invented-report.ts";

interface Feature {
  readonly type: string;
  readonly geometry: { readonly type: string; readonly coordinates: unknown };
  readonly properties: Readonly<Record<string, unknown>>;
}
const tie: EarthTie = { at: [0, 0], latitude: 45, longitude: 7, trueNorth: 0, plusMinus: 5 };
const read = (text: string) => JSON.parse(text) as { readonly type: string; readonly features: readonly Feature[] };
const at = (...points: readonly Point[]): Picture => ({
  title: "t",
  stage: "now",
  marks: points.map((point, index) => ({
    kind: "peg",
    name: `P${index}`,
    label: "",
    form: "point" as const,
    points: [point],
    existing: true,
  })),
  trueNorth: 0,
});
const places = (picture: Picture, where: EarthTie) =>
  read(geoJson(picture, quietReport, where)).features.map(
    ({ geometry }) => geometry.coordinates as readonly [number, number],
  );

describe("the GeoJSON", () => {
  // Metres in a degree at 45 degrees, WGS 84: 111131.777 north, 78846.835 east (COMPUTED from pi/180 M and pi/180 N cos);
  // the seventh decimal of a degree is 11 mm, so the tolerance is half of it.
  it("puts metres where the ellipsoid has them, longitude first", () => {
    const [north, east] = places(at([0, 100], [100, 0]), tie);
    expect(north?.[1]).toBeCloseTo(45 + 100 / 111_131.777, 6.9);
    expect(north?.[0]).toBe(7);
    expect(east?.[0]).toBeCloseTo(7 + 100 / 78_846.835, 6.9);
  });

  it("turns by the angle to true north and measures from the tied point", () => {
    const turned = { ...tie, at: [50, 20] as const, trueNorth: Math.PI / 2 };
    const [here, eastOnPlan] = places(at([50, 20], [150, 20]), turned);
    expect(here).toEqual([7, 45]);
    expect(eastOnPlan?.[1]).toBeCloseTo(45 + 100 / 111_131.777, 6.9);
  });

  // RFC 7946, 3.1.6: rings are closed, outer rings run counterclockwise, holes clockwise.
  it("closes rings and turns them the right way", () => {
    const yard = read(geoJson(inventedPicture, quietReport, tie)).features.find(
      ({ properties }) => properties["name"] === "yard",
    );
    const rings = yard?.geometry.coordinates as readonly (readonly (readonly [number, number])[])[];
    const area = (ring: readonly (readonly [number, number])[]) =>
      ring.reduce((sum, [x, y], index) => {
        const [nextX, nextY] = ring[index + 1] ?? [x, y];
        return sum + (x - 7) * (nextY - 45) - (nextX - 7) * (y - 45);
      }, 0);
    expect(rings).toHaveLength(2);
    for (const ring of rings) expect(ring[0]).toEqual(ring.at(-1));
    expect(area(rings[0] ?? [])).toBeGreaterThan(0);
    expect(area(rings[1] ?? [])).toBeLessThan(0);
  });

  it("holds no metres among its coordinates, and says how well the place is known", () => {
    const { type, features } = read(geoJson(inventedPicture, inventedReport, tie));
    expect(type).toBe("FeatureCollection");
    const numbers = (value: unknown): readonly number[] =>
      Array.isArray(value) ? value.flatMap(numbers) : [Number(value)];
    for (const { geometry, properties } of features) {
      for (const number of numbers(geometry.coordinates))
        expect(Math.min(Math.abs(number - 7), Math.abs(number - 45))).toBeLessThan(0.01);
      expect(properties["position_uncertainty_m"]).toBe(5);
    }
    expect(features.some(({ properties }) => properties["number"] === 1)).toBe(true);
  });

  it("leaves out what has no place", () => {
    expect(places(at([Number.NaN, 0], [Infinity, 1], [1e9, 0]), tie)).toEqual([]);
  });
});
