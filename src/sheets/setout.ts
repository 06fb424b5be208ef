// The sheet to peg the plan from: every new corner in the order of the hand, with the checks that show a slip.

import type { Plan } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { featureWords } from "../model/plan.ts";
import type { Sheet, SheetEntry } from "../model/sheet.ts";
import { type Corner, type Staked, stakedOut } from "./corners.ts";
import { bestTies, checkDoubt, distance, type Mark, marksOf, type Moves, type TwoTies } from "./two-ties.ts";

/** Half-width that holds 19 times in 20, and the one that honest work passes 1 time in 370, in standard uncertainties. */
const nineteenInTwenty = 2;
const suspicious = 3;

const columns = [
  "row",
  "feature",
  "peg",
  "east",
  "north",
  "baseline",
  "run",
  "left",
  "stand_at",
  "tape",
  "swing_from",
  "swing",
  "side",
  "cut_deg",
  "good_to_mm",
  "level",
  "dig",
  "check_to",
  "check",
  "look_again_over_mm",
];

type Cell = string | number;
interface Work {
  readonly marks: readonly Mark[];
  readonly plan: Plan;
  readonly base: readonly [Mark, Mark] | null;
}
interface Pegged {
  readonly corner: Corner;
  readonly ties: TwoTies | null;
  readonly at: Point;
  readonly moves: Moves;
}

/** The sheet for one plan. `read` reads the plan's own values. */
export function setOutSheet(plan: Plan): Sheet {
  const read: Read = ({ id }) => plan.numbers.values[id] as number;
  const marks = marksOf(plan);
  const head = { title: plan.title, what: "setting out", file: plan.file };
  const empty = (sentence: string): Sheet => ({ ...head, parts: [], foot: [sentence], table: { columns, rows: [] } });
  if (marks.length < 2)
    return empty("Setting out needs two pegs of the survey that stand on the ground; the plan has not two.");
  const staked = stakedOut(plan, read);
  if (staked.length === 0) return empty("Nothing in the plan is still to be built.");
  const work = { plan, marks, base: baseOf(plan, marks) };
  const told = staked.map((one) => tellFeature(one, work));
  return {
    ...head,
    parts: told.map(({ heading, entries }) => ({ heading, entries })),
    foot: [...baseFoot(work), ...foot],
    table: { columns, rows: told.flatMap(({ rows }) => rows) },
  };
}

const foot = [
  "Left and right are as you look from the first mark named to the second. Tapes held level; lengths are on the flat. Dig and fill go to the finished top: add the layers under it.",
  "How near a peg comes (±) holds 19 times in 20, against the plan as it was surveyed. A check that is out by more than stands beside it happens by honest taping 1 time in 370: find the slip before you go on.",
  "Mind   Find cables and pipes before a peg or pin is driven: records, locator, hand-dug hole. Treat all as live.",
];

function baseFoot({ base }: Work): readonly string[] {
  return base ? [`Runs and offsets are along ${base[0].name} to ${base[1].name}, from ${base[0].name}.`] : [];
}

function baseOf(plan: Plan, marks: readonly Mark[]): readonly [Mark, Mark] | null {
  const [from, to] = (plan.baseline ?? []).map((name) => marks.find((mark) => mark.name === name));
  return from && to ? [from, to] : null;
}

function tellFeature({ feature, corners, checks }: Staked, work: Work) {
  const { plan, marks } = work;
  const pegged = corners.map((corner): Pegged => {
    const { at, name } = corner;
    const mark = corner.stands ? marks.find((one) => one.name === name) : undefined;
    const ties = mark || !plan.tape ? null : bestTies(at, marks, { tape: plan.tape, peg: name });
    return { corner, ties, at, moves: mark ? standing(mark) : (ties?.moves ?? new Map()) };
  });
  const words = featureWords(feature);
  const entries: SheetEntry[] = [];
  const rows: Cell[][] = [];
  pegged.forEach((peg, k) => {
    const own = checks.filter(([a, b]) => Math.max(a, b) === k).map(([a]) => pegged[a] as Pegged);
    const checked = own.flatMap((to) => checkBetween(peg, to, plan) ?? []);
    entries.push(tellPeg(peg, checked, work));
    rows.push(pegRow(words, peg, work), ...checked.map((check) => checkRow(words, peg, check)));
  });
  const stage = plan.stages[feature.from];
  return { heading: `${words.toUpperCase()}${stage ? `, stage "${stage}"` : ""}`, entries, rows };
}

function standing({ sways: [east, north] }: Mark): Moves {
  const causes = new Set([...east.keys(), ...north.keys()]);
  return new Map([...causes].map((cause) => [cause, [east.get(cause) ?? 0, north.get(cause) ?? 0] as const]));
}

interface Check {
  readonly to: string;
  readonly length: number;
  readonly most: number;
}

function checkBetween(a: Pegged, b: Pegged, { tape }: Plan): Check | null {
  const held = (peg: Pegged) => peg.ties !== null || peg.corner.stands;
  const length = distance(a.at, b.at);
  if (!tape || !(length > 0) || !held(a) || !held(b)) return null;
  return { to: b.corner.name, length, most: suspicious * checkDoubt([a, b], tape) };
}

const metres = (length: number): string => length.toFixed(2);
const millimetres = (length: number): number => Math.ceil(1000 * length - 1e-9);

function tellPeg({ corner, ties, at }: Pegged, checks: readonly Check[], { base }: Work): SheetEntry {
  const then = checks.map(
    ({ to, length, most }) =>
      `then check to ${to} ${metres(length)}, look again if out by more than ${millimetres(most)} mm`,
  );
  if (corner.stands) return { words: [`${corner.name} stands already`, ...then].join(", "), notes: [] };
  const along = base ? [`or by offset: ${offsetWords(at, base)}`] : [];
  if (ties === null)
    return {
      words: `Peg ${corner.name}: no two marks within the tape's reach that cut; put a mark nearer first`,
      notes: along,
    };
  const [a, b] = ties.marks;
  const hand = [
    `Stand at ${a.name}, tape ${metres(ties.lengths[0])}`,
    `swing to ${metres(ties.lengths[1])} from ${b.name} on the ${ties.side} of ${a.name} to ${b.name}`,
    `peg ${corner.name}`,
    ...digWords(corner),
    ...then,
  ].join(", ");
  const good = `good to ± ${millimetres(nineteenInTwenty * ties.u)} mm; the tapes cut at ${degrees(ties.cut)} deg`;
  return { words: hand, notes: [...along, good] };
}

function digWords({ level, dig }: Corner): readonly string[] {
  const top = level === null ? [] : [`top ${level.toFixed(3)}`];
  if (dig === null) return top;
  return [...top, Math.abs(dig) < 0.005 ? "no dig" : `${dig > 0 ? "dig" : "fill"} ${metres(Math.abs(dig))}`];
}

const degrees = (angle: number): string => ((angle * 180) / Math.PI).toFixed(0);

function runAndOffset(at: Point, [from, to]: readonly [Mark, Mark]): readonly [number, number] {
  const length = distance(from.at, to.at);
  const [e, n] = [(to.at[0] - from.at[0]) / length, (to.at[1] - from.at[1]) / length];
  const [east, north] = [at[0] - from.at[0], at[1] - from.at[1]];
  return [east * e + north * n, north * e - east * n];
}

function offsetWords(at: Point, base: readonly [Mark, Mark]): string {
  const [run, left] = runAndOffset(at, base);
  return `run ${metres(run)}, ${left >= 0 ? "left" : "right"} ${metres(Math.abs(left))}`;
}

const fixed = (value: number, decimals: number): number => Number(value.toFixed(decimals));

function pegRow(feature: string, { corner, ties, at }: Pegged, { base }: Work): Cell[] {
  const [run, left] = base ? runAndOffset(at, base).map((length) => fixed(length, 2)) : ["", ""];
  const line = base ? `${base[0].name} to ${base[1].name}` : "";
  const tied: Cell[] = ties
    ? [
        ties.marks[0].name,
        fixed(ties.lengths[0], 2),
        ties.marks[1].name,
        fixed(ties.lengths[1], 2),
        ties.side,
        Number(degrees(ties.cut)),
        millimetres(nineteenInTwenty * ties.u),
      ]
    : ["", "", "", "", "", "", ""];
  const { level, dig } = corner;
  return [
    corner.stands ? "stands" : "peg",
    feature,
    corner.name,
    fixed(at[0], 3),
    fixed(at[1], 3),
    line,
    run ?? "",
    left ?? "",
    ...tied,
    level === null ? "" : fixed(level, 3),
    dig === null ? "" : fixed(dig, 2),
    "",
    "",
    "",
  ];
}

function checkRow(feature: string, { corner }: Pegged, { to, length, most }: Check): Cell[] {
  const none: Cell[] = Array.from({ length: 14 }, () => "");
  return ["check", feature, corner.name, ...none, to, fixed(length, 2), millimetres(most)];
}
