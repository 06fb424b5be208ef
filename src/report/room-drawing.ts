// The drawing of a ground for turning: to scale, in ink, with what to peg and the way that was checked.

import type { Sheet } from "../model/sheet.ts";
import type { Point } from "../model/reading.ts";
import type { GatePlaced } from "../motion/room-gate.ts";
import type { RoomLayout } from "../motion/room-layout.ts";
import type { RoomAsked, RoomFound } from "../motion/room-answer.ts";
import type { Vehicle } from "../motion/vehicle.ts";
import { capital } from "./clean.ts";
import { element, joined, plain, type Markup } from "./markup.ts";
import { figuresMarkup, figuresOf } from "./room-dimensions.ts";
import { frameMarkup, inked, lines, page, roomFrame } from "./room-frame.ts";
import { gateSketch } from "./room-gate-drawing.ts";
import { type TrainDrawn, trainSketch } from "./room-train-drawing.ts";
import { pathMarkup } from "./room-path.ts";

const letters = "Helvetica, Arial, 'Liberation Sans', sans-serif";

/** What is drawn of one page of `room`. */
export interface RoomDrawn {
  readonly name: string;
  readonly vehicle: Vehicle | null;
  readonly sheet: Sheet;
  readonly asked: RoomAsked | null;
  readonly found: RoomFound | null;
  readonly placed: GatePlaced | null;
  readonly train: TrainDrawn | null;
}

/** The drawing as one `svg` element; null where there is nothing to draw. `id` keeps the names of several apart. */
export function roomMarkup(drawn: RoomDrawn, id: string): Markup | null {
  const { sheet } = drawn;
  const sketch = sketchOf(drawn);
  if (sketch === null) return null;
  const told = sheet.parts.flatMap(({ entries }) => entries.map(({ words }) => words)).slice(0, 6);
  const title = capital(sheet.title);
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: `${page.width}mm`,
      height: `${page.height}mm`,
      viewBox: `0 0 ${page.width} ${page.height}`,
      role: "img",
      "aria-labelledby": `${id}-title ${id}-words`,
      "font-family": letters,
    },
    element("title", { id: `${id}-title` }, plain(sheet.title)),
    element("desc", { id: `${id}-words` }, plain(told.join(" "))),
    frameMarkup({ title, what: `${capital(sheet.what)}.`, foot: footOf(sheet) }, sketch.frame),
    sketch.markup,
  );
}

/** Ground with the way it is driven, or a gate with the turn into it. */
function sketchOf({ vehicle, asked, found, placed, train }: RoomDrawn) {
  if (train && !found) return trainSketch(train);
  if (vehicle && placed) return gateSketch(placed, vehicle);
  if (!vehicle || !asked || !found) return null;
  const frame = roomFrame([...found.ground, ...found.swept.rings.flat()]);
  const edges = edgesOf(asked.layout, found.ground).map((line) =>
    inked(line.map(frame.at), lines.edge.weight, { "stroke-linejoin": "round" }),
  );
  const towed = (train?.turn?.stops ?? []).map((outline) =>
    inked([...outline, ...outline.slice(0, 1)].map(frame.at), lines.body.weight),
  );
  const figures = figuresMarkup(figuresOf(asked.layout, found.size, trackEnd(found.ground)), frame);
  return { frame, markup: joined([...edges, pathMarkup(found, vehicle, frame), ...towed, figures], "\n") };
}

/** The edges of a ground; the track, or the road, goes on where it ends on the sheet and has no edge across it. */
function edgesOf(layout: RoomLayout, ground: readonly Point[]): readonly (readonly Point[])[] {
  const [first, ...rest] = ground;
  if (!first) return [];
  const round = [...rest, first];
  const high = Math.max(...ground.map(([, y]) => y));
  const ends = layout.form === "road" || (layout.form === "rectangle" && layout.entry === "along");
  const cut = round.findIndex(([, y], i) => y === high && round[i + 1]?.[1] === high);
  return ends && cut >= 0 ? [round.slice(0, cut + 1), round.slice(cut + 1)] : [round];
}

/** Where the track ends on the sheet, m along it. */
const trackEnd = (ground: readonly Point[]): number => Math.min(...ground.map(([, y]) => y));

/** The vehicle, how sure it is, and what to mind: the sheet's own foot. */
function footOf({ foot }: Sheet): readonly string[] {
  const wanted = ["The vehicle:", "How sure: worked out", "Its margin", "Mirrors are", "Mind:"];
  return wanted.flatMap((start) => foot.filter((sentence) => sentence.startsWith(start)));
}

/** The drawing as a file of its own. */
export function roomSvg(drawn: RoomDrawn): string {
  const markup = roomMarkup(drawn, "room");
  return markup === null ? "" : `<?xml version="1.0" encoding="UTF-8"?>\n${markup.markup}\n`;
}
