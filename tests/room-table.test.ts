// The table of smallest grounds in examples/room, and the drawing beside it: what stands there is what is found today.
// `REGENERATE=1 npx vitest run --config tests/vitest.config.ts tests/room-table.test.ts` writes both anew: read the difference.

import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { clearanceOn } from "../src/motion/room-answer.ts";
import { type RoomLayout, type Turner, turnQuestion } from "../src/motion/room-layout.ts";
import { smallestSize } from "../src/motion/room-size.ts";
import type { Vehicle } from "../src/motion/vehicle.ts";
import { roomVehicles } from "../src/sheets/room-vehicle.ts";
import { resolvedPlan, type RoomWishes, roomWork, rulebook } from "../src/index.ts";
import { root } from "./house/rule-files.ts";

const { askRoom, printedRoom } = await roomWork();
const folder = join(root, "examples/room");
const readme = join(folder, "README.md");
const regenerate = process.env["REGENERATE"] === "1";

const vehicles = [
  "b85 car",
  "b99 car",
  "aashto p",
  "pickup",
  "tipper 3.5 t",
  "german van",
  "tractor",
  "medium rigid vehicle",
] as const;

const columns: readonly (readonly [heading: string, wishes: Partial<RoomWishes>])[] = [
  ["middle of the long side, 3 moves", { entry: "middle", moves: 3 }],
  ["the same, 5 moves", { entry: "middle", moves: 5 }],
  ["beside the track, 3 moves", { entry: "along", moves: 3 }],
  ["the same, 5 moves", { entry: "along", moves: 5 }],
  ["loop, no reversing", { form: "circle" }],
];

const plain: RoomWishes = {
  form: "rectangle",
  entry: "middle",
  walls: "none",
  track: null,
  splay: 0,
  clear: null,
  moves: 3,
  long: null,
  deep: null,
  lane: null,
  setback: null,
};

function ask(like: string, wishes: Partial<RoomWishes>) {
  const text = JSON.stringify({
    sightrail: 1,
    title: "Room",
    place: ["anywhere"],
    vehicles: { one: { like }, explained: { like: "aashto p" } },
  });
  const { value } = resolvedPlan({ file: "vehicles", text });
  if (!value) throw new Error("no plan");
  return askRoom({
    plan: value,
    named: ["one"],
    wishes: { ...plain, ...wishes },
    book: rulebook(),
    file: "none; vehicles of the library, or as given",
    explainedBy: "explained",
    shown: { one: like, explained: "aashto p" },
  });
}

function cellOf(like: string, wishes: Partial<RoomWishes>): string {
  const found = ask(like, wishes).pages[0]?.found;
  if (!found) return "none found";
  const { long, deep } = found.size;
  return wishes.form === "circle" ? long.toFixed(2) : `${long.toFixed(2)} x ${deep.toFixed(2)}`;
}

function tableText(): string {
  const rows = vehicles.map((like) => {
    const asked = ask(like, { form: "circle" }).pages[0]?.asked;
    const track = asked?.layout.form === "circle" ? asked.layout.track : 0;
    const taken = `${track.toFixed(2)}; ${(asked?.turner.clearance ?? 0).toFixed(2)}`;
    return [like, taken, ...columns.map(([, wishes]) => cellOf(like, wishes))];
  });
  const head = ["vehicle of the library", "track; clear all round", ...columns.map(([heading]) => heading)];
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [line(head), line(head.map(() => "---")), ...rows.map(line)].join("\n");
}

const tableForm = /\| vehicle of the library[\s\S]*?(?=\n\n|$)/;
const picture = { like: "pickup", wishes: { long: 14 } } as const;

if (regenerate) {
  writeFileSync(
    readme,
    readFileSync(readme, "utf8").replace(tableForm, () => tableText()),
  );
  const { pages } = ask(picture.like, picture.wishes);
  for (const ending of [".svg", ".txt"] as const)
    writeFileSync(join(folder, `pickup${ending}`), printedRoom(pages, ending));
}

const written = readFileSync(readme, "utf8");
const rows = (tableForm.exec(written)?.[0] ?? "")
  .split("\n")
  .slice(2)
  .map((line) => line.split("|").map((cell) => cell.trim()));

/**
 * What another day's search may find more, m: it stops where a path cannot be squeezed further, which is no exact place,
 * and a curve has its neighbours' paths to begin with.
 */
const atMostMore = 0.45;
/** Above what is written, m, where the search begins: a lattice wants more ground than a path squeezed from it. */
const startsAt = 2.5;

const lookedUp = resolvedPlan({
  file: "vehicles",
  text: JSON.stringify({
    sightrail: 1,
    title: "Room",
    place: ["anywhere"],
    vehicles: Object.fromEntries(vehicles.map((like, i) => [`v${i}`, { like }])),
  }),
}).value;
const library = { vehicles: rulebook().tables.get("vehicles"), sources: rulebook().sources };
const found = lookedUp ? roomVehicles(lookedUp, [], library) : [];

function vehicleOf(like: string): Vehicle {
  const one = found[vehicles.findIndex((name) => name === like)];
  if (!one || "lacks" in one) throw new Error(`no lengths for ${like}`);
  return one.vehicle;
}

/** Depth (or, for a loop, distance across) that the search finds now near the one that is written. */
function sizeNear(
  layout: RoomLayout,
  turner: Turner,
  written: { readonly long: number; readonly deep: number },
): number {
  const loop = layout.form === "circle";
  const stands = loop ? written.long : written.deep;
  const ask = (size: number) =>
    turnQuestion(layout, loop ? { long: size, deep: 0 } : { ...written, deep: size }, turner);
  return smallestSize(ask, { from: stands - 0.5, to: stands + startsAt })?.size ?? Infinity;
}

describe("the table of smallest grounds", () => {
  it("has eight vehicles of the library", () => {
    expect(rows.map(([, name]) => name)).toEqual([...vehicles]);
  });
  it.each(vehicles)("%s: every size in its row is found again", (like) => {
    const [taken = "", ...cells] = rows.find(([, name]) => name === like)?.slice(2) ?? [];
    const [track = 0, clearance = 0] = taken.split(";").map(Number);
    for (const [i, [heading, { form, entry = "middle", moves = 1 }]] of columns.entries()) {
      const [long = 0, deep = 0] = (cells[i] ?? "").split(" x ").map(Number);
      const layout: RoomLayout =
        form === "circle" ? { form, track, splay: 0 } : { form: "rectangle", entry, track, splay: 0 };
      const turner = { vehicle: vehicleOf(like), clearance, changes: moves - 1 };
      const stands = form === "circle" ? long : deep;
      expect(sizeNear(layout, turner, { long, deep }), `${like}, ${heading}`).toBeLessThan(stands + atMostMore);
    }
  });
  it("gives less ground to more moves", () => {
    for (const [, name, , ...cells] of rows) {
      const area = (cell = "") => cell.split(" x ").reduce((product, side) => product * Number(side), 1);
      expect(area(cells[1]), name).toBeLessThan(area(cells[0]));
      expect(area(cells[3]), name).toBeLessThan(area(cells[2]));
    }
  });
});

const middle: RoomLayout = { form: "rectangle", entry: "middle", track: 3, splay: 0 };

describe("the drawing and the sheet beside it", () => {
  it("are of a size that is found", () => {
    const sheet = readFileSync(join(folder, "pickup.txt"), "utf8");
    const told = /PEG THIS: 14\.00 m long and (\d+\.\d\d) m deep/.exec(sheet)?.[1] ?? "?";
    const turner = { vehicle: vehicleOf("pickup"), clearance: 0.3, changes: 2 };
    expect(sizeNear(middle, turner, { long: 14, deep: Number(told) })).toBeLessThan(Number(told) + atMostMore);
    expect(readFileSync(join(folder, "pickup.svg"), "utf8")).toContain(`${told} m`);
  });
});

describe("what the README says of a size that is quoted", () => {
  const vehicle = vehicleOf("aashto p");
  it("about 2 cm are left on 14.5 x 7.2 m (COMPUTED; a centimetre and the rounding down)", () => {
    const turner = { vehicle, clearance: 0.3, changes: 2 };
    const { clearance } = clearanceOn({ layout: middle, turner, long: 14.5, deep: 7.2 });
    expect(clearance ?? -1).toBeGreaterThanOrEqual(0);
    expect(clearance ?? 1).toBeLessThanOrEqual(0.03);
  });
  it("some 4 m more depth are wanted for 0.30 m all round", () => {
    const wanted = Number(/wants (\d+\.\d) m of depth/.exec(written)?.[1]);
    const needed = sizeNear(middle, { vehicle, clearance: 0.3, changes: 2 }, { long: 14.5, deep: wanted });
    expect(Math.abs(needed - wanted)).toBeLessThan(0.3);
  });
});
