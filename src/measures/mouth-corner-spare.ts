// What: by how much is the corner of a track's mouth rounded more than the inner wheels need that turn in off the road?
// Formula: radius of the drawn corner (0 where none is drawn) less that of `mouthCornerRadius`, at the corner that wants more.
// Source: plane geometry of the steady arc (COMPUTED).
// Valid: a track that leaves the road at 30 degrees or more, one arc at full lock from the middle of the road; who swings out, or shunts, needs less.
// Witness: the corners of the mouth.

import { mouthCornerRadius } from "../motion/mouth-corner.ts";
import { cross, minus, plus, times, toTheLeft, unit } from "../geometry/vector.ts";
import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Measure, Point, Scene } from "../model/reading.ts";
import { names } from "../site/drive-ends.ts";
import { centreFigure, liveSpot } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { vehicleOf } from "../site/used-by.ts";
import { liveVehicle } from "../site/vehicle.ts";
import { missing } from "./asked-for.ts";

/** A track whose end lies farther from the road's edge than this does not meet it, m. */
const meets = 1;
/** A track that leaves the road more slantingly than this runs beside it, and is no mouth, rad. */
const mostSlanted = (30 * Math.PI) / 180;
/** Where a track is this near to square both corners want much the same, and nothing is said of which, rad. */
const square = (5 * Math.PI) / 180;

export const mouthCornerSpare: Measure = {
  name: "mouth-corner-spare",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre that comes in off a road", way: "the track, drawn by its middle line" },
  parameters: {},
  phrase: "the corner at the mouth of {way} has {found} more radius than its wheels need",
  below: { phrase: "the corner at the mouth of {way} wants {found} more radius than is drawn" },
  shortName: "radius at the mouth",
  find: ({ manoeuvre, way }, scene) => {
    if (!manoeuvre || way?.shape?.form !== "line" || !way.shape.width) return { is: "does-not-bear" };
    if (!names(manoeuvre, "comes_in_by", "goes_out_by").includes(way.name)) return { is: "does-not-bear" };
    const vehicle = vehicleOf(manoeuvre, scene);
    const mouth = mouthOf(way, scene);
    const live = vehicle && liveVehicle(vehicle);
    // What the vehicle lacks is asked for by the rule of room, once.
    if (!mouth || !live || "missing" in live) return { is: "does-not-bear" };
    const roadWidth = propertyOf(mouth.road, "width");
    if (!isQuantity(roadWidth)) {
      const asks = `the width of ${featureWords(mouth.road)}`;
      return missing({ feature: mouth.road, property: "width", asks, dimension: "length", why: "missing" });
    }
    const [track, drawn] = [way.shape.width, propertyOf(way, "mouth.radius")];
    const value = (read: Read) => {
      const body = live(read);
      if (!body) return Number.NaN;
      // It may come from either side: of the two corners the one that wants more counts.
      const [widths, angle] = [{ road: read(roadWidth), track: read(track) }, mouth.angle(read)];
      const needed = [angle, Math.PI - angle].map((turn) => mouthCornerRadius(body, widths, turn));
      return (isQuantity(drawn) ? read(drawn) : 0) - Math.max(...needed);
    };
    const slanted = Math.abs(mouth.angle(scene.read) - Math.PI / 2) > square;
    const which = slanted ? "at the sharper of its two corners, " : "";
    const corners = (read: Read) => mouth.corners(read, read(track) / 2);
    return {
      is: "found",
      places: [
        {
          key: "mouth",
          value,
          where: `${which}${isQuantity(drawn) ? "as it is drawn, rounded" : slanted ? "drawn with bare corners" : "drawn with square corners"}`,
          witness: (read) =>
            corners(read).map((at) => ({ part: "found", form: "point", points: [at], label: "corner" })),
        },
      ],
    };
  },
};

interface Mouth {
  readonly road: Feature;
  /** Angle between track and road, rad, from 0 to pi. */
  readonly angle: (read: Read) => number;
  readonly corners: (read: Read, half: number) => readonly Point[];
}

/** Where a track meets a road; null where it meets none, or runs beside it. */
function mouthOf(way: Feature, scene: Scene): Mouth | null {
  const line = way.shape?.form === "line" ? way.shape.line.map(liveSpot) : [];
  const ends = [line, line.toReversed()].flatMap(([end, next]) => (end && next ? [[end, next] as const] : []));
  for (const road of scene.standing("roads")) {
    const edge = centreFigure(road);
    if (!edge) continue;
    for (const [end, next] of ends) {
      const point = { chains: [{ points: [end], ends: "open" as const }], solid: false, grow: () => 0 };
      const [near] = nearPlaces(point, edge, meets, scene.read);
      if (!near) continue;
      const angle = (read: Read) =>
        angleBetween(minus(next(read), end(read)), edgeAlong(road, near.ends(read)[1], read));
      const slant = angle(scene.read);
      if (!(slant >= mostSlanted && slant <= Math.PI - mostSlanted)) continue;
      const aside = (read: Read) => toTheLeft(unit(minus(next(read), end(read))) ?? [1, 0]);
      return {
        road,
        angle,
        corners: (read, half) => [half, -half].map((by) => plus(end(read), times(aside(read), by))),
      };
    }
  }
  return null;
}

/** Angle between two ways, rad, from 0 to pi; not a number where one of them has no length. */
function angleBetween(into: Point, along: Point | null): number {
  const [a, b] = [unit(into), along && unit(along)];
  return a && b ? Math.atan2(Math.abs(cross(a, b)), a[0] * b[0] + a[1] * b[1]) : Number.NaN;
}

/** The way along a road's edge at the side that lies nearest to a point. */
function edgeAlong(road: Feature, at: Point, read: Read): Point | null {
  const line = road.shape?.form === "line" ? road.shape.line.map((spot) => liveSpot(spot)(read)) : [];
  let best: { readonly way: Point; readonly off: number } | null = null;
  for (const [i, from] of line.slice(0, -1).entries()) {
    const way = minus(line[i + 1] as Point, from);
    const long = Math.hypot(way[0], way[1]);
    const run = long > 0 ? ((at[0] - from[0]) * way[0] + (at[1] - from[1]) * way[1]) / long : 0;
    const off = Math.hypot(
      at[0] - from[0] - (way[0] / long) * Math.max(0, Math.min(long, run)),
      at[1] - from[1] - (way[1] / long) * Math.max(0, Math.min(long, run)),
    );
    if (long > 0 && (best === null || off < best.off)) best = { way, off };
  }
  return best?.way ?? null;
}
