// The sheet of a vehicle with its trailer: round a circle, through a bend, in at a gate, all without reversing.

import type { Table } from "../model/card.ts";
import type { Sheet, SheetEntry, SheetPart } from "../model/sheet.ts";
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
import { trainGrain } from "../motion/room-train-turn.ts";
import { tellTrainTurn, type TrainTurnTold } from "./room-train-found.ts";
import { layoutWords, metres, moveWords, pegWords, sizeWords, tightWords } from "./room-words.ts";
import type { RoomTrailer } from "./room-trailer.ts";
import type { RoomVehicle } from "./room-vehicle.ts";
import { depthOf, layoutOf, setbacks, type RoomWishes, taken } from "./room-work.ts";

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
  /** A ground to turn round on, where one was wished for. */
  readonly turn: TrainTurnTold | null;
}

const degrees = 180 / Math.PI;
/** Bends that are told, degrees. */
const toldBends = [45, 90, 180] as const;

/** Forms of ground on which a train is turned round by search. */
const searched: ReadonlySet<string> = new Set(["rectangle", "tee", "wye"]);

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
    turn: searched.has(wishes.form) ? turnOf({ vehicle, trailer, clearance, mostAngle }, wishes, defaults) : null,
  };

  function turnOf(
    of: Pick<TrainTold, "vehicle" | "trailer" | "clearance" | "mostAngle">,
    wish: RoomWishes,
    table: Table | undefined,
  ): TrainTurnTold {
    const track = wish.track ?? taken(table, broader, "track");
    const towed = { ...of.trailer.trailer, greatestAngle: of.mostAngle };
    const turner = {
      vehicle: of.vehicle.vehicle,
      clearance: of.clearance,
      changes: Math.max(0, wish.moves - 1),
      trailer: towed,
    };
    return tellTrainTurn(turner, layoutOf(wish, track), { long: wish.long, deep: depthOf(wish, track) });
  }
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

/** What to peg for a turn, and how it is driven; or that no way was found, and what to ask instead. */
function turnParts({ asked, given, found }: TrainTurnTold): readonly SheetPart[] {
  const moves = `${asked.turner.changes + 1} moves`;
  if (!found) {
    const size = given ? "On this ground no way was found" : "No way was found in any size that was tried";
    return [
      {
        heading: "NOTHING FOUND",
        entries: [
          entry(
            `${size} in ${moves} or fewer; that rules nothing out. Ask for a rectangle, a wider track, a splayed mouth or more moves; or take the loop, which needs no reversing.`,
          ),
        ],
      },
    ];
  }
  const [end] = found.swept.stops.slice(-1);
  const { vehicle } = asked.turner;
  const before = end ? -end.pose.y + vehicle.wheelbase + vehicle.frontOverhang : 0;
  const kept =
    given || asked.layout.form !== "rectangle"
      ? ""
      : `, of this ${found.solved === "deep" ? "length" : "depth"} the least that was found, in steps of ${metres(trainGrain)}`;
  return [
    {
      heading: `PEG THIS: ${sizeWords(asked.layout, found.size)}${kept}`,
      entries: pegWords(asked.layout, found, before).map(entry),
    },
    {
      heading: "HOW IT IS DRIVEN, with the trailer on",
      entries: [entry(`${moveWords(found.moves)}; then out the way it came.`), entry(tightWords(asked.layout, found))],
    },
  ];
}

/** The sheet of one train. */
export function trainSheet(told: TrainTold, file: string, foot: RoomFoot): Sheet {
  const { vehicle, trailer, clearance, mostAngle, gate, turn } = told;
  const angle = trailer.angleGiven
    ? `They may come to ${turned(mostAngle)}, as the plan says.`
    : `At which angle something touches nobody has said: ${turned(mostAngle)} is taken (common practice). Fold it by hand in a field and measure.`;
  return {
    title: `${vehicle.name} with ${trailer.name}: room ${turn ? "to turn round, and to drive round " : ""}without reversing`,
    what: `${turn ? `${layoutWords(turn.asked.layout)}, ${turn.asked.turner.changes + 1} moves; and ` : ""}${gate ? `gate off a lane ${metres(gate.width)} wide, from its middle; and ` : ""}loop and bends, forwards only; ${metres(clearance)} clear of every edge`,
    file,
    parts: [
      ...(turn === null ? [] : turnParts(turn)),
      ...(gate
        ? [{ heading: "CLEAR OPENING between the posts, by how far the gate stands back", entries: gateEntries(told) }]
        : []),
      { heading: "ROUND AND ROUND", entries: ringEntries(told) },
      { heading: "THROUGH A BEND, in and out straight", entries: bendEntries(told) },
    ],
    foot: [
      ...(turn?.found
        ? [
            "How sure of the turn: the way was checked exactly on this very size, for both bodies and the angle between them. Less may do: a size on which no way was found is only one on which the search found none.",
          ]
        : []),
      `How sure${turn ? " of loop and bends" : ""}: worked out by formula at walking pace, without slip, the two in line before they turn. Its margin is the ${metres(clearance)} and nothing else. ${angle}`,
      `The vehicle: ${vehicle.words}. The trailer: ${trailer.words}. ${vehicle.rests.join(" ")} Measure your own: what is measured stands before any library.`,
      ...mindWords(foot, "trailer"),
    ],
    table: { columns: trainColumns, rows: rowsOf(told) },
  };
}

const trainColumns = ["vehicle", "what", "clearance_m", "outer_radius_m", "inner_radius_m", "width_m"] as const;

function rowsOf({ vehicle, clearance, ring, bends, gate, turn }: TrainTold): Sheet["table"]["rows"] {
  const figure = (value: number) => Number(value.toFixed(3));
  const row = (what: string, outer: number, inner: number) => {
    const [out, within] = [outer + clearance, Math.max(0, inner - clearance)];
    return [vehicle.name, what, clearance, figure(out), figure(within), figure(out - within)];
  };
  return [
    row("ring", ring.outer, ring.inner),
    ...(turn?.found
      ? [[vehicle.name, `turn ${figure(turn.found.size.long)} m long`, clearance, "", "", figure(turn.found.size.deep)]]
      : []),
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
