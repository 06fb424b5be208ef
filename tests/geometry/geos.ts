// The stored answers of GEOS (see geos-fixture.py), read once.

import { readFileSync } from "node:fs";
import type { Point } from "../../src/geometry/point.ts";

export interface GeosPair {
  readonly sort: string;
  readonly a: readonly Point[];
  readonly b: readonly Point[];
  readonly distance: number;
  readonly intersection: number;
  readonly union: number;
  readonly difference: number;
  readonly line: readonly Point[];
  readonly lineWithin: number;
  readonly lineDistance: number;
  readonly point: Point;
  readonly pointDistance: number;
  readonly centroid: Point;
  readonly hull: number;
  readonly strip: number;
  readonly inset: number;
}
export interface GeosShape {
  readonly name: string;
  readonly outline: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
  readonly valid: boolean;
  readonly says: string;
}

export const geos = JSON.parse(readFileSync(new URL("../tables/geometry.geos.json", import.meta.url), "utf8")) as {
  readonly source: string;
  readonly pairs: readonly GeosPair[];
  readonly shapes: readonly GeosShape[];
};
