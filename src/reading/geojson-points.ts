// Points from GeoJSON (RFC 7946): features of type Point, longitude first, named by their property `name`.

import { deepest, type FileFault, type FilePoint, type FilePoints, gathered } from "./file-points.ts";

type Data = Readonly<Record<string, unknown>>;
const isData = (value: unknown): value is Data => typeof value === "object" && value !== null && !Array.isArray(value);

/** Reads the points of a feature collection; other geometries are passed over. A `crs` of older days is refused. */
export function geojsonPoints(file: string, text: string): FilePoints {
  const fault = (code: FileFault["code"], got: string): FilePoints => {
    const hint = "export it again as GeoJSON in longitude and latitude (WGS 84)";
    return gathered(file, [], [{ code, line: 1, expected: "a GeoJSON feature collection", got, hint }]);
  };
  if (depthOf(text) > deepest) return fault("nested-too-deep", "brackets too deep");
  const data = parsed(text);
  if (data === null) return fault("wrong-type", "text that is no JSON");
  if (!isData(data) || data["type"] !== "FeatureCollection" || !Array.isArray(data["features"]))
    return fault("wrong-type", "other JSON");
  if (data["crs"] !== undefined) return fault("wrong-type", "a crs, which RFC 7946 has done away with");
  const points = (data["features"] as readonly unknown[]).flatMap((feature) => pointOf(feature) ?? []);
  return gathered(file, points, []);
}

function pointOf(feature: unknown): FilePoint | null {
  if (!isData(feature) || !isData(feature["geometry"]) || feature["geometry"]["type"] !== "Point") return null;
  const { coordinates } = feature["geometry"];
  const [longitude, latitude] = Array.isArray(coordinates) ? (coordinates as readonly unknown[]) : [];
  const properties = isData(feature["properties"]) ? feature["properties"] : {};
  const name = properties["name"] ?? feature["id"];
  const degrees = (value: unknown) => (typeof value === "number" ? value : Number.NaN);
  return {
    name: typeof name === "string" ? name.trim() : "",
    line: 1,
    at: [degrees(longitude), degrees(latitude)],
    on: "earth",
    level: null,
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch {
    return null;
  }
}

/** Deepest nesting of brackets outside of texts. */
function depthOf(text: string): number {
  let [depth, most] = [0, 0];
  for (const [token] of text.matchAll(/"(?:[^"\\]|\\.)*"|[[\]{}]/g)) {
    if (token === "[" || token === "{") depth += 1;
    else if (token === "]" || token === "}") depth -= 1;
    most = Math.max(most, depth);
  }
  return most;
}
