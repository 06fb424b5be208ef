// `room`: how much ground a vehicle takes to turn round. Vehicles of a plan, of the library, or given by their lengths.

import { nearestWord, type Problem, type RoomWishes, resolvedPlan, roomWork, rulebook, wants } from "../index.ts";
import { parseQuantity } from "../model/units.ts";
import { problemLines } from "./check-command.ts";
import { readInclude, readPlanFile, writeTextFile } from "./files.ts";
import type { Streams } from "./streams.ts";

export interface RoomFlags {
  readonly save: readonly string[];
  readonly plan?: string;
  readonly shape: string;
  readonly entry: string;
  readonly walls: string;
  readonly moves: string;
  readonly clear?: string;
  readonly track?: string;
  readonly splay?: string;
  readonly length?: string;
  readonly depth?: string;
  readonly lane?: string;
  readonly setBack?: string;
  readonly option?: string;
  readonly vehicleLength?: string;
  readonly vehicleWidth?: string;
  readonly wheelbase?: string;
  readonly trailer?: string;
  readonly hitch?: string;
  readonly frontOverhang?: string;
  readonly rearOverhang?: string;
  readonly overTyres?: string;
  readonly turningCircle?: string;
  readonly between: string;
}

/** Words of the command for forms of ground and for ways in. */
const shapes = { rectangle: "rectangle", t: "tee", y: "wye", loop: "circle", road: "road", gate: "gate" } as const;
const entries = { middle: "middle", end: "end", "short-side": "short side", along: "along" } as const;
const walls = { none: "none", ground: "ground", all: "all" } as const;
/** Most moves that are searched for. */
const mostMoves = 15;
/** The design car by which a quoted size is explained. */
const explaining = { name: "explained", like: "aashto p" } as const;

/** Prints the sheets; 0, or 2 where a wish, a vehicle or a plan could not be read, or a file not written. */
export async function roomCommand(named: readonly string[], flags: RoomFlags, streams: Streams): Promise<number> {
  const { askRoom, drawingsOf, printedRoom, roomEndings } = await roomWork();
  const wishes = wishesOf(flags);
  if ("wrong" in wishes) return refused(wishes.wrong, streams);
  const unknown = flags.save.find((file) => !roomEndings.some((ending) => file.endsWith(ending)));
  if (unknown !== undefined)
    return refused([`--save: expected a file ending in ${roomEndings.join(", ")}, got ${unknown}.`], streams);
  const source = flags.plan === undefined ? libraryPlan(named, flags) : planFile(flags.plan, flags, streams);
  if ("wrong" in source) return refused(source.wrong, streams);
  streams.err(source.told);
  if (source.plan === null) return 2;
  const result = askRoom({
    book: rulebook(),
    plan: source.plan,
    named: source.named ?? named,
    wishes: wishes.value,
    file: flags.plan ?? "none; vehicles of the library, or as given",
    explainedBy: flags.plan === undefined ? explaining.name : null,
    trailer: source.trailer ?? null,
    ...(source.shown ? { shown: source.shown } : {}),
  });
  streams.err(result.lacks.map((words) => `${words}\n`).join(""));
  streams.out(printedRoom(result.pages, ".txt", streams.columns));
  const drawings = flags.save.some((file) => file.endsWith(".svg")) ? drawingsOf(result.pages).length : 1;
  if (drawings !== 1) {
    const why =
      drawings === 0 ? "there is nothing to draw" : "a file holds one drawing; save .html, or ask for one vehicle";
    streams.err(`--save: no .svg was written: ${why}.\n`);
  }
  const wanted = flags.save.filter((file) => drawings === 1 || !file.endsWith(".svg"));
  const saved = save(wanted, streams, (file) => {
    const ending = roomEndings.find((known) => file.endsWith(known)) ?? ".txt";
    return printedRoom(result.pages, ending);
  });
  return saved && drawings === 1 && result.lacks.length === 0 && source.told === "" && result.pages.length > 0 ? 0 : 2;
}

function refused(lines: readonly string[], streams: Streams): number {
  streams.err(`${lines.join("\n")}\n`);
  return 2;
}

function save(files: readonly string[], streams: Streams, textFor: (file: string) => string): boolean {
  const reasons = files.flatMap((file) => {
    const reason = writeTextFile(file, textFor(file));
    return reason === null ? [] : [`Could not write ${file}: ${reason}.\n`];
  });
  streams.err(reasons.join(""));
  return reasons.length === 0;
}

type Wishes = { readonly value: RoomWishes } | { readonly wrong: readonly string[] };

function wishesOf(flags: RoomFlags): Wishes {
  const wrong: string[] = [];
  const length = (flag: string, text: string | undefined): number | null => {
    if (text === undefined) return null;
    const read = parseQuantity(text, "length");
    if (read.ok && read.value >= 0) return read.value;
    wrong.push(`--${flag}: expected a length such as 3.5, 350 cm or 11 ft 6 in, got ${text}.`);
    return null;
  };
  const moves = Number(flags.moves);
  if (!(Number.isInteger(moves) && moves >= 1 && moves <= mostMoves))
    wrong.push(
      `--moves: expected a whole number from 1 to ${mostMoves} (a three-point turn is 3), got ${flags.moves}.`,
    );
  else if (moves % 2 === 0)
    wrong.push(`--moves: in forwards and out forwards takes an odd number of moves; got ${moves}. Take ${moves + 1}.`);
  const form = word("shape", flags.shape, shapes, wrong);
  const entry = word("entry", flags.entry, entries, wrong);
  const value: RoomWishes = {
    form: form ?? "rectangle",
    entry: entry ?? "middle",
    walls: word("walls", flags.walls, walls, wrong) ?? "none",
    moves,
    track: length("track", flags.track),
    splay: length("splay", flags.splay) ?? 0,
    clear: length("clear", flags.clear),
    long: length("length", flags.length),
    deep: length("depth", flags.depth),
    lane: length("lane", flags.lane),
    setback: length("set-back", flags.setBack),
  };
  return wrong.length > 0 ? { wrong } : { value };
}

function word<T extends string>(
  flag: string,
  text: string,
  known: Readonly<Record<string, T>>,
  wrong: string[],
): T | null {
  if (Object.hasOwn(known, text)) return known[text] ?? null;
  wrong.push(`--${flag}: expected ${Object.keys(known).join(", ")}; got ${text}.`);
  return null;
}

interface Source {
  readonly plan: ReturnType<typeof resolvedPlan>["value"];
  readonly told: string;
  readonly named?: readonly string[];
  /** Name of the trailer in the plan that is to be towed. */
  readonly trailer?: string;
  readonly shown?: Readonly<Record<string, string>>;
}

function planFile(file: string, flags: RoomFlags, streams: Streams): Source | { readonly wrong: readonly string[] } {
  const read = readPlanFile(file, streams);
  if ("problem" in read) return { plan: null, told: problemLines([read.problem]) };
  const includes = wants(read.text).map((name) => readInclude(file, name));
  const missing = includes.flatMap((one): readonly Problem[] => ("problem" in one ? [one.problem] : []));
  const texts = includes.flatMap((one) => ("text" in one ? [one.text] : []));
  const { value, problems } = resolvedPlan({ ...read.text, includes: texts }, flags.option);
  const trailer = flags.trailer === undefined ? {} : { trailer: flags.trailer };
  return { plan: value, told: problemLines([...missing, ...problems]), ...trailer };
}

const ownFlags = [
  ["vehicleLength", "length"],
  ["vehicleWidth", "width"],
  ["wheelbase", "wheelbase"],
  ["frontOverhang", "front_overhang"],
  ["rearOverhang", "rear_overhang"],
  ["overTyres", "track"],
  ["hitch", "hitch"],
] as const;

/** That a vehicle is not in the library, and which are, those whose names hold a word of it first. */
function noSuchVehicle(like: string, known: readonly string[]): readonly string[] {
  const words = like.split(/\s+/);
  const near = known.filter((one) => words.some((word) => one.includes(word)));
  const shown = near.length > 0 ? near : known;
  return [
    `The library has no vehicle "${like}". It has:`,
    ...shown.map((one) => `  ${one}`),
    near.length > 0 ? "and others: sightrail room" : "or its own lengths: sightrail room --help",
  ];
}

/** A plan of vehicles alone, so that lengths are read and looked over like those of any plan. */
function libraryPlan(named: readonly string[], flags: RoomFlags): Source | { readonly wrong: readonly string[] } {
  const own: Record<string, unknown> = {};
  for (const [flag, property] of ownFlags) if (flags[flag] !== undefined) own[property] = flags[flag];
  if (flags.turningCircle !== undefined)
    own["turning_circle"] = { across: flags.turningCircle, between: flags.between };
  const measured = Object.keys(own).some((key) => key !== "hitch");
  const towed = flags.trailer === undefined ? null : libraryTrailer(flags.trailer);
  if (towed && "wrong" in towed) return towed;
  if (towed?.hitch !== undefined && own["hitch"] === undefined) own["hitch"] = towed.hitch;
  const known = [...(rulebook().tables.get("vehicles")?.rows.keys() ?? [])];
  if (named.length === 0 && !measured)
    return {
      wrong: [
        "Which vehicle? One or more of the library, in quotes where it has a space:",
        ...known.map((one) => `  ${one}`),
        "or its own lengths: sightrail room --help",
      ],
    };
  if (named.length > 1 && measured)
    return { wrong: ["Lengths are given for one vehicle at a time; name one, or none."] };
  const likes = named.map((name) => name.toLowerCase());
  const strange = likes.find((like) => !known.includes(like) && nearestWord(like, known) === null);
  if (strange !== undefined) return { wrong: noSuchVehicle(strange, known) };
  // Names of a plan hold no full stop; those of the library do.
  const vehicles = likes.length === 0 ? [own] : likes.map((like) => ({ like, ...own }));
  const names = vehicles.map((_, i) => `vehicle ${i + 1}`);
  const text = JSON.stringify({
    sightrail: 1,
    title: "Room",
    place: ["anywhere"],
    vehicles: {
      ...Object.fromEntries(names.map((name, i) => [name, vehicles[i]])),
      [explaining.name]: { like: explaining.like },
    },
    ...(towed ? { trailers: { [towed.name]: towed.lengths } } : {}),
  });
  const { value, problems } = resolvedPlan({ file: "the command", text });
  const told = problems.map(({ expected, got, hint }) => `Expected ${expected}; got ${got}. ${hint}.\n`).join("");
  const shown = Object.fromEntries(names.map((name, i) => [name, likes[i] ?? "your vehicle"]));
  return problems.length > 0
    ? { plan: null, told }
    : {
        plan: value,
        told: "",
        named: names,
        ...(towed ? { trailer: towed.name } : {}),
        shown: { ...shown, [explaining.name]: explaining.like },
      };
}

interface LibraryTrailer {
  readonly name: string;
  readonly lengths: Readonly<Record<string, number | undefined>>;
  readonly hitch: number | undefined;
}

/** A row of the table of trailers, as a plan writes it; the body is taken to begin at the hitch. */
function libraryTrailer(word: string): LibraryTrailer | { readonly wrong: readonly string[] } {
  const rows = rulebook().tables.get("trailers")?.rows;
  const row = rows?.get(word.toLowerCase());
  if (!row)
    return {
      wrong: [`--trailer: expected ${[...(rows?.keys() ?? [])].join(", ")}; got ${word}. Your own goes into a plan.`],
    };
  const { width, wheelbase, rear_overhang: tail, hitch } = row;
  const lengths = { width: width?.value, hitch_to_axle: wheelbase?.value, rear_overhang: tail?.value };
  return { name: word.toLowerCase(), lengths, hitch: hitch?.value };
}
