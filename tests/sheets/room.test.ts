// `room` from a plan's vehicles to the sheet: what a person reads, for the library, for several, for a quoted size.

import { describe, expect, it } from "vitest";
import { resolvedPlan, type RoomWishes, roomWork, rulebook } from "../../src/index.ts";

const { askRoom, printedRoom } = await roomWork();
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

function ask(vehicles: Readonly<Record<string, unknown>>, wishes: Partial<RoomWishes> = {}, named?: readonly string[]) {
  const text = JSON.stringify({
    sightrail: 1,
    title: "Room",
    place: ["anywhere"],
    vehicles: { ...vehicles, explained: { like: "aashto p" } },
  });
  const { value, problems } = resolvedPlan({ file: "vehicles", text });
  expect(problems).toEqual([]);
  if (!value) throw new Error("no plan");
  return askRoom({
    plan: value,
    named: named ?? Object.keys(vehicles),
    wishes: { ...plain, ...wishes },
    book: rulebook(),
    file: "the library",
    explainedBy: "explained",
  });
}

const textOf = (result: ReturnType<typeof ask>) => printedRoom(result.pages, ".txt", 100).replace(/\s+/g, " ");

describe("one vehicle of the library", () => {
  const result = ask({ pickup: { like: "pickup" } }, { long: 14 });
  const text = textOf(result);
  it("says what to peg, both diagonals, where the track meets it and how much track was reckoned with", () => {
    const deep = result.pages[0]?.found?.size.deep ?? 0;
    expect(text).toContain(`PEG THIS: 14.00 m long and ${deep.toFixed(2)} m deep`);
    expect(text).toContain(`both diagonals, A to C and B to D, are ${Math.hypot(14, deep).toFixed(2)} m`);
    expect(text).toContain("Its edges meet AB at 5.50 m and 8.50 m from A.");
    expect(text).toContain("straight and 3.00 m wide for at least");
  });
  it("takes the clearance and the track that are usual for a car, and says so", () => {
    expect(text).toContain("0.30 m clear of every edge all round the body");
    expect(text).toContain("a track 3.00 m wide");
  });
  it("tells one more shunt, more clearance, a wider mouth and the far end of the library's ranges", () => {
    expect(text).toMatch(/One more shunt \(5 moves\): \d+\.\d\d m deep, \d\.\d\d m less\./);
    expect(text).toContain("the track itself leaves only 0.55 m on each side");
    expect(text).toMatch(/A mouth 0\.50 m wider \(3\.50 m\): \d+\.\d\d m deep/);
    expect(text).toMatch(/every length at the far end of its ±: \d+\.\d\d m deep, \d\.\d\d m more/);
  });
  it("says how sure, what the lengths rest on, what to mind and who decides; and promises nothing", () => {
    expect(text).toMatch(/no way was found in \d+\.\d\d m or less/);
    expect(text).toContain("Common trade practice (no publisher)");
    expect(text).toContain("Reversing kills people on foot");
    expect(text).toContain("Who decides: the driver, who may refuse.");
    expect(text).not.toMatch(/comfortabl|\bsafe|easily/i);
  });
  it("is a table too, with a row for the size and one for every change", () => {
    const rows = printedRoom(result.pages, ".csv").trim().split("\r\n");
    expect(rows[0]).toBe("vehicle,layout,what,moves,clearance_m,length_m,depth_m,none_below_m");
    expect(rows).toHaveLength(7);
  });
});

describe("several vehicles", () => {
  it("get one ground that takes them all, by the depth of the neediest", () => {
    const result = ask({ small: { like: "b85 car" }, large: { like: "german van" } }, { long: 14, entry: "along" });
    const text = textOf(result);
    const depths = result.pages.flatMap(({ found }) => (found ? [found.size.deep] : []));
    expect(text).toContain("ONE GROUND FOR ALL OF THEM");
    expect(text).toContain('"large" decides the depth');
    const all = /14\.00 m long and (\d+\.\d\d) m deep takes every one/.exec(text)?.[1];
    expect(Math.abs(Number(all) - Math.max(...depths))).toBeLessThan(0.1);
  });
});

describe("a size that is quoted", () => {
  it("is explained by vehicle, entry and clearance where somebody asks for one like it, and warned off", () => {
    const text = textOf(ask({ explained: { like: "aashto p" } }, { long: 14.5, deep: 7.2 }));
    expect(text).toMatch(/It turns here in 3 moves with 0\.0[0-3] m clear all round/);
    expect(text).toContain("nobody publishes it");
    expect(text).toMatch(/off a track 3\.00 m wide, fits with 0\.0[0-3] m clear all round and no more, in three moves/);
    expect(text).toMatch(/With 0\.30 m all round the same car wants 1[01]\.\d\d m of depth/);
    expect(text).toContain("to stay away from");
  });
  it("is not mentioned for another size", () => {
    expect(textOf(ask({ car: { like: "b85 car" } }, { long: 12 }))).not.toContain("nobody publishes it");
  });
});

describe("mirrors", () => {
  it("are told beside the answer, and with walls the clearance is kept from them", () => {
    const low = textOf(ask({ car: { like: "b85 car" } }, { long: 14, track: 3.5 }));
    expect(low).toContain("Mirrors are not counted");
    const told = /Walls, hedges or high fences along every edge.*?: (\d+\.\d\d) m deep/.exec(low)?.[1];
    const walled = ask({ car: { like: "b85 car" } }, { long: 14, track: 3.5, walls: "all" });
    // 1.87 + 2 x 0.23.
    expect(textOf(walled)).toContain("beside its mirrors (2.33 m over both): every edge stands as high as they hang");
    expect(Math.abs((walled.pages[0]?.found?.size.deep ?? 0) - Number(told))).toBeLessThan(0.1);
    expect(textOf(walled)).toContain("Edges low enough for the mirrors to hang over:");
  });
  it("leave a narrow track no size between walls", () => {
    // (2.80 - 2.33) / 2 = 0.235 beside the mirrors, 0.465 beside the body; 0.3 is wanted.
    const walled = textOf(ask({ car: { like: "b85 car" } }, { long: 14, track: 2.8, walls: "all" }));
    expect(walled).toMatch(/the track itself leaves only 0\.2[34] m on each side/);
  });
});

describe("what is not counted", () => {
  it("is said: mirrors, by how far they stick out where that is known, loads and trailers", () => {
    const text = textOf(ask({ van: { like: "german van", width_with_mirrors: 2.53 } }, { long: 16 }));
    expect(text).toContain("Mirrors are not counted");
    expect(text).toContain("a trailer, with which a vehicle wants more");
    // (2.53 - 2.17) / 2.
    expect(text).toContain("2.53 m over both, 0.18 m on each side beyond the body");
  });
});

describe("what cannot be told", () => {
  it("names what must be measured, what tows, and what there is", () => {
    expect(
      ask({ car: { length: 5.1, width: 1.87, wheelbase: 2.95, turning_circle: { across: 11.8, between: "kerbs" } } })
        .lacks[0],
    ).toContain("the front axle to the front end");
    expect(ask({ car: { like: "b85 car" } }, {}, ["lorry"]).lacks[0]).toContain('no vehicle "lorry"');
  });
  it("says that no size will do where the track leaves the vehicle no play", () => {
    const text = textOf(ask({ car: { like: "b85 car" } }, { track: 2.2, long: 14 }));
    expect(text).toContain("NOTHING FOUND");
    expect(text).toContain("the track itself leaves only 0.17 m on each side");
  });
});

describe("gate off a lane", () => {
  it("tells the openings of B85 by set-back, with the clearance on both sides (COMPUTED; 0.01 m)", () => {
    const result = ask({ car: { like: "b85 car" } }, { form: "gate", lane: 4, clear: 0.3, setback: 3.19 });
    const row = result.pages[0]?.gate?.find(({ setback }) => setback === 3.19);
    expect(Math.abs((row?.fromMiddle ?? 0) - 3.6)).toBeLessThan(0.011);
    expect(textOf(result)).toContain("3.19 m back: opens 3.60 m from the middle of the lane");
  });
});

describe("with a trailer on", () => {
  it("tells loop and bends of a library row", () => {
    const { pages, lacks } = ask({ rig: { like: "aashto car and camper trailer" } }, { clear: 0, form: "circle" });
    expect(lacks).toEqual([]);
    const text = textOf({ pages, lacks });
    // Published inside radius of half a turn: 18.3 ft (MEMORY), 5.58 m; rounded to 0.1 ft.
    const inside = Number(/Through 180 degrees: .*?inside edge (\d\.\d\d) m/.exec(text)?.[1]);
    expect(Math.abs(inside - 5.58)).toBeLessThan(0.03);
    // Wall radius of the towing vehicle with the row's width: (27.91 ft + 4 ft)^2 + (11 ft + 0.9 m)^2 gives 10.62 m (COMPUTED).
    expect(text).toContain("the outer edge, 21.2");
    expect(text).toContain("nobody between the two or behind it");
  });
  it("is turned round on a rectangle by search, or no way is found and that rules nothing out", () => {
    const rig = { rig: { like: "aashto car and boat trailer" } };
    const found = ask(rig, { long: 40, deep: 30, track: 5 });
    expect(found.pages[0]?.found?.moves.length ?? 0).toBeGreaterThan(0);
    const text = textOf(found);
    expect(text).toContain("PEG THIS: 40.00 m long and 30.00 m deep");
    expect(text).toContain("the way was checked exactly on this very size, for both bodies");
    const svg = printedRoom(found.pages, ".svg");
    for (const letter of ["A", "B", "C", "D"]) expect(svg).toContain(`>${letter}<`);
    const none = ask(rig, { long: 8, deep: 4, track: 5 });
    expect(none.pages[0]?.found).toBeNull();
    expect(textOf(none)).toContain("On this ground no way was found in 3 moves or fewer; that rules nothing out.");
  });
  it("of a plan names what must be measured, and takes what the plan says", () => {
    const car = { like: "pickup", tows: "box" };
    const plan = (vehicle: object, trailer: object) => {
      const text = JSON.stringify({ sightrail: 1, title: "Room", place: ["anywhere"], vehicles: { car: vehicle }, trailers: { box: trailer } }); // prettier-ignore
      const { value } = resolvedPlan({ file: "plan", text });
      if (!value) throw new Error("no plan");
      return askRoom({
        plan: value,
        named: ["car"],
        wishes: { ...plain, form: "gate", lane: 4 },
        book: rulebook(),
        file: "plan",
        explainedBy: null,
      });
    };
    expect(plan(car, { hitch_to_axle: 2.8, width: 2 }).lacks.join(" ")).toMatch(
      /hitch of vehicle "car".*rear end of trailer "box"/,
    );
    const box = { width: 2, hitch_to_axle: 2.8, rear_overhang: 1.2, greatest_angle: "50 deg" };
    const { pages } = plan({ ...car, hitch: 1.2 }, box);
    expect(textOf({ pages, lacks: [] })).toContain("They may come to 50 degrees, as the plan says.");
    expect(pages[0]?.train?.ring.hitchAngle ?? 9).toBeLessThan((50.01 * Math.PI) / 180);
    expect(printedRoom(pages, ".csv")).toContain("gate 5 m back");
    expect(printedRoom(pages, ".svg")).toContain(">O<");
  });
});

describe("T head", () => {
  it("has a bar as deep as the track is wide, no longer than by single arcs where the mouth is splayed", () => {
    const [page] = ask({ car: { like: "b85 car" } }, { form: "tee", track: 4, splay: 2, clear: 0.2 }).pages;
    expect(page?.found?.solved).toBe("long");
    expect(page?.found?.size.deep).toBe(4);
    // 2 r + length over all and the clearance at both ends (COMPUTED): B85 13.3 m.
    expect(page?.found?.size.long ?? Infinity).toBeLessThan(13.3 + 0.4);
  });
});
