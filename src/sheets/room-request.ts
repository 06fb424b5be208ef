// The whole of `room`: vehicles of a plan and wishes in, one page per vehicle out, each with its sheet and its picture.

import type { Rulebook } from "../model/card.ts";
import type { Plan } from "../model/plan.ts";
import type { Sheet } from "../model/sheet.ts";
import {
  clearanceOn,
  type RoomAnswer,
  type RoomAsked,
  type RoomFound,
  type RoomTried,
  roomFor,
} from "../motion/room-answer.ts";
import type { GatePlaced, GateRow } from "../motion/room-gate.ts";
import type { Vehicle } from "../motion/vehicle.ts";
import { gateSheet } from "./room-gate.ts";
import { type RoomFoot, roomSheet, togetherSheet } from "./room.ts";
import { tellTrain, type TrainTold, trainSheet } from "./room-train.ts";
import { type RoomVehicle, roomVehicles } from "./room-vehicle.ts";
import { type RoomTold, type RoomWishes, taken, tellGate, tellRoom, tellTogether } from "./room-work.ts";
import { metres } from "./room-words.ts";

export type { RoomWishes } from "./room-work.ts";

/** One page: what to read, what to draw, what programs read. */
export interface RoomPage {
  readonly name: string;
  readonly vehicle: Vehicle | null;
  readonly sheet: Sheet;
  readonly asked: RoomAsked | null;
  readonly found: RoomFound | null;
  readonly answer: RoomAnswer | null;
  readonly tried: RoomTried | null;
  readonly gate: readonly GateRow[] | null;
  readonly placed: GatePlaced | null;
  /** With a trailer on. */
  readonly train: TrainTold | null;
}

export interface RoomResult {
  readonly pages: readonly RoomPage[];
  /** What must be known of a vehicle first, a sentence each. */
  readonly lacks: readonly string[];
}

export interface RoomRequest {
  readonly plan: Plan;
  /** Names of the plan's vehicles; all of them where none is named. */
  readonly named: readonly string[];
  readonly wishes: RoomWishes;
  readonly book: Rulebook;
  /** Where the vehicles come from, as it is printed. */
  readonly file: string;
  /** A car of the library for which a quoted size is explained; it is a vehicle of the plan too. */
  readonly explainedBy: string | null;
  /** The trailer of the plan that every vehicle is to tow; each its own where none is named. */
  readonly trailer?: string | null;
  /** Names to be printed in place of those of the plan. */
  readonly shown?: Readonly<Record<string, string>>;
}

/** The card whose cautions belong to every turn. */
const turningCard = "access/no-room-to-turn";
const tableName = "turning-rooms";

/** Pure: the same request, the same pages. */
export function askRoom(request: RoomRequest): RoomResult {
  const { plan, named, wishes, book, file } = request;
  const library = libraryOf(request);
  const found = roomVehicles(plan, named, library);
  const lacks = found.flatMap((one) => ("lacks" in one ? one.lacks.map((words) => `"${one.name}": ${words}`) : []));
  const all = found.flatMap((one) => ("lacks" in one ? [] : [one]));
  const vehicles = all.filter(({ trailer }) => trailer === null);
  const defaults = book.tables.get(tableName);
  const card = book.cards.find(({ id }) => id === turningCard);
  const foot: RoomFoot = { cautions: card?.cautions ?? [], defersTo: card?.defersTo ?? null, quoted: null };
  const trains = all.flatMap((one) =>
    one.trailer ? [trainPage(tellTrain(one, one.trailer, { wishes, defaults }))] : [],
  );
  if (wishes.form === "gate") {
    const pages = tellGate(vehicles, wishes, defaults).map((told): RoomPage => ({
      ...emptyPage(told.vehicle),
      sheet: gateSheet(told, file, foot),
      gate: told.rows,
      placed: told.placed,
    }));
    return { pages: [...pages, ...trains], lacks };
  }
  const told = tellRoom(vehicles, wishes, defaults);
  const pages = told.map((one): RoomPage => pageOf(one, file, { ...foot, quoted: quotedWords(one, request) }));
  const together = tellTogether(told);
  const joint =
    together &&
    togetherSheet(
      together,
      vehicles.map(({ name }) => name),
      file,
    );
  const last = joint ? [{ ...emptyPage(null), name: "all", sheet: joint }] : [];
  return { pages: [...pages, ...trains, ...last], lacks };

  function trainPage(told: TrainTold): RoomPage {
    const { asked = null, found = null } = told.turn ?? {};
    return { ...emptyPage(told.vehicle), sheet: trainSheet(told, file, foot), train: told, asked, found };
  }
}

const libraryOf = ({ book, shown, trailer = null }: RoomRequest) => ({
  trailer,
  vehicles: book.tables.get("vehicles"),
  trailers: book.tables.get("trailers"),
  sources: book.sources,
  ...(shown ? { shown } : {}),
});

function emptyPage(vehicle: RoomVehicle | null): Omit<RoomPage, "sheet"> {
  return {
    name: vehicle?.name ?? "",
    vehicle: vehicle?.vehicle ?? null,
    asked: null,
    found: null,
    answer: null,
    tried: null,
    gate: null,
    placed: null,
    train: null,
  };
}

function pageOf(told: RoomTold, file: string, foot: RoomFoot): RoomPage {
  const sheet = roomSheet(told, file, foot);
  const page = { ...emptyPage(told.vehicle), sheet, asked: told.asked };
  if (told.is === "tried") return { ...page, tried: told.tried, found: told.tried.found };
  return { ...page, answer: told.answer, found: told.answer.found };
}

/** A size this near a quoted one is taken for it, m. */
const near = 0.35;

/**
 * What stands behind the size that is quoted for a car's three-point turn, where somebody asks for one like it: which
 * vehicle, entry and clearance it fits, worked out on the spot.
 */
function quotedWords({ asked }: RoomTold, request: RoomRequest): string | null {
  const { plan, book, explainedBy } = request;
  const defaults = book.tables.get(tableName);
  const quoted = [...(defaults?.rows ?? [])].find(([, row]) => row["length"] && row["depth"]);
  if (!quoted || explainedBy === null) return null;
  const [title, row] = quoted;
  const [long, deep] = [row["length"]?.value ?? 0, row["depth"]?.value ?? 0];
  const alike = (given: number | null, like: number) => given === null || Math.abs(given - like) <= near;
  if ((asked.long ?? asked.deep) === null || !alike(asked.long, long) || !alike(asked.deep, deep)) return null;
  const [car] = roomVehicles(plan, [explainedBy], { ...libraryOf(request), trailer: null });
  if (!car || "lacks" in car) return null;
  const track = taken(defaults, car.vehicle, "track");
  const clear = taken(defaults, car.vehicle, "clear");
  const turner = { vehicle: car.vehicle, clearance: clear, changes: 2 };
  const layout = { form: "rectangle", entry: "middle", track, splay: 0 } as const;
  const { clearance } = clearanceOn({ turner, layout, long, deep });
  const needed = roomFor({ turner, layout, long, deep: null }, []).found?.size.deep;
  const fits = clearance === null ? "does not quite fit" : `fits with ${metres(clearance)} clear all round and no more`;
  const wants =
    needed === undefined ? "" : ` With ${metres(clear)} all round the same car wants ${metres(needed)} of depth.`;
  return (
    `About ${metres(long)} by ${metres(deep)}: this is the size that is quoted in the trade as "${title}"; nobody publishes it. ` +
    `By our search the design car "${car.name}", coming in at right angles to the middle of the long side off a track ${metres(track)} wide, ${fits}, in three moves.` +
    `${wants} A size with next to nothing over is one to stay away from: go by your own vehicle, way in and clearance above.`
  );
}
