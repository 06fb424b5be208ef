// The sheet of a vehicle with its trailer: round a circle, through a bend, in at a gate, all without reversing.

import type { Table } from "../model/card.ts";
import type { Sheet, SheetEntry } from "../model/sheet.ts";
import {
  trainBend,
  type TrainBend,
  trainGateRows,
  type TrainGateRow,
  trainRing,
  type TrainRing,
} from "../motion/room-train.ts";
import type { Towing } from "../motion/room-train.ts";
import { mindWords, type RoomFoot } from "./room.ts";
import { metres } from "./room-words.ts";
import type { RoomTrailer } from "./room-trailer.ts";
import type { RoomVehicle } from "./room-vehicle.ts";
import { setbacks, type RoomWishes, taken } from "./room-work.ts";

/** What is told of a train. */
export interface TrainTold {
  readonly vehicle: RoomVehicle;
  readonly trailer: RoomTrailer;
  readonly towing: Towing;
  readonly clearance: number;
  /** Largest angle between the two that was allowed, rad. */
  readonly mostAngle: number;
  readonly ring: TrainRing;
  readonly bends: readonly TrainBend[];
  /** For a gate: the lane's width and the openings. */
  readonly gate: { readonly width: number; readonly rows: readonly TrainGateRow[] } | null;
  /** The ground that was wished for, where it is not one of these. */
  readonly instead: string | null;
}

const degrees = 180 / Math.PI;
/** Bends that are told, degrees. */
const toldBends = [45, 90, 180] as const;

const searched: Readonly<Record<string, string>> = {
  rectangle: "a rectangle",
  tee: "a T",
  wye: "a Y",
  road: "a turn in the road",
};

/** Works out what is told of a train. */
export function tellTrain(
  vehicle: RoomVehicle,
  trailer: RoomTrailer,
  { wishes, defaults }: { readonly wishes: RoomWishes; readonly defaults: Table | undefined },
): TrainTold {
  // A body broader than its trailer's or narrower: the broader of the two decides what is usual.
  const broader = { ...vehicle.vehicle, bodyWidth: Math.max(vehicle.vehicle.bodyWidth, trailer.trailer.bodyWidth) };
  const clearance = wishes.clear ?? taken(defaults, broader, "clear");
  const usual = [...(defaults?.rows.values() ?? [])].flatMap((row) => row["hitch_angle"]?.value ?? [])[0];
  const mostAngle = trailer.angleGiven ? trailer.trailer.greatestAngle : (usual ?? trailer.trailer.greatestAngle);
  const towing = { vehicle: vehicle.vehicle, trailer: trailer.trailer };
  const lane = { width: wishes.lane ?? taken(defaults, broader, "track"), clearance };
  const backs = [...new Set([...setbacks, ...(wishes.setback === null ? [] : [wishes.setback])])].sort((a, b) => a - b);
  return {
    vehicle,
    trailer,
    towing,
    clearance,
    mostAngle,
    ring: trainRing(towing, mostAngle),
    bends: toldBends.map((angle) => trainBend(towing, angle / degrees, mostAngle)),
    gate:
      wishes.form === "gate"
        ? { width: lane.width, rows: trainGateRows(towing, lane, { setbacks: backs, mostAngle }) }
        : null,
    instead: searched[wishes.form] ?? null,
  };
}

const entry = (words: string): SheetEntry => ({ words, notes: [] });
const turned = (angle: number) => `${(angle * degrees).toFixed(0)} degrees`;

function ringEntries({ ring, clearance }: TrainTold): readonly SheetEntry[] {
  const [outer, inner] = [ring.outer + clearance, Math.max(0, ring.inner - clearance)];
  const island =
    inner > 0
      ? `round the same peg an island of at most ${metres(2 * inner)} across may stay; the ring between is ${metres(outer - inner)} wide.`
      : "there is room for no island.";
  const lock = ring.fullLock
    ? "The driver can hold full lock all the way round."
    : `Not at full lock: there the trailer would fold too far. The middle of the rear axle keeps ${metres(ring.rearAxleRadius)} from the peg.`;
  return [
    entry(`From one peg swing ${metres(outer)}: the outer edge, ${metres(2 * outer)} across; ${island}`),
    entry(`${lock} Going round and round the two stand at ${turned(ring.hitchAngle)} to each other.`),
    entry(
      "This is the ring itself. Where the way in meets it, give the corner the inside edge of the right-angled bend below.",
    ),
  ];
}

function bendEntries({ bends, clearance, towing }: TrainTold): readonly SheetEntry[] {
  const straight = Math.max(towing.vehicle.bodyWidth, towing.trailer.bodyWidth) + 2 * clearance;
  return [
    entry(`Straight on it wants ${metres(straight)}.`),
    ...bends.map(({ angle, outer, inner, fullLock }) => {
      const wide = outer - inner + 2 * clearance;
      const lock = fullLock ? "" : ", driven wider than full lock so that it does not fold";
      return entry(
        `Through ${turned(angle)}: outside edge ${metres(outer + clearance)}, inside edge ${metres(Math.max(0, inner - clearance))} from the middle of the bend, ${metres(wide)} wide; ${metres(wide - straight)} more than straight on${lock}.`,
      );
    }),
  ];
}

function gateEntries({ gate }: TrainTold): readonly SheetEntry[] {
  return (gate?.rows ?? []).map(({ setback, fromMiddle }) =>
    entry(
      fromMiddle === null
        ? `${metres(setback)} back: the lane is too narrow to turn in from its middle.`
        : `${metres(setback)} back: opens ${metres(fromMiddle)}.`,
    ),
  );
}

/** The sheet of one train. */
export function trainSheet(told: TrainTold, file: string, foot: RoomFoot): Sheet {
  const { vehicle, trailer, clearance, mostAngle, gate, instead } = told;
  const angle = trailer.angleGiven
    ? `They may come to ${turned(mostAngle)}, as the plan says.`
    : `At which angle something touches nobody has said: ${turned(mostAngle)} is taken (common practice). Fold it by hand in a field and measure.`;
  return {
    title: `${vehicle.name} with ${trailer.name}: room without reversing`,
    what: `${gate ? `gate off a lane ${metres(gate.width)} wide, from its middle; and ` : ""}loop and bends, forwards only; ${metres(clearance)} clear of every edge`,
    file,
    parts: [
      ...(instead === null
        ? []
        : [
            {
              heading: "ASKED",
              entries: [
                entry(
                  `Backing with a trailer on ${instead} is not looked for here: every size would take many seconds. Draw the ground in a plan, with the manoeuvre and \`with_trailer\`, and check looks for that one way; or take the loop, which needs no reversing.`,
                ),
              ],
            },
          ]),
      ...(gate
        ? [{ heading: "CLEAR OPENING between the posts, by how far the gate stands back", entries: gateEntries(told) }]
        : []),
      { heading: "ROUND AND ROUND", entries: ringEntries(told) },
      { heading: "THROUGH A BEND, in and out straight", entries: bendEntries(told) },
    ],
    foot: [
      `How sure: worked out by formula at walking pace, without slip, the two in line before they turn. Its margin is the ${metres(clearance)} and nothing else. ${angle}`,
      `The vehicle: ${vehicle.words}. The trailer: ${trailer.words}. ${vehicle.rests.join(" ")} Measure your own: what is measured stands before any library.`,
      ...mindWords(foot, "trailer"),
    ],
    table: { columns: trainColumns, rows: rowsOf(told) },
  };
}

const trainColumns = ["vehicle", "what", "clearance_m", "outer_radius_m", "inner_radius_m", "width_m"] as const;

function rowsOf({ vehicle, clearance, ring, bends, gate }: TrainTold): Sheet["table"]["rows"] {
  const figure = (value: number) => Number(value.toFixed(3));
  const row = (what: string, outer: number, inner: number) => {
    const [out, within] = [outer + clearance, Math.max(0, inner - clearance)];
    return [vehicle.name, what, clearance, figure(out), figure(within), figure(out - within)];
  };
  return [
    row("ring", ring.outer, ring.inner),
    ...bends.map(({ angle, outer, inner }) => row(`bend ${turned(angle)}`, outer, inner)),
    ...(gate?.rows ?? []).map(({ setback, fromMiddle }) => [
      vehicle.name,
      `gate ${setback} m back`,
      clearance,
      "",
      "",
      fromMiddle === null ? "" : figure(fromMiddle),
    ]),
  ];
}
