// The pages of `room` as JSON: the form other programs rely on (`schemas/room.schema.json`). Fixed order of keys, same bytes.

import type { Point } from "../model/reading.ts";
import type { RoomAnswer, RoomAsked, RoomFound, RoomTried } from "../motion/room-answer.ts";
import type { GateRow } from "../motion/room-gate.ts";
import { jsonText, rounded } from "./json.ts";
import type { TrainBend, TrainGateRow } from "../motion/room-train.ts";
import type { TrainDrawn } from "./room-train-drawing.ts";
import type { RoomDrawn } from "./room-drawing.ts";

/** What is written of a vehicle with its trailer. */
interface TrainWritten extends TrainDrawn {
  readonly bends?: readonly TrainBend[];
  readonly gate?: { readonly rows: readonly TrainGateRow[] } | null;
}

/** What is written of one page. */
export interface RoomWritten extends RoomDrawn {
  readonly train: TrainWritten | null;
  readonly answer: RoomAnswer | null;
  readonly tried: RoomTried | null;
  readonly gate: readonly GateRow[] | null;
}

/** Pages as JSON text. Metres and radians, rounded to a millionth. */
export function roomJson(pages: readonly RoomWritten[]): string {
  return jsonText({ sightrail_room: 1, pages: pages.map(pageObject) });
}

function pageObject(page: RoomWritten) {
  const { name, vehicle, sheet, asked, found, answer, tried, gate } = page;
  return {
    vehicle: name,
    lengths: vehicle && {
      wheelbase: rounded(vehicle.wheelbase),
      front_overhang: rounded(vehicle.frontOverhang),
      rear_overhang: rounded(vehicle.rearOverhang),
      width: rounded(vehicle.bodyWidth),
      over_tyres: rounded(vehicle.widthOverTyres),
      rear_axle_radius: rounded(vehicle.rearAxleRadius),
    },
    asked: asked && askedObject(asked),
    found: found && foundObject(found),
    largest_clearance: tried && {
      clearance: tried.clearance === null ? null : rounded(tried.clearance),
      no_more_than: rounded(tried.noMoreThan),
    },
    curve: (answer?.curve ?? []).map(({ long, found: at }) => ({
      length: rounded(long),
      depth: at && rounded(at.size),
    })),
    changes: (answer?.changes ?? []).map(({ key, size }) => ({
      change: key,
      size: size === null ? null : rounded(size),
    })),
    gate: gate && gate.map(gateObject),
    with_trailer: page.train && trainObject(page.train),
    title: sheet.title,
    what: sheet.what,
    parts: sheet.parts.map(({ heading, entries }) => ({ heading, entries: entries.map(({ words }) => words) })),
    foot: sheet.foot,
  };
}

function askedObject({ layout, turner, long, deep }: RoomAsked) {
  return {
    form: layout.form,
    entry: layout.form === "rectangle" ? layout.entry : null,
    track: layout.form === "road" ? null : rounded(layout.track),
    splay: layout.form === "road" ? null : rounded(layout.splay),
    clearance: rounded(turner.clearance),
    moves: turner.changes + 1,
    over_mirrors: turner.mirrors ? rounded(turner.mirrors.width) : null,
    walls: turner.mirrors?.edges ?? "none",
    length: long === null ? null : rounded(long),
    depth: deep === null ? null : rounded(deep),
  };
}

function foundObject(found: RoomFound) {
  const start = found.swept.stops[0]?.pose;
  return {
    length: rounded(found.size.long),
    depth: rounded(found.size.deep),
    solved: found.solved === "long" ? "length" : "depth",
    none_below: found.noneBelow === null ? null : rounded(found.noneBelow),
    island: found.island === null ? null : rounded(found.island),
    moves: found.moves.map(({ gear, length }) => ({ gear, length: rounded(length) })),
    tightest: { clearance: rounded(found.tightest.clearance), at: pointObject(found.tightest.at) },
    ground: found.ground.map(pointObject),
    pegs: found.pegs.map(pointObject),
    start: start ? [rounded(start.x), rounded(start.y), rounded(start.heading)] : [],
    path: found.path.map(({ curvature, length }) => ({ curvature, length })),
  };
}

function gateObject({ setback, fromMiddle, fromFarSide }: GateRow) {
  return {
    set_back: rounded(setback),
    from_middle: fromMiddle === null ? null : rounded(fromMiddle),
    from_far_side: fromFarSide === null ? null : rounded(fromFarSide),
  };
}

function trainObject({ ring, clearance, bends = [], gate = null }: TrainWritten) {
  return {
    clearance: rounded(clearance),
    ring: {
      outer: rounded(ring.outer + clearance),
      inner: rounded(Math.max(0, ring.inner - clearance)),
      rear_axle_radius: rounded(ring.rearAxleRadius),
      hitch_angle: rounded(ring.hitchAngle),
      full_lock: ring.fullLock,
    },
    bends: bends.map(({ angle, outer, inner, fullLock }) => ({
      angle: rounded(angle),
      outer: rounded(outer + clearance),
      inner: rounded(Math.max(0, inner - clearance)),
      full_lock: fullLock,
    })),
    gate:
      gate &&
      gate.rows.map(({ setback, fromMiddle }) => ({
        set_back: rounded(setback),
        from_middle: fromMiddle === null ? null : rounded(fromMiddle),
      })),
  };
}

const pointObject = ([x, y]: Point) => [rounded(x), rounded(y)];
