// The survey as things that rules can be about: the whole of it, each peg that was measured in, each run of levels.

import { type BlunderFinding, findBlunder } from "../adjustment/blunder.ts";
import { standingOut } from "../adjustment/gauss-newton.ts";
import { misfitOf } from "../adjustment/misfit.ts";
import type { Adjusted } from "../adjustment/network.ts";
import type { Place } from "../model/path.ts";
import type { Feature, LevelRun, Properties } from "../model/plan.ts";
import type { LevelBook, OpenRun } from "./level-book.ts";
import { child } from "./node.ts";
import type { BookWriter, LivePoint } from "./number-book.ts";
import { cutsOf, type SurveyRead } from "./read-survey.ts";
import { firstAt, type Texts } from "./sources.ts";
import type { StationPlan } from "./station-plan.ts";
import { difference, exact, quotient, scaled, type Uncertain } from "./sway.ts";

export interface SurveyedWork {
  readonly texts: Texts;
  readonly survey: SurveyRead;
  readonly levels: Pick<LevelBook, "runs" | "missed" | "open">;
  /** The level itself, where the plan says how its two-peg test came out. */
  readonly level: Feature | null;
  readonly ground: Feature | null;
  readonly pegs: ReadonlyMap<string, LivePoint>;
  readonly book: BookWriter;
}

/** Everything of the survey that a rule can be about, in the order of the plan. */
export function surveyedThings(work: SurveyedWork): readonly Feature[] {
  const { adjusted } = work.survey;
  const whole = adjusted === null ? [] : [surveyThing(work, adjusted)];
  const pegs = adjusted === null ? [] : work.survey.plans.flatMap((plan) => pegThing(plan, work, adjusted));
  const runs = work.levels.runs.map((run, k) => runThing(run, work.levels.missed[k] ?? exact(run.misclosure), work));
  const open = work.levels.open.map((run) => openThing(run, work));
  const others = [work.level, work.ground].filter((one) => one !== null);
  return [...whole, ...pegs, ...tapedLines(work), ...runs, ...open, ...others];
}

export const thing = (kind: string, name: string, place: Place): Feature => ({
  kind,
  name,
  place,
  existing: true,
  from: 0,
  until: null,
  shape: null,
  properties: {},
});

function surveyThing({ texts, survey, book }: SurveyedWork, adjusted: Adjusted): Feature {
  const first = survey.plans[0] as StationPlan;
  const place: Place = { file: first.place.file, path: ["survey"] };
  const misfit = misfitOf(adjusted);
  const tape = firstAt(texts, "survey", "tape");
  const stated = child(tape, "class") !== null || child(tape, "plus_minus") !== null;
  return {
    ...thing("survey", "pegs and tapes", place),
    properties: {
      taped: survey.observed.some(({ observation }) => observation.kind === "distance"),
      tape_class: stated,
      ...(misfit === null ? {} : { misfit: book.seal(exact(misfit), "count", place), suspects: suspects(survey) }),
    },
  };
}

/** Chances with which honest measurements stay within the tests that name a suspect: common choices of the field, MEMORY. */
const honest = { global: 0.95, single: 0.999 } as const;
const mostNamed = 12;

/** Which measurement is wrong, as far as it can be told; empty where none stands out. */
function suspects(survey: SurveyRead): string {
  const { adjusted, network, observed } = survey;
  if (adjusted === null || network === null) return "";
  const found = findBlunder(adjusted, honest);
  const wild = found.is === "none-alone" ? standingOut(network).map(({ id }) => id) : [];
  const is = wild.length === 1 ? "one" : found.is;
  const words = (wild.length > 0 ? wild : found.suspects).flatMap((id) => {
    const k = observed.findIndex((one) => one.observation.id === id);
    const one = observed[k];
    return one === undefined ? [] : [one.words + (found.is === "one" ? wrongBy(adjusted, k) : "")];
  });
  const unique = [...new Set(words)];
  const shown = unique.slice(0, mostNamed).join(", ");
  const more = unique.length > mostNamed ? ` and ${unique.length - mostNamed} more` : "";
  return words.length === 0 ? "" : suspectWords(is, `${shown}${more}`);
}

function suspectWords(is: BlunderFinding["is"], named: string): string {
  if (is === "one") return `measure again ${named}`;
  if (is === "several") return `one of these is wrong and it cannot be told which: ${named}`;
  return `no single one explains it; look first at ${named}`;
}

/** Size of a single blunder: -v / r (Baarda 1968, MEMORY). */
function wrongBy(adjusted: Adjusted, k: number): string {
  const { residual, redundancy } = adjusted.observations[k] as Adjusted["observations"][number];
  const by = -residual / redundancy;
  return Math.abs(by) < 0.005 ? "" : `; it looks ${Math.abs(by).toFixed(2)} too ${by > 0 ? "large" : "small"}`;
}

/** A blunder in a measurement with less redundancy than this would have to be enormous to show (method tolerance). */
const seen = 0.01;

function pegThing(plan: StationPlan, { survey, pegs, book }: SurveyedWork, adjusted: Adjusted): readonly Feature[] {
  const peg = pegs.get(plan.name);
  if (peg === undefined) return [];
  const own = survey.observed.flatMap((one, k) => {
    const { observation } = one;
    const given = observation.kind === "east" || observation.kind === "north" || observation.u === 0;
    return plan.observed.includes(one) && !given ? [adjusted.observations[k] as Adjusted["observations"][number]] : [];
  });
  const [cut] = cutsOf(plan, adjusted.coordinates);
  const ends = cut?.ties.map((name) => pegs.get(name));
  const tied: Properties =
    ends?.[0] === undefined || ends[1] === undefined
      ? { tied: false }
      : { tied: true, tie_from: book.sealPoint(ends[0]), tie_to: book.sealPoint(ends[1]) };
  return [
    {
      ...thing("peg", plan.name, plan.place),
      shape: { form: "point", at: book.sealPoint(peg) },
      properties: {
        measured: own.length > 0,
        checked: own.every(({ redundancy }) => redundancy > seen),
        ...tied,
        ...offsetOf(plan, book),
      },
    },
  ];
}

/** How far off its line a peg was put by eye; a right angle that was set out is another matter. */
function offsetOf(plan: StationPlan, book: BookWriter): Properties {
  const offset = plan.observed.find(({ observation }) => observation.kind === "offset");
  if (offset === undefined || child(plan.node, "along") === null) return { by_offset: false };
  const { number } = offset;
  return { by_offset: true, offset: book.seal(scaled(number, number.value < 0 ? -1 : 1), "length", offset.place) };
}

function runThing(run: LevelRun, missed: Uncertain, { book }: SurveyedWork): Feature {
  const size = scaled(missed, missed.value < 0 ? -1 : 1);
  return {
    ...thing("level run", `${run.from} to ${run.to}`, run.place),
    properties: {
      closes: true,
      misclosure: book.seal(size, "length", run.place),
      set_ups: book.seal(exact(run.setUps), "count", run.place),
      root_of_set_ups: book.seal(exact(Math.sqrt(run.setUps)), "count", run.place),
    },
  };
}

function openThing(run: OpenRun, { book }: SurveyedWork): Feature {
  return {
    ...thing("level run", `${run.from} to ${run.to}`, run.place),
    properties: { closes: false, set_ups: book.seal(exact(run.setUps), "count", run.place) },
  };
}

/** Taped lines of which both ends were levelled, so that it shows how steep the tape would lie on the ground. */
function tapedLines({ texts, survey, pegs, book }: SurveyedWork): readonly Feature[] {
  const heldLevel = firstAt(texts, "survey", "tape", "held_level")?.data === true;
  return survey.observed.flatMap(({ observation, number, place, reduced }): readonly Feature[] => {
    if (observation.kind !== "distance") return [];
    const [from, to] = [pegs.get(observation.from), pegs.get(observation.to)];
    if (from?.level === undefined || to?.level === undefined) return [];
    const rise = difference(to.level, from.level);
    const slope = quotient(scaled(rise, rise.value < 0 ? -1 : 1), number);
    return [
      {
        ...thing("taped line", `${observation.from} to ${observation.to}`, place),
        properties: {
          held_level: heldLevel || reduced === true,
          length: book.seal(number, "length", place),
          slope: book.seal(slope, "slope", place),
        },
      },
    ];
  });
}
