// The plan and its findings as GeoJSON (RFC 7946): only where the plan is tied to the earth, never metres as coordinates.

import { fromPlane, type Geographic } from "../geometry/tangent-plane.ts";
import type { Report } from "../model/finding.ts";
import type { Picture, PictureMark } from "../model/picture.ts";
import type { Point, Witness } from "../model/reading.ts";
import { clean } from "./clean.ts";
import { numbered } from "./grouping.ts";
import { jsonText } from "./json.ts";
import { drawable, plausible } from "./svg-paper.ts";

/** Where the plan lies on the earth (WGS 84). */
export interface EarthTie {
  /** The point of the plan whose place is known, plane metres. */
  readonly at: Point;
  readonly latitude: number;
  readonly longitude: number;
  /** Angle from the plan's north to true north, radians clockwise. */
  readonly trueNorth: number;
  /** How well the place is known, metres, 19 times in 20; null where nobody says. */
  readonly plusMinus: number | null;
}

type Position = readonly [longitude: number, latitude: number];
type Geometry =
  | { readonly type: "Point"; readonly coordinates: Position }
  | { readonly type: "LineString"; readonly coordinates: readonly Position[] }
  | { readonly type: "Polygon"; readonly coordinates: readonly (readonly Position[])[] };

/** Decimals of a degree: the seventh is about a centimetre. */
const decimals = 1e7;

/**
 * A feature collection of the things drawn at one stage and the findings that can be shown. Longitude before latitude,
 * outer rings against the clock, holes with it (RFC 7946, 3.1.6). A round thing is its centre with a radius in metres.
 */
export function geoJson(picture: Picture, report: Report, tie: EarthTie): string {
  const place = placer(tie);
  const marks = picture.marks.flatMap((mark) => featureOf(mark, place, markProperties(mark, tie)));
  const findings = numbered(report).flatMap(({ number, finding }) =>
    finding.witness.flatMap((witness) =>
      featureOf(witness, place, {
        number,
        verdict: finding.verdict,
        stakes: finding.stakes,
        sentence: clean(finding.sentence),
        shows: witness.part,
        ...radiusOf(witness),
        position_uncertainty_m: tie.plusMinus,
      }),
    ),
  );
  return jsonText({ type: "FeatureCollection", features: [...marks, ...findings] });
}

/** From plane metres to longitude and latitude. */
function placer({ at, latitude, longitude, trueNorth }: EarthTie): (point: Point) => Position {
  const origin: Geographic = { latitude, longitude, height: 0 };
  const [cos, sin] = [Math.cos(trueNorth), Math.sin(trueNorth)];
  return ([x, y]) => {
    const [dx, dy] = [x - at[0], y - at[1]];
    const there = fromPlane(origin, [dx * cos - dy * sin, dx * sin + dy * cos]);
    return [Math.round(there.longitude * decimals) / decimals, Math.round(there.latitude * decimals) / decimals];
  };
}

function markProperties(mark: PictureMark, tie: EarthTie) {
  return {
    kind: mark.kind,
    name: clean(mark.name),
    existing: mark.existing,
    ...radiusOf(mark),
    ...(plausible(mark.width) > 0 ? { width_m: mark.width } : {}),
    position_uncertainty_m: tie.plusMinus,
  };
}

function radiusOf({ form, radius }: Pick<Witness, "form" | "radius">) {
  return form === "circle" && plausible(radius) > 0 ? { radius_m: radius } : {};
}

interface Drawn {
  readonly form: PictureMark["form"];
  readonly points: readonly Point[];
  readonly holes?: readonly (readonly Point[])[];
}

function featureOf(drawn: Drawn, place: (point: Point) => Position, properties: object) {
  if (!drawable(drawn)) return [];
  return geometriesOf(drawn, place).map((geometry) => ({ type: "Feature", geometry, properties }));
}

function geometriesOf({ form, points, holes }: Drawn, place: (point: Point) => Position): readonly Geometry[] {
  if (form === "line" && points.length >= 2) return [{ type: "LineString", coordinates: points.map(place) }];
  if (form === "outline" && points.length >= 3) {
    const rings = [
      ring(points, "against the clock"),
      ...(holes ?? []).filter((hole) => hole.length >= 3).map((hole) => ring(hole, "with the clock")),
    ];
    return [{ type: "Polygon", coordinates: rings.map((one) => one.map(place)) }];
  }
  return points.map((point) => ({ type: "Point", coordinates: place(point) }));
}

/** A closed ring that runs the way asked for. */
function ring(points: readonly Point[], way: "against the clock" | "with the clock"): readonly Point[] {
  const twice = points.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length] ?? [x, y];
    return sum + x * nextY - nextX * y;
  }, 0);
  const right = way === "against the clock" ? twice >= 0 : twice <= 0;
  const open = right ? points : points.toReversed();
  return [...open, ...open.slice(0, 1)];
}
