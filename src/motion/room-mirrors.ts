// Mirrors on a ground for turning: a strip of their own, kept off those edges that stand as high as they hang.

import type { Point } from "../model/reading.ts";
import type { MirrorStrip } from "./envelope.ts";
import type { Ground } from "./ground.ts";
import type { RoomLayout, RoomSize } from "./room-layout.ts";
import type { Vehicle } from "./vehicle.ts";

/** Mirrors of a vehicle, m, and at which edges they count: those of the ground itself, or the track's as well. */
export interface TurnerMirrors {
  /** Over both. */
  readonly width: number;
  /** How far behind the front axle they can stand; ahead of it they are taken to stand as far as the front end. */
  readonly behindFrontAxle: number;
  readonly edges: "ground" | "all";
}

/** A ground with its layout. */
interface Edged {
  readonly layout: RoomLayout;
  readonly size: RoomSize;
  readonly ground: Ground;
}

/** The strip of the mirrors, with the edges that stand as high as they hang. */
export function mirrorStrip(vehicle: Vehicle, mirrors: TurnerMirrors, edged: Edged): MirrorStrip {
  const { width, behindFrontAxle, edges } = mirrors;
  const { layout, ground } = edged;
  const front = vehicle.wheelbase + vehicle.frontOverhang;
  const strip = { width, back: vehicle.wheelbase - behindFrontAxle, front };
  return { ...strip, ground: edges === "all" || layout.form === "road" ? ground : groundEdges(edged) };
}

/** How thick an edge is drawn that is looked at by itself, m (method constant). */
const edgeThickness = 0.1;

/** The edges of the ground itself as thin walls outside it, those of its track left out. */
function groundEdges({ layout, size, ground }: Edged): Ground {
  const [ring = []] = ground.rings;
  const reach = 2 * Math.max(...ring.map(([x, y]) => Math.max(Math.abs(x), Math.abs(y))));
  const box: readonly Point[] = [
    [-reach, -reach],
    [reach, -reach],
    [reach, reach],
    [-reach, reach],
  ];
  const layby = layout.form === "rectangle" && layout.entry === "along";
  const [low, high] = ["splay" in layout ? -layout.splay : 0, layby ? size.long : Infinity];
  const walls = ring.flatMap((from, i) => {
    const to = ring[(i + 1) % ring.length] ?? from;
    // The far side of a track that goes on past a lay-by is the track's, not the ground's.
    if (layby && Math.max(from[0], to[0]) < 0) return [];
    const [a, b] = [within(from, to, { low, high }), within(to, from, { low, high })];
    const outside = Math.max(a[1], b[1]) < low - 1e-9 || Math.min(a[1], b[1]) > high + 1e-9;
    return outside || Math.hypot(b[0] - a[0], b[1] - a[1]) < 1e-6 ? [] : [wallAlong(a, b)];
  });
  return { rings: [box], obstacles: walls };
}

/** A corner, moved along its edge to where that comes between two heights; a whole edge outside them shrinks to nothing. */
function within([x, y]: Point, [u, v]: Point, { low, high }: { readonly low: number; readonly high: number }): Point {
  const wanted = Math.min(high, Math.max(low, y));
  const share = Math.abs(v - y) < 1e-9 ? 0 : Math.min(1, (wanted - y) / (v - y));
  return [x + share * (u - x), y + share * (v - y)];
}

/** A thin wall to the right of the way from one corner to the next, which goes round the ground counter-clockwise. */
function wallAlong(from: Point, to: Point): readonly Point[] {
  const size = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [x, y] = [((to[1] - from[1]) / size) * edgeThickness, (-(to[0] - from[0]) / size) * edgeThickness];
  return [from, [from[0] + x, from[1] + y], [to[0] + x, to[1] + y], to];
}
