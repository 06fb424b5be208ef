// The list to take outside: what the plan could not decide or does not say, worst first.

import type { Deciding, DoubtShare, Finding, Need } from "../model/finding.ts";
import type { Plan } from "../model/plan.ts";
import type { Dimension } from "../model/quantity.ts";
import type { Sheet, SheetEntry } from "../model/sheet.ts";
import { shown, words } from "../model/units.ts";
import { bestSpareTape, type SpareTape } from "./spare-tape.ts";

/** A plan that was checked. */
export interface Worked {
  readonly plan: Plan;
  readonly findings: readonly Finding[];
  readonly needs: readonly Need[];
  readonly deciding: readonly Deciding[];
}

type Row = Sheet["table"]["rows"][number];
interface Told {
  readonly entry: SheetEntry;
  readonly rows: readonly Row[];
}

/** Half-width that holds 19 times in 20, in standard uncertainties. */
const nineteenInTwenty = 2;
const columns = ["order", "what", "which", "about_m", "good_to_19_in_20", "unit", "share_of_doubt", "why", "line"];

/** The list for one plan. Findings and needs come worst first and stay so. */
export function remeasureSheet(worked: Worked): Sheet {
  const open = worked.findings.filter(({ verdict }) => verdict === "undecided");
  const again = open.filter(({ decided_by }) => decided_by === "survey").map((finding) => tellFinding(finding, worked));
  const others = open.filter(({ decided_by }) => decided_by !== "survey").map(tellOther);
  const outside = worked.needs.filter(({ reason }) => reason === "missing").map(tellNeed);
  const ask = worked.needs.filter(({ reason }) => reason !== "missing" && reason !== "gave-up").map(tellNeed);
  const parts = [
    { heading: "MEASURE AGAIN, worst first", told: again },
    { heading: "MEASURE FOR THE FIRST TIME, worst first", told: outside },
    { heading: "LOOK OR ASK", told: ask },
    { heading: "NO TAPE CAN SETTLE", told: others },
  ].filter(({ told }) => told.length > 0);
  const all = parts.flatMap(({ told }) => told);
  return {
    title: worked.plan.title,
    what: "what to measure",
    file: worked.plan.file,
    parts: parts.map(({ heading, told }) => ({ heading, entries: told.map(({ entry }) => entry) })),
    foot: all.length === 0 ? ["Nothing is missing and nothing hangs on the tape."] : foot,
    table: { columns, rows: all.flatMap(({ rows }, k) => rows.map((row) => [k + 1, ...row])) },
  };
}

const foot = [
  "Figures after ± hold 19 times in 20. What one more tape would take away is worked out from the plan's own net; tape it twice.",
  "Mind   Measure up to no overhead wire, go into no trench, chamber or tank for a figure, and keep off the road.",
];

function tellFinding(finding: Finding, { plan, deciding }: Worked): Told {
  const known = deciding.find(({ fingerprint }) => fingerprint === finding.fingerprint);
  const spare = known ? bestSpareTape(plan, known) : null;
  const said = (u: number) => plusMinus(u, finding.dimension, finding.shown_in);
  const target = known ? [targetWords(known, said)] : [];
  const line = finding.at[0]?.line ?? "";
  return {
    entry: {
      words: `${finding.sentence}${finding.stakes === "safety" ? " Somebody can be hurt." : ""}`,
      notes: [
        ...target,
        ...finding.doubts.map((doubt) => shareWords(doubt, plan)),
        ...(known && spare ? [spareWords(spare, known, said)] : []),
      ],
    },
    rows: [
      ...finding.doubts.map((doubt): Row => {
        const { u, unit } = neededIn(doubt, plan);
        return ["again", doubt.words, "", u, unit, doubt.share, finding.sentence, line];
      }),
      ...(spare ? [spareRow(spare, finding, line)] : []),
    ],
  };
}

/** A doubt that must shrink to less than this part of itself is out of reach of any tape (a choice). */
const outOfReach = 0.05;

function targetWords({ u, wantedU }: Deciding, said: (u: number) => string): string {
  if (wantedU < outOfReach * u)
    return `It is good to ${said(u)} and stands right at what is wanted, so that no measuring will decide it: plan for a little more.`;
  return `It is good to ${said(u)}; ${said(wantedU)} would decide it.`;
}

function spareRow({ from, to, length }: SpareTape, finding: Finding, line: number | string): Row {
  return ["one more tape", `${from} to ${to}`, round(length, 2), "", "m", "", finding.sentence, line];
}

function shareWords(doubt: DoubtShare, plan: Plan): string {
  const carries = `${doubt.words} carries ${Math.round(100 * doubt.share)} parts in 100 of the doubt`;
  if (doubt.needed === null) return `-  ${carries}; better alone it does not decide`;
  const dimension = dimensionOf(doubt, plan);
  return `-  ${carries}; ${plusMinus(doubt.needed, dimension)} of it alone would decide`;
}

function dimensionOf(doubt: DoubtShare, plan: Plan): Dimension {
  return plan.numbers.causes.find((cause) => cause.words === doubt.words)?.dimension ?? "length";
}

function neededIn(doubt: DoubtShare, plan: Plan): { readonly u: number | string; readonly unit: string } {
  const dimension = dimensionOf(doubt, plan);
  const { unit, factor } = shown(dimension, dimension === "length" ? "mm" : undefined);
  if (doubt.needed === null) return { u: "", unit };
  return { u: round(nineteenInTwenty * doubt.needed * factor, 1), unit };
}

function spareWords(spare: SpareTape, known: Deciding, said: (u: number) => string): string {
  if (spare.after > worthwhile * known.u) return "No one more tape between pegs would help much.";
  const enough = spare.after <= known.wantedU ? "which decides it if the reading stays" : "not enough by itself";
  const tape = `${spare.from} to ${spare.to}, about ${spare.length.toFixed(2)} m`;
  return `One more tape would help most: ${tape}; then it is good to ${said(spare.after)}, ${enough}.`;
}

/** A tape that leaves more than this part of the doubt is not worth the walk (a choice). */
const worthwhile = 0.95;

function tellOther(finding: Finding): Told {
  const note =
    finding.decided_by === "build"
      ? "The doubt is that of building: allow more room in the plan, or say under build how near it will be built."
      : "The doubt is that of our own search.";
  return {
    entry: { words: finding.sentence, notes: [note] },
    rows: [["allow more", note, "", "", "", "", finding.sentence, finding.at[0]?.line ?? ""]],
  };
}

function tellNeed(need: Need): Told {
  const count = need.waits.length;
  const waits = count === 0 ? "" : count === 1 ? "; 1 check waits" : `; ${count} checks wait`;
  const unit = need.unit === "" || need.unit === "1" ? "" : ` (${need.unit})`;
  const what = need.reason === "missing" ? "first time" : "look or ask";
  const line = need.at?.line ?? "";
  return {
    entry: { words: `${need.asks}${unit}${waits}${danger(need.stakes)}`, notes: [] },
    rows: [[what, need.asks, "", "", need.unit, "", need.waits.join(" "), line]],
  };
}

function danger(stakes: Need["stakes"]): string {
  return stakes === "safety" ? "; somebody can be hurt" : "";
}

/** `± 20 mm`: lengths below half a metre in millimetres, the rest as the reading is shown. */
function plusMinus(u: number, dimension: Dimension, shownIn?: string): string {
  const half = nineteenInTwenty * u;
  const small = dimension === "length" && half < 0.5;
  const unit = small ? "mm" : shownIn === "1 in" ? "%" : shownIn;
  return `± ${words(half, dimension, { shownIn: unit, decimals: small ? (half < 0.01 ? 1 : 0) : 2 })}`;
}

function round(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
