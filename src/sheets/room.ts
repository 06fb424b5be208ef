// The sheet of `room`: how much ground a vehicle takes to turn round, what to peg, what would change it, how sure it is.

import type { Sheet, SheetEntry, SheetPart } from "../model/sheet.ts";
import { type RoomAnswer, type RoomChange, type RoomFound, trackBefore } from "../motion/room-answer.ts";
import { type RoomTogether, type RoomTold, toldMore } from "./room-work.ts";
import { layoutWords, metres, moveWords, pegWords, sizeWords, tightWords, wishWords } from "./room-words.ts";

type Row = readonly (string | number)[];
const columns = ["vehicle", "layout", "what", "moves", "clearance_m", "length_m", "depth_m", "none_below_m"] as const;

/** What stands at the foot of every sheet. */
export interface RoomFoot {
  readonly cautions: readonly string[];
  readonly defersTo: string | null;
  /** Where the size asked for is one that is quoted in the trade: what it is. */
  readonly quoted: string | null;
}

const none: readonly string[] = [];
const entry = (words: string, notes: readonly string[] = none): SheetEntry => ({ words, notes });

/** The sheet of one vehicle; `file` is the plan it comes from, or the library. */
export function roomSheet(told: RoomTold, file: string, foot: RoomFoot): Sheet {
  const { vehicle, asked } = told;
  const { layout, turner } = asked;
  const found = told.is === "room" ? told.answer.found : told.tried.found;
  const parts = told.is === "room" ? roomParts(told) : triedParts(told);
  return {
    title: `${vehicle.name}: room to turn round`,
    what: `${layoutWords(layout)}; ${told.is === "room" ? wishWords(turner) : `${turner.changes + 1} moves`}`,
    file,
    parts,
    foot: [
      ...(foot.quoted === null ? [] : [foot.quoted]),
      ...(found === null ? [] : sureWords(told, found)),
      `The vehicle: ${vehicle.words}. ${vehicle.rests.join(" ")} Measure your own: what is measured stands before any library.`,
      ...mindWords(foot),
    ],
    table: { columns, rows: rowsOf(told) },
  };
}

export function mindWords(
  { cautions, defersTo }: RoomFoot,
  on: "trailer" | "no trailer" = "no trailer",
): readonly string[] {
  const decides = defersTo === null ? none : [`Who decides: ${defersTo}.`];
  const bearing = cautions.filter((caution) => on === "trailer" || !caution.startsWith("With a trailer on"));
  return [`Mind: ${[...bearing, banksman, ...decides].join(" ")}`];
}

const banksman =
  "Reversing kills people on foot, most of all children behind the tail: a second person guides from a place that the driver can see, everybody else stands off, and a round with no reversing is better than any of this.";

function roomParts(told: RoomTold & { is: "room" }): readonly SheetPart[] {
  const { answer, asked, vehicle } = told;
  const { found } = answer;
  if (found === null)
    return [{ heading: "NOTHING FOUND", entries: [entry(notFound(answer)), ...curveEntries(answer)] }];
  const chosen = answer.curve.length > 0 ? " This is the length of smallest area of those below." : "";
  return [
    {
      heading: `PEG THIS: ${sizeWords(asked.layout, found.size)}`,
      entries: pegWords(asked.layout, found, trackBefore(asked.turner, found)).map((words) => entry(words)),
    },
    drivenPart(asked.layout, found),
    {
      heading: `WHAT WOULD CHANGE IT${kept(answer)}.${chosen}`,
      entries: answer.changes.map((change) => entry(changeWords(change, answer, vehicle.largest !== null))),
    },
    ...(answer.curve.length > 0
      ? [{ heading: "LENGTH AGAINST DEPTH, the same wishes", entries: curveEntries(answer) }]
      : []),
  ];
}

function drivenPart(layout: RoomTold["asked"]["layout"], found: RoomFound): SheetPart {
  const island =
    found.island === null
      ? []
      : [entry(`An island up to ${metres(found.island)} across may stay in the middle of the circle.`)];
  return {
    heading: "HOW IT IS DRIVEN",
    entries: [
      entry(`${moveWords(found.moves)}; then out the way it came.`),
      entry(tightWords(layout, found)),
      ...island,
    ],
  };
}

function kept({ found, asked }: RoomAnswer): string {
  if (!found || asked.layout.form !== "rectangle") return "";
  return found.solved === "deep"
    ? `, at the same length of ${metres(found.size.long)}`
    : `, at the same depth of ${metres(found.size.deep)}`;
}

function notFound({ asked }: RoomAnswer): string {
  const tight = whyNone(asked);
  const why = tight.startsWith("no size will do") ? `: ${tight}` : "";
  return `No way was found for this in any size that was tried${why}. Try a wider track, a splayed mouth, less clearance or more moves.`;
}

function changeWords(change: RoomChange, { asked, found }: RoomAnswer, ranged: boolean): string {
  const { key, size } = change;
  const { turner, layout } = asked;
  const track = "track" in layout ? layout.track : 0;
  const what: Readonly<Record<string, string>> = {
    shunt: `One more shunt (${turner.changes + 3} moves)`,
    clearance: `${metres(toldMore.clearance)} more clearance (${metres(turner.clearance + toldMore.clearance)} all round)`,
    wider: `A mouth ${metres(toldMore.track)} wider (${metres(track + toldMore.track)})`,
    walls: "Walls, hedges or high fences along every edge, the clearance kept from the mirrors too",
    "low edges": "Edges low enough for the mirrors to hang over",
    largest: ranged ? "The largest of such vehicles, every length at the far end of its ±" : "",
  };
  const words = what[key] ?? key;
  if (size === null || found === null) return `${words}: ${whyNone(change)}.`;
  const now = found.size[found.solved];
  const side = asked.layout.form === "circle" ? "across" : found.solved === "deep" ? "deep" : "long";
  const by = size - now;
  if (Math.abs(by) < 0.005) return `${words}: ${metres(size)} ${side}, the same.`;
  return `${words}: ${metres(size)} ${side}, ${metres(Math.abs(by))} ${by > 0 ? "more" : "less"}.`;
}

/** Most often it is the track itself that leaves too little beside the body, or beside the mirrors. */
function whyNone({ turner, layout }: Pick<RoomAnswer["asked"], "turner" | "layout">): string {
  const width = turner.mirrors?.edges === "all" ? turner.mirrors.width : turner.vehicle.bodyWidth;
  const beside = "track" in layout ? (layout.track - width) / 2 : Infinity;
  return beside < turner.clearance + 0.005
    ? `no size will do, for the track itself leaves only ${metres(Math.max(0, beside))} on each side`
    : "no size was found that will do";
}

function curveEntries({ curve }: RoomAnswer): readonly SheetEntry[] {
  return curve.map(({ long, found }) =>
    entry(
      found
        ? `${metres(long)} long: ${metres(found.size)} deep (${(long * found.size).toFixed(0)} m2).`
        : `${metres(long)} long: no depth that was tried will do.`,
    ),
  );
}

function triedParts({ tried, asked }: RoomTold & { is: "tried" }): readonly SheetPart[] {
  const { size, clearance, noMoreThan, found } = tried;
  const heading = `ASKED: ${sizeWords(asked.layout, size)}`;
  if (clearance === null || found === null) {
    const most = Math.max(0, noMoreThan);
    return [
      {
        heading,
        entries: [
          entry(
            noMoreThan < 0
              ? "It cannot turn here in these moves: no way was found even for a vehicle 5 cm smaller all round."
              : `No way was found in these moves with nothing to spare. It is too close to call: a little smaller a vehicle has ${metres(most)}.`,
          ),
        ],
      },
    ];
  }
  const wanted = asked.turner.clearance;
  const short = wanted - clearance;
  const judged =
    short > 0.005
      ? ` ${metres(wanted)} is usually wanted, so it is short by ${metres(short)}: ask for the depth with that clearance.`
      : "";
  return [
    {
      heading,
      entries: [
        entry(
          `It turns here in ${found.moves.length} moves with ${metres(clearance)} clear all round, and no more than about ${metres(Math.max(clearance, noMoreThan))}.${judged}`,
        ),
      ],
    },
    {
      heading: "HOW IT WAS LAID OUT",
      entries: pegWords(asked.layout, found, trackBefore(asked.turner, found)).map((words) => entry(words)),
    },
    drivenPart(asked.layout, found),
  ];
}

function mirrorWords({ vehicle, asked: { turner } }: RoomTold): string {
  if (!turner.mirrors)
    return "Mirrors are not counted: they hang over a low edge and strike a wall, a hedge or a fence that stands as high (ask with --walls).";
  const out = (turner.mirrors.width - turner.vehicle.bodyWidth) / 2;
  const taken =
    vehicle.overMirrors === null
      ? ` They are taken to stand out ${metres(out)} a side, as a published standard counts them (recalled): measure yours.`
      : "";
  return `Mirrors are counted along the side from the front end to about the driver's door.${taken} A hedge grows: count it as wide as it is just before it is cut.`;
}

function sureWords(told: RoomTold, found: RoomFound): readonly string[] {
  const below =
    found.noneBelow === null
      ? "How much less would do was not looked into."
      : `Less may do, but no way was found in ${metres(found.noneBelow)} or less, even for a vehicle 5 cm smaller all round (searched every way on a 5 cm grid: experience, not a law of geometry).`;
  const margin = told.is === "room" ? told.asked.turner.clearance : (told.tried.clearance ?? 0);
  return [
    `How sure: the way of driving was checked exactly on this very size, along its whole length. ${told.is === "room" ? below : ""}`.trimEnd(),
    `Its margin is the ${metres(margin)} all round and nothing else. It is driven at walking pace to full lock, the wheels turned while it stands, by a driver who makes no mistake, on level firm ground; mud, a late turn of the wheel and your own pegs all come out of that margin. It is the least that was found, not a size that is easy.`,
    `${mirrorWords(told)} Not counted: a load that hangs over; and a trailer, with which a vehicle wants more (ask with --trailer).`,
  ];
}

function rowsOf(told: RoomTold): readonly Row[] {
  const { vehicle, asked } = told;
  const { layout, turner } = asked;
  const form = layout.form === "rectangle" ? `rectangle ${layout.entry}` : layout.form;
  const row = (
    what: string,
    more: { moves?: number; clearance?: number; long: Row[0]; deep: Row[0]; below?: number | null },
  ): Row => [
    vehicle.name,
    form,
    what,
    more.moves ?? turner.changes + 1,
    rounded(more.clearance ?? turner.clearance),
    typeof more.long === "number" ? rounded(more.long) : more.long,
    typeof more.deep === "number" ? rounded(more.deep) : more.deep,
    more.below === undefined || more.below === null ? "" : rounded(more.below),
  ];
  if (told.is === "tried") {
    const { size, clearance } = told.tried;
    return clearance === null ? [] : [row("largest clearance", { clearance, ...size })];
  }
  const { answer } = told;
  const { found } = answer;
  if (!found) return curveRows();
  const other = { long: found.size.long, deep: found.size.deep };
  const changes = answer.changes.map(({ key, size }) =>
    row(key, {
      ...other,
      [found.solved]: size ?? "",
      moves: turner.changes + (key === "shunt" ? 3 : 1),
      clearance: turner.clearance + (key === "clearance" ? toldMore.clearance : 0),
    }),
  );
  return [row("size", { ...other, below: found.noneBelow }), ...changes, ...curveRows()];

  function curveRows(): readonly Row[] {
    return told.is === "room"
      ? told.answer.curve.map(({ long, found: at }) => row("curve", { long, deep: at?.size ?? "" }))
      : [];
  }
}

const rounded = (value: number): number => Math.round(value * 1000) / 1000;

/** The sheet of one ground for several vehicles. */
export function togetherSheet(together: RoomTogether, names: readonly string[], file: string): Sheet {
  const { long, deep, decides } = together;
  return {
    title: "One ground for all of them",
    what: names.join(", "),
    file,
    parts: [
      {
        heading: "PEG THIS",
        entries: [
          entry(
            `${metres(long)} long and ${metres(deep)} deep takes every one of them, each with its own clearance and moves as above. "${decides}" decides the depth.`,
          ),
        ],
      },
    ],
    foot: [],
    table: { columns, rows: [["all", "", "together", "", "", rounded(long), rounded(deep), ""]] },
  };
}
