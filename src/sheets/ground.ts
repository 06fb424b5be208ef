// The sheet of the ground: how it lies, which way water runs from what is there, cut and fill, long and cross sections.

import { boxOf } from "../geometry/box.ts";
import type { Table } from "../model/card.ts";
import { featureWords, type Plan } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import type { Sheet, SheetEntry, SheetPart } from "../model/sheet.ts";
import { groundSurface, type WaterWay, waterWays } from "../site/water-way.ts";
import { fallAlong } from "../terrain/flow-path.ts";
import { longestEdges } from "../terrain/long-edges.ts";
import type { Surface } from "../terrain/surface.ts";
import { type SectionTold, sectionsOf } from "./sections.ts";
import { earthFactors } from "../site/earth-states.ts";
import { earthTold } from "./earth-told.ts";
import { distance } from "./two-ties.ts";

const columns = [
  "row",
  "what",
  "run",
  "left",
  "east",
  "north",
  "ground",
  "level",
  "depth",
  "cut_m3",
  "fill_m3",
  "good_to",
];
type Row = Sheet["table"]["rows"][number];
interface Told {
  readonly parts: readonly SheetPart[];
  readonly rows: readonly Row[];
}

/**
 * The sheet for one plan; the ground is that of the levels as they were taken. `densities` is the table of weights and of
 * how earth swells and shrinks; without it volumes are told in one state only.
 */
export function groundSheet(plan: Plan, densities?: Table): Sheet {
  const read: Read = ({ id }) => plan.numbers.values[id] as number;
  const surface = groundSurface(plan.levels, read);
  const head = { title: plan.title, what: "the ground", file: plan.file };
  if (surface === null)
    return {
      ...head,
      parts: [],
      foot: [
        "The ground needs levels at three places or more that do not lie on one line; the plan has not so many. Write level: beside the pegs and spots whose level was taken, or the readings under level_book.",
      ],
      table: { columns, rows: [] },
    };
  const last = plan.stages.length - 1;
  const standing = plan.features.filter(({ from, until }) => from <= last && (until === null || until > last));
  const told = [
    lieOfTheLand(surface),
    waterTold(waterWays(plan, standing, read)),
    earthTold(plan, standing, earthFactors(plan.soil ?? null, densities)),
    ...sectionsTold(sectionsOf(plan, standing, { surface, read })),
  ];
  return {
    ...head,
    parts: told.flatMap(({ parts }) => parts),
    foot,
    table: { columns, rows: told.flatMap(({ rows }) => rows) },
  };
}

const foot = [
  "Between two levels the ground is taken as straight, beyond them it is not guessed. Water is followed over the ground as it was levelled, before anything is built or dug, and as if every drain were blocked.",
  "Cut and fill are told as the earth lies in the ground, and the fill as rolled, unless another state is named. How it swells and shrinks is good to a tenth at best; wet clay, peat and topsoil are no fill. Topsoil is part of the cut. ± holds 19 times in 20.",
  "Mind   Nobody goes into a trench for a level. Find cables and pipes before you dig.",
];

function lieOfTheLand({ net, levels }: Surface): Told {
  const used = [...new Set(Array.from(net.corners))];
  const heights = used.map((number) => levels[number] as number);
  const box = boxOf(used.map((number) => net.points[number] as Point));
  const [longest, middle] = longestEdges(net).map(([a, b]) =>
    distance(net.points[a] ?? [0, 0], net.points[b] ?? [0, 0]),
  );
  const size = box ? `${(box.east - box.west).toFixed(0)} by ${(box.north - box.south).toFixed(0)} m` : "";
  const words = `${used.length} levels over ${size}, from ${Math.min(...heights).toFixed(2)} to ${Math.max(...heights).toFixed(2)}`;
  const gaps = `half of the gaps between levels are under ${(middle ?? 0).toFixed(1)} m, the widest is ${(longest ?? 0).toFixed(1)} m`;
  return { parts: [{ heading: "HOW IT LIES", entries: [{ words, notes: [gaps] }] }], rows: [] };
}

const ends = {
  hollow: "stands in a hollow there",
  level: "stands on level ground there",
  edge: "leaves the levels that were taken",
} as const;

function waterTold(ways: readonly WaterWay[]): Told {
  const entries = ways.map(({ from, path, meets }): SheetEntry => {
    const name = featureWords(from);
    if (path === null) return { words: `From ${name}: no levels were taken round it`, notes: [] };
    const { fall, length } = fallAlong(path);
    const met = meets.map(({ feature, run }) => `meets ${featureWords(feature)} after ${run.toFixed(1)} m`);
    const way = `runs ${length.toFixed(1)} m${headingWords(path.points)}, falling ${fall.toFixed(2)} m`;
    return { words: `From ${name} it ${[way, ...met].join(", ")}, then ${ends[path.end]}`, notes: [] };
  });
  const rows = ways.flatMap(({ from, path }) =>
    (path?.points ?? []).map((at, k): Row => {
      const walked = path === null ? 0 : fallAlong({ ...path, points: path.points.slice(0, k + 1) }).length;
      const level = path?.levels[k] ?? Number.NaN;
      return [
        "water",
        featureWords(from),
        fixed(walked, 2),
        "",
        fixed(at[0], 2),
        fixed(at[1], 2),
        fixed(level, 3),
        "",
        "",
        "",
        "",
        "",
      ];
    }),
  );
  return { parts: entries.length === 0 ? [] : [{ heading: "WHICH WAY WATER RUNS", entries }], rows };
}

const winds = ["east", "north-east", "north", "north-west", "west", "south-west", "south", "south-east"] as const;

/** ` to the south-east` by the plan's own north; nothing where it goes nowhere. */
function headingWords(points: readonly (readonly [number, number])[]): string {
  const [start, end] = [points[0], points.at(-1)];
  if (!start || !end || distance(start, end) === 0) return "";
  const eighth = Math.round((4 * Math.atan2(end[1] - start[1], end[0] - start[0])) / Math.PI);
  return ` to the ${winds[(eighth + winds.length) % winds.length] ?? ""} of the plan`;
}

const fixed = (value: number, decimals: number): number => Number(value.toFixed(decimals));

function sectionsTold(sections: readonly SectionTold[]): readonly Told[] {
  return (["LONG SECTIONS", "CROSS SECTIONS"] as const).flatMap((heading): readonly Told[] => {
    const chosen = sections.filter(({ sort }) => (sort === "long") === (heading === "LONG SECTIONS"));
    if (chosen.length === 0) return [];
    const entries = chosen.map(({ words, notes }) => ({ words, notes }));
    return [{ parts: [{ heading, entries }], rows: chosen.flatMap(({ rows }) => rows) }];
  });
}
