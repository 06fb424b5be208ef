// From what somebody wishes to know to answers: what is taken where nothing is said, one answer per vehicle, one ground
// for all of them, and a gate off a lane.

import type { Table } from "../model/card.ts";
import {
  type RoomAnswer,
  type RoomAsked,
  type RoomOtherwise,
  type RoomTried,
  clearanceOn,
  roomFor,
} from "../motion/room-answer.ts";
import { type CurvePoint, curveLengths, depthCurve, longestUseful, smallestArea } from "../motion/room-curve.ts";
import { type GatePlaced, type GateRow, gateRows, placedGate, straightFrom } from "../motion/room-gate.ts";
import type { RectangleEntry, RoomLayout, Turner } from "../motion/room-layout.ts";
import type { TurnerMirrors } from "../motion/room-mirrors.ts";
import type { Vehicle } from "../motion/vehicle.ts";
import type { RoomVehicle } from "./room-vehicle.ts";

/** What is wished; what is null is taken from the table or looked for. Metres. */
export interface RoomWishes {
  readonly form: "rectangle" | "tee" | "wye" | "circle" | "road" | "gate";
  readonly entry: RectangleEntry;
  /** Which edges stand as high as the mirrors hang: none, those of the ground itself, or the track's too. */
  readonly walls: "none" | "ground" | "all";
  readonly track: number | null;
  readonly splay: number;
  readonly clear: number | null;
  readonly moves: number;
  readonly long: number | null;
  readonly deep: number | null;
  /** Width of the lane that a gate opens off, and how far back it stands. */
  readonly lane: number | null;
  readonly setback: number | null;
}

/** One vehicle with its answer: room on the ground, how much clearance a given ground has, or a gate. */
export type RoomTold = { readonly vehicle: RoomVehicle; readonly asked: RoomAsked } & (
  | { readonly is: "room"; readonly answer: RoomAnswer }
  | { readonly is: "tried"; readonly tried: RoomTried }
);
export interface GateTold {
  readonly vehicle: RoomVehicle;
  readonly lane: { readonly width: number; readonly clearance: number };
  readonly rows: readonly GateRow[];
  readonly straightFrom: number;
  /** The gate that is drawn. */
  readonly placed: GatePlaced | null;
}

/** How much more clearance, and how much wider a mouth, is told beside an answer, m. */
export const toldMore = { clearance: 0.3, track: 0.5 } as const;
/** Metres back from the lane's edge for which a gate is told. */
export const setbacks = [0, 1, 2, 3, 4, 5, 6, 8, 10, 12] as const;

/** The one that is drawn where none is asked for. */
const drawnSetback = 5;

/** Whether a wish is about one ground of which both sides are given. */
const isTried = ({ form, long, deep }: RoomWishes) =>
  (form === "rectangle" || form === "tee") && long !== null && deep !== null;

/** Answers for every vehicle. The track is as wide as the one of them wants that wants most, for there is one track. */
export function tellRoom(
  vehicles: readonly RoomVehicle[],
  wishes: RoomWishes,
  defaults: Table | undefined,
): readonly RoomTold[] {
  const track = wishes.track ?? Math.max(0, ...vehicles.map(({ vehicle }) => taken(defaults, vehicle, "track")));
  return vehicles.map((vehicle): RoomTold => {
    const clearance = wishes.clear ?? taken(defaults, vehicle.vehicle, "clear");
    const changes = wishes.form === "circle" ? 0 : Math.max(0, wishes.moves - 1);
    const bare: Turner = { vehicle: vehicle.vehicle, clearance, changes };
    const turner = wishes.walls === "none" ? bare : { ...bare, mirrors: mirrorsOf(vehicle, defaults, wishes.walls) };
    const layout = layoutOf(wishes, track);
    const asked: RoomAsked = { turner, layout, long: wishes.long, deep: depthOf(wishes, track) };
    if (isTried(wishes))
      return {
        is: "tried",
        vehicle,
        asked,
        tried: clearanceOn({ ...asked, long: wishes.long ?? 0, deep: wishes.deep ?? 0 }),
      };
    return { is: "room", vehicle, asked, answer: roomFor(asked, otherwise(vehicle, asked, defaults)) };
  });
}

/** The bar of a T is as deep as the track is wide, where neither its depth nor its length is given. */
export function depthOf({ form, long, deep }: RoomWishes, track: number): number | null {
  return form === "tee" && long === null ? (deep ?? track) : deep;
}

export function layoutOf({ form, entry, splay }: RoomWishes, track: number): RoomLayout {
  if (form === "tee") return { form: "rectangle", entry: "middle", track, splay };
  if (form === "wye" || form === "circle") return { form, track, splay };
  return form === "road" ? { form } : { form: "rectangle", entry, track, splay };
}

/** The value of the last row of the table whose width the body reaches; 0 where there is none. */
export function taken(defaults: Table | undefined, vehicle: Vehicle, column: "clear" | "track"): number {
  const rows = [...(defaults?.rows.values() ?? [])].filter((row) => row["from_width"] && row[column]);
  const reached = rows.filter((row) => (row["from_width"]?.value ?? Infinity) <= vehicle.bodyWidth);
  return reached.at(-1)?.[column]?.value ?? 0;
}

/** Mirrors as the plan has them, else as far out as is usual. */
export function mirrorsOf(
  { vehicle, overMirrors }: RoomVehicle,
  defaults: Table | undefined,
  edges: TurnerMirrors["edges"],
): TurnerMirrors {
  const row = [...(defaults?.rows.values() ?? [])].find((one) => one["mirror_out"]);
  const width = overMirrors ?? vehicle.bodyWidth + 2 * (row?.["mirror_out"]?.value ?? 0);
  return { width, behindFrontAxle: row?.["mirror_back"]?.value ?? 0, edges };
}

/** What somebody might do otherwise: another shunt, more clearance, a wider mouth, walls or none, the largest of such vehicles. */
function otherwise(
  vehicle: RoomVehicle,
  { turner, layout }: RoomAsked,
  defaults: Table | undefined,
): readonly RoomOtherwise[] {
  const { largest } = vehicle;
  const { mirrors, ...bare } = turner;
  const edges = mirrors
    ? { key: "low edges", turner: bare, layout }
    : { key: "walls", turner: { ...turner, mirrors: mirrorsOf(vehicle, defaults, "all") }, layout };
  const wider =
    layout.form === "road"
      ? []
      : [{ key: "wider", turner, layout: { ...layout, track: layout.track + toldMore.track } }];
  return [
    ...(layout.form === "circle" ? [] : [{ key: "shunt", turner: { ...turner, changes: turner.changes + 2 }, layout }]),
    { key: "clearance", turner: { ...turner, clearance: turner.clearance + toldMore.clearance }, layout },
    ...wider,
    edges,
    ...(largest === null ? [] : [{ key: "largest", turner: { ...turner, vehicle: largest }, layout }]),
  ];
}

/** One rectangle for several vehicles, m: at each length the depth that the neediest of them wants. */
export interface RoomTogether {
  readonly long: number;
  readonly deep: number;
  /** The vehicle that decides the depth. */
  readonly decides: string;
}

/** The smallest rectangle by area that takes all of them; null for other wishes, or where one of them finds none. */
export function tellTogether(told: readonly RoomTold[]): RoomTogether | null {
  const asked = told.flatMap((one) => (one.is === "room" && one.asked.layout.form === "rectangle" ? [one] : []));
  if (asked.length < 2 || asked.length < told.length) return null;
  const neediest = asked.reduce((most, one) =>
    longestUseful(one.asked.turner) > longestUseful(most.asked.turner) ? one : most,
  );
  const given = neediest.asked.long;
  if (neediest.asked.deep !== null) return null;
  const lengths = given === null ? curveLengths(neediest.asked.turner) : [given];
  const curves = asked.map(({ asked: { layout, turner } }) => depthCurve(layout, turner, lengths));
  const joint = lengths.map((long, i): CurvePoint => {
    const found = curves.map((curve) => curve[i]?.found ?? null);
    const worst = found.reduce((most, one) => (most && one && one.size <= most.size ? most : one));
    return { long, found: found.includes(null) ? null : worst };
  });
  const best = smallestArea(joint);
  if (!best?.found) return null;
  const decides = asked[curves.findIndex((curve) => curve.some(({ found }) => found === best.found))];
  return { long: best.long, deep: best.found.size, decides: decides?.vehicle.name ?? "" };
}

/** A gate off a lane for every vehicle. */
export function tellGate(
  vehicles: readonly RoomVehicle[],
  wishes: RoomWishes,
  defaults: Table | undefined,
): readonly GateTold[] {
  return vehicles.map((vehicle) => {
    const width = wishes.lane ?? taken(defaults, vehicle.vehicle, "track");
    const lane = { width, clearance: wishes.clear ?? taken(defaults, vehicle.vehicle, "clear") };
    const told = wishes.setback === null ? setbacks : [...new Set([...setbacks, wishes.setback])].sort((a, b) => a - b);
    return {
      vehicle,
      lane,
      placed: placedGate(vehicle.vehicle, lane, wishes.setback ?? drawnSetback),
      rows: gateRows(vehicle.vehicle, lane, told),
      straightFrom: straightFrom(vehicle.vehicle, lane),
    };
  });
}
