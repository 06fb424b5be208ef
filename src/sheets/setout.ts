// The sheet to peg the plan from: every new corner in the order of the hand, with the checks that show a slip.

import type { Plan } from "../model/plan.ts";
import { featureWords } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Sheet, SheetEntry, SheetPart } from "../model/sheet.ts";
import { type Corner, type CornerCheck, type Staked, stakedOut } from "./corners.ts";
import { suspiciousCheck, suspiciousDifference } from "./peg-checks.ts";
import { checkWords, differenceWords, pegWords } from "./peg-words.ts";
import { type Cell, checkRow, columns, markRow, pegRow } from "./setout-rows.ts";
import type { Check, Pegged, SetOutWork } from "./pegged.ts";
import { bestTies, distance, type Mark, marksOf, nineteenInTwenty } from "./two-ties.ts";

/** The sheet for one plan. */
export function setOutSheet(plan: Plan): Sheet {
  const read: Read = ({ id }) => plan.numbers.values[id] as number;
  const marks = marksOf(plan);
  const head = { title: plan.title, what: "setting out", file: plan.file };
  const empty = (sentence: string): Sheet => ({ ...head, parts: [], foot: [sentence], table: { columns, rows: [] } });
  if (marks.length < 2)
    return empty(
      "Setting out needs two pegs of the survey that stand on the ground; the plan has not two. Write them under survey: stations, as A: {at: [0, 0]} and B: {line_to: A, tape: 30.20}.",
    );
  const staked = stakedOut(plan, read);
  if (staked.length === 0)
    return empty(
      "Nothing in the plan is still to be built. Give what is to be pegged from: with the stage that makes it.",
    );
  const work = { plan, marks, base: baseOf(plan, marks) };
  const pegs = pegsOf(staked, work);
  const pegged = staked.map((one, k) => ({ ...one, pegs: pegs[k] as readonly Pegged[] }));
  const used = pegs.flat().flatMap(({ ties }) => [...(ties?.marks ?? [])]);
  const first = tellMarks(
    marks.filter((mark) => used.includes(mark)),
    work,
  );
  const told = pegged.map((one) => tellFeature(one, work));
  return {
    ...head,
    parts: [...first.parts, ...told.map(({ part }) => part)],
    foot: [...baseFoot(work), ...foot, tapeFoot(plan)],
    table: { columns, rows: [...first.rows, ...told.flatMap(({ rows }) => rows)] },
  };
}

const foot = [
  "Left and right are as you look from the first mark named to the second. Tapes held level; lengths are on the flat. Dig and fill go from the ground as it lies down or up to what is named; the bed under a pipe, and topsoil where nothing is dug, come on top.",
  "How near a peg comes (±) and how deep to dig (±) hold 19 times in 20, against the plan as it was surveyed; a dig outside the levels that were taken is not given. A check that is out by more than stands beside it happens by honest taping 1 time in 370: find the slip before you go on.",
  "Mind   Find cables and pipes before a peg or pin is driven or a spade goes in: records, locator, hand-dug hole. Treat all as live. Nobody goes into a dig whose sides nothing holds.",
];

/** Below so much over ten metres nobody sees it on a tape (mm). */
const unseen = 0.5;

/** What a long or warm tape shows in place of the lengths of the sheet: those are true ones. */
function tapeFoot({ tape }: Plan): string {
  const overTen = Math.abs(tape?.shortPerMetre ?? 0) * 10_000;
  const always =
    "Lengths are true ones, on a tape that is right at 20 C. A steel tape in the sun is long and shows less: at 40 C 2 mm less in 10 m; a tape that is worn or mended may be out by more.";
  if (!tape || overTen < unseen) return `${always} Hold it against another before you start.`;
  const way = tape.shortPerMetre > 0 ? "less" : "more";
  return `${always} The tape of the survey, as warm as it was then, shows ${overTen.toFixed(1)} mm ${way} in 10 m than is true: with it, look for that much ${way}.`;
}

function baseFoot({ base }: SetOutWork): readonly string[] {
  return base ? [`Runs and offsets are along ${base[0].name} to ${base[1].name}, from ${base[0].name}.`] : [];
}

function baseOf(plan: Plan, marks: readonly Mark[]): readonly [Mark, Mark] | null {
  const [from, to] = (plan.baseline ?? []).map((name) => marks.find((mark) => mark.name === name));
  return from && to ? [from, to] : null;
}

/** Every feature in turn; a corner that is held serves those after it as a mark where the survey has none near. */
function pegsOf(staked: readonly Staked[], work: SetOutWork): readonly (readonly Pegged[])[] {
  const fresh: Mark[] = [];
  return staked.map(({ corners }) => {
    const pegs: Pegged[] = [];
    let waiting = corners.map((_, index) => index);
    for (;;) {
      const held = waiting.find((index) => tied(corners, index, fresh, work) !== null);
      const next = held ?? waiting[0];
      if (next === undefined) return pegs;
      const peg = tied(corners, next, fresh, work) ?? loose(corners, next);
      if (peg.ties) fresh.push({ name: peg.corner.name, at: peg.at, moves: peg.moves, aside: peg.aside });
      pegs.push(peg);
      waiting = waiting.filter((index) => index !== next);
    }
  });
}

/** A corner as it can be pegged now; null where nothing that stands holds it yet. */
function tied(corners: readonly Corner[], index: number, fresh: readonly Mark[], work: SetOutWork): Pegged | null {
  const corner = corners[index] as Corner;
  const { at, name, stands } = corner;
  const { marks, plan } = work;
  const mark = stands ? marks.find((one) => one.name === name) : undefined;
  if (mark)
    return { index, corner, ties: null, at, moves: mark.moves, aside: mark.aside, dig: corner.dig?.(0) ?? null };
  const ties = plan.tape ? bestTies(at, { survey: marks, pegged: fresh }, { tape: plan.tape, peg: name }) : null;
  if (ties === null) return null;
  const { moves, aside, within } = ties;
  return { index, corner, ties, at, moves, aside, dig: corner.dig?.(within / nineteenInTwenty) ?? null };
}

function loose(corners: readonly Corner[], index: number): Pegged {
  const corner = corners[index] as Corner;
  return { index, corner, ties: null, at: corner.at, moves: new Map(), aside: [0, 0], dig: corner.dig?.(0) ?? null };
}

interface Told {
  readonly part: SheetPart;
  readonly rows: readonly (readonly Cell[])[];
}

/** Before anything: the marks that will be used, each taped to the nearest before it. Pegs get knocked. */
function tellMarks(used: readonly Mark[], { plan: { tape } }: SetOutWork) {
  const checks = used.slice(1).flatMap((to, k): readonly Check[] => {
    const [from] = used.slice(0, k + 1).sort((a, b) => distance(a.at, to.at) - distance(b.at, to.at));
    if (!from || !tape || distance(from.at, to.at) > tape.reach) return [];
    const most = suspiciousCheck([from, to], tape);
    return [{ from: from.name, to: to.name, is: "side", length: distance(from.at, to.at), most }];
  });
  const entries = checks.map((check): SheetEntry => ({
    words: `Tape ${check.from} to ${check.to} ${checkWords(check)}`,
    notes: [],
  }));
  const heading = "THE MARKS FIRST, whether they still stand where they stood";
  return { parts: checks.length === 0 ? [] : [{ heading, entries }], rows: checks.map(markRow) };
}

function tellFeature({ feature, checks, pegs }: Staked & { readonly pegs: readonly Pegged[] }, work: SetOutWork): Told {
  const { plan } = work;
  const words = featureWords(feature);
  const entries: SheetEntry[] = [];
  const rows: (readonly Cell[])[] = [];
  pegs.forEach((peg, k) => {
    const before = pegs.slice(0, k);
    const checked = checks.flatMap(({ ends, is }) => {
      const to = ends.includes(peg.index) ? before.find(({ index }) => ends.includes(index)) : undefined;
      return to ? (checkBetween(peg, to, is, plan) ?? []) : [];
    });
    entries.push(pegWords(peg, checked, work));
    rows.push(pegRow(words, peg, work), ...checked.map((check) => checkRow(words, check)));
  });
  const alike = twoDiagonals(checks, pegs, plan);
  if (alike) entries.push({ words: alike, notes: [] });
  const stage = plan.stages[feature.from];
  return { part: { heading: `${words.toUpperCase()}${stage ? `, stage "${stage}"` : ""}`, entries }, rows };
}

const held = (peg: Pegged): boolean => peg.ties !== null || peg.corner.stands;

function checkBetween(peg: Pegged, to: Pegged, is: CornerCheck["is"], { tape }: Plan): Check | null {
  const length = distance(peg.at, to.at);
  const checksNothing = peg.ties?.marks.some(({ name }) => name === to.corner.name) ?? false;
  if (!tape || !(length > 0) || length > tape.reach || checksNothing || !held(peg) || !held(to)) return null;
  return { from: peg.corner.name, to: to.corner.name, is, length, most: suspiciousCheck([peg, to], tape) };
}

/** Two diagonals of one figure are compared with each other: the tape's own error falls out. */
function twoDiagonals(checks: readonly CornerCheck[], pegs: readonly Pegged[], { tape }: Plan): string | null {
  const [one, two, third] = checks
    .filter(({ is }) => is === "diagonal")
    .map(({ ends }) => ends.map((k) => pegs.find(({ index }) => index === k)) as [Pegged, Pegged]);
  if (!tape || !one || !two || third || ![...one, ...two].every(held)) return null;
  const names = (pair: readonly [Pegged, Pegged]) => `${pair[0].corner.name} to ${pair[1].corner.name}`;
  return differenceWords([names(one), names(two)], suspiciousDifference(one, two, tape));
}
