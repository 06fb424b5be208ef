import { SaxesParser } from "saxes";
import { describe, expect, it } from "vitest";
import { resolvedPlan, roomWork, rulebook } from "../../src/index.ts";
import { posesAlong } from "../../src/motion/pose.ts";
import { faultsOf, validatorOf } from "../schemas/load-schemas.ts";

const { askRoom, printedRoom } = await roomWork();
const wishes = {
  form: "rectangle",
  entry: "middle",
  walls: "none",
  track: null,
  splay: 0,
  clear: null,
  moves: 3,
  long: 12,
  deep: null,
  lane: null,
  setback: null,
} as const;

function pagesOf(more: Partial<Parameters<typeof askRoom>[0]["wishes"]> = {}, names = ["small car"]) {
  const vehicles = Object.fromEntries(names.map((name) => [name, { like: "b85 car" }]));
  const text = JSON.stringify({ sightrail: 1, title: "Room", place: ["anywhere"], vehicles });
  const { value } = resolvedPlan({ file: "vehicles", text });
  if (!value) throw new Error("no plan");
  return askRoom({
    plan: value,
    named: names,
    wishes: { ...wishes, ...more },
    book: rulebook(),
    file: "the library",
    explainedBy: null,
    shown: { "small car": 'a <car> & "lorry"' },
  }).pages;
}

const pages = pagesOf();

function textsIn(svg: string): readonly string[] {
  const found: string[] = [];
  const parser = new SaxesParser();
  let inText = false;
  parser.on("opentag", ({ name }) => (inText = name === "text"));
  parser.on("text", (text) => inText && text.trim() !== "" && found.push(text));
  parser.on("error", (error) => {
    throw error;
  });
  parser.write(svg).close();
  return found;
}

describe("the drawing", () => {
  const svg = printedRoom(pages, ".svg");
  const texts = textsIn(svg);
  it("is well-formed, and a name in it is only text", () => {
    expect(texts[0]).toBe('A <car> & "lorry": room to turn round');
  });
  it("letters the pegs, measures both sides and the track, and numbers the moves", () => {
    const deep = pages[0]?.found?.size.deep ?? 0;
    for (const wanted of ["A", "B", "C", "D", "12.00 m", `${deep.toFixed(2)} m`, "3.00 m", "1", "2", "3"])
      expect(texts, wanted).toContain(wanted);
    expect(texts.some((text) => text.startsWith("tightest 0.3"))).toBe(true);
  });
  it("is to scale: the long side is as many millimetres as its metres over the scale", () => {
    const scale = Number(/1 : (\d+) on A4/.exec(svg)?.[1]);
    // Dots of the pegs A and B, 12 m apart, are the first two small rings with a heavy line.
    const [a, b] = [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="1.1" fill="#faf6ea"/g)].map(
      ([, x, y]) => [Number(x), Number(y)] as const,
    );
    if (!a || !b) throw new Error("no pegs");
    expect(Math.abs(Math.hypot(a[0] - b[0], a[1] - b[1]) - 12_000 / scale)).toBeLessThan(0.03);
  });
  it("leaves the ends of the track open, on a lay-by at both ends", () => {
    const heavy = (text: string) => text.match(/stroke-width="0.7" stroke-linejoin/g)?.length ?? 0;
    expect(heavy(svg)).toBe(1);
    expect(heavy(printedRoom(pagesOf({ entry: "along" }), ".svg"))).toBe(2);
  });
  it("gives the same bytes for the same question", () => {
    expect(printedRoom(pagesOf(), ".svg")).toBe(svg);
  });
});

describe("the drawing of a gate", () => {
  it("letters the posts and measures opening, lane and set-back", () => {
    const pages = pagesOf({ form: "gate", lane: 4, clear: 0, setback: 3.19 });
    const texts = textsIn(printedRoom(pages, ".svg"));
    // B85, 5.19 m from the middle of the lane: 3.00 m (COMPUTED, brute force agreed).
    for (const wanted of ["P", "Q", "3.00 m", "4.00 m", "3.19 m"]) expect(texts, wanted).toContain(wanted);
  });
});

describe("the page", () => {
  it("holds drawing and notes, may load and run nothing, and has no name in its markup", () => {
    const html = printedRoom(pages, ".html");
    expect(html).toContain("<svg");
    expect(html).toContain("PEG THIS");
    expect(html).toContain("default-src &#39;none&#39;");
    expect(html).not.toMatch(/<car>|<script/);
  });
});

describe("the JSON", () => {
  const validate = validatorOf("room.schema.json");
  it.each([
    ["a rectangle", {}],
    ["a curve", { long: null }],
    ["a given size", { deep: 9 }],
    ["a loop", { form: "circle", long: null }],
    ["a gate", { form: "gate" }],
    ["nothing found", { track: 2 }],
    ["walls", { walls: "all", track: 3.6 }],
  ] as const)("of %s has its form", (_, more) => {
    const data: unknown = JSON.parse(printedRoom(pagesOf(more), ".json"));
    expect(faultsOf(validate, data)).toEqual([]);
  });
  it("of a vehicle with its trailer has its form", () => {
    const text = JSON.stringify({ sightrail: 1, title: "Room", place: ["anywhere"], vehicles: { rig: { like: "aashto car and boat trailer" } } }); // prettier-ignore
    const { value } = resolvedPlan({ file: "vehicles", text });
    if (!value) throw new Error("no plan");
    const request = { plan: value, named: ["rig"], book: rulebook(), file: "the library", explainedBy: null };
    const train = askRoom({ ...request, wishes: { ...wishes, form: "gate", lane: 5 } }).pages;
    expect(faultsOf(validate, JSON.parse(printedRoom(train, ".json")))).toEqual([]);
    expect(train[0]?.train?.gate?.rows).toHaveLength(10);
    const turn = askRoom({ ...request, wishes: { ...wishes, long: 40, deep: 30, track: 5 } }).pages;
    expect(turn[0]?.found).not.toBeNull();
    expect(faultsOf(validate, JSON.parse(printedRoom(turn, ".json")))).toEqual([]);
  });
  it("of several vehicles has a page for all", () => {
    const data = JSON.parse(printedRoom(pagesOf({}, ["small car", "other car"]), ".json")) as {
      pages: { vehicle: string }[];
    };
    expect(faultsOf(validate, data)).toEqual([]);
    expect(data.pages.map(({ vehicle }) => vehicle)).toEqual(['a <car> & "lorry"', "other car", "all"]);
  });
  it("holds a path that ends where it began, the other way round (2 cm, 0.01 rad)", () => {
    const data = JSON.parse(printedRoom(pages, ".json")) as {
      pages: { found: { start: [number, number, number]; path: { curvature: number; length: number }[] } }[];
    };
    const found = data.pages[0]?.found;
    if (!found) throw new Error("nothing found");
    const [x, y, heading] = found.start;
    const end = posesAlong({ x, y, heading }, found.path).at(-1);
    expect(Math.hypot((end?.x ?? 9) - x, (end?.y ?? 9) - y)).toBeLessThan(0.02);
    expect(Math.abs(Math.cos((end?.heading ?? 0) - heading) + 1)).toBeLessThan(1e-4);
  });
});
