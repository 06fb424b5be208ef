// Reads the survey of a plan: all stations and spare tapes into one adjusted network, and what it says of itself.

import type { Point } from "../model/reading.ts";
import type { SurveyFacts, SurveyMeasurement } from "../model/plan.ts";
import { nearestWord } from "../reading/nearest-word.ts";
import type { TurnFrom } from "./instruments.ts";
import { child, isAbsent, items, textOf, type Node } from "./node.ts";
import { lengthsOf, tapeObserved, type Observed, type StationWork } from "./station-observed.ts";
import { readStation } from "./station-forms.ts";
import type { StationPlan, StationReading } from "./station-plan.ts";
import { cutAngle } from "./station-start.ts";
import { allEntries, allItems, type LostNames, type Texts } from "./sources.ts";
import { adjustStations, stationsIn, type Placed } from "./survey.ts";
import { wordsOf } from "./troubles.ts";

/** The network with the peg pair of the plan's first line. */
export interface SurveyRead extends Placed {
  readonly firstLine: readonly [string, string] | null;
  readonly plans: readonly StationPlan[];
  readonly checks: readonly Observed[];
}

/** What the reader of a survey needs. */
export interface SurveyWork extends StationWork {
  readonly turnFrom: TurnFrom;
  readonly lost: LostNames;
}

/** Reads and places all stations. */
export function readSurvey(texts: Texts, work: SurveyWork): SurveyRead {
  const written = uniqueStations(texts, work);
  const reading = readingOf(written, work);
  const plans = [...written].flatMap(([name, node]) => readStation(name, node, reading) ?? []);
  for (const file of allItems(texts, "survey", "coordinates", "files")) reportFile(file, texts, work);
  const checks = allItems(texts, "survey", "checks").flatMap((node) => readCheck(node, reading));
  if (plans.length > 0 && reading.datum === null) reportNoDatum([...written.values()][0] as Node, work);
  const placed = adjustStations(plans, checks, work.troubles);
  return { ...placed, plans, checks, firstLine: firstLineOf(written, reading) };
}

function uniqueStations(texts: Texts, { troubles }: StationWork): ReadonlyMap<string, Node> {
  const found = new Map<string, Node>();
  for (const [name, node] of allEntries(texts, "survey", "stations")) {
    if (!found.has(name)) found.set(name, node);
    else
      troubles.report(node, {
        code: "name-taken",
        part: "key",
        expected: "each peg once",
        got: `"${name}" again`,
        hint: "put all measurements of a peg under its one name",
      });
  }
  return found;
}

const isPair = (node: Node): boolean => child(node, "square_off") === null && Array.isArray(child(node, "at")?.data);

/** The datum is the peg written at [0, 0], or else the first peg with coordinates. */
function datumOf(written: ReadonlyMap<string, Node>): string | null {
  const fixed = [...written].filter(([, node]) => isPair(node));
  const origin = fixed.find(([, node]) => items(child(node, "at")).every((value) => value.data === 0));
  return (origin ?? fixed[0])?.[0] ?? null;
}

function readingOf(written: ReadonlyMap<string, Node>, work: SurveyWork): StationReading {
  const names = [...written.keys()];
  const station = (name: string, node: Node): string | null => {
    if (written.has(name)) return name;
    if (work.lost(name) !== null) return null;
    const near = /^\d+$/.test(name) && written.has(`P${name}`) ? `P${name}` : nearestWord(name, names);
    const hint = near === null ? "write it under stations" : `did you mean "${near}"?`;
    return work.troubles.report(node, {
      code: "unknown-name",
      expected: "a peg of the survey",
      got: wordsOf(name),
      hint,
    });
  };
  const lineOf = (text: string, node: Node): readonly [string, string] | null => {
    const words = text.split(" to ");
    for (let i = 1; i < words.length; i += 1) {
      const [from, to] = [words.slice(0, i).join(" to "), words.slice(i).join(" to ")];
      if (written.has(from) && written.has(to) && from !== to) return [from, to];
    }
    const [from, to] = [words[0] ?? "", words.slice(1).join(" to ")];
    if (words.length < 2 || from === to) {
      const got = wordsOf(text);
      return work.troubles.report(node, {
        code: "unknown-name",
        expected: "a line between two pegs, such as P1 to P2",
        got,
        hint: "name two pegs with to between them",
      });
    }
    station(written.has(from) ? to : from, node);
    return null;
  };
  const firstLine = [...written].find(([, node]) => child(node, "line_to") !== null)?.[0] ?? null;
  return { ...work, datum: datumOf(written), firstLine, lineOf, station };
}

function readCheck(node: Node, reading: StationReading): readonly Observed[] {
  const named = items(child(node, "between")).every((end) => textOf(end) !== null);
  if (!named || (isAbsent(node, "tape") && child(node, "angle") !== null)) {
    reading.customs.assume("checks of angles, and tapes between points that are no pegs, are not used");
    return [];
  }
  const ends = items(child(node, "between")).map((end) => {
    const name = textOf(end);
    return name === null ? null : reading.station(name, end);
  });
  const [from, to] = ends;
  if (ends.length !== 2 || from === null || from === undefined || to === null || to === undefined || from === to)
    return [];
  return lengthsOf(child(node, "tape"), node, reading.troubles).map((written) =>
    tapeObserved(reading, written, [from, to]),
  );
}

/** A file of points that was not handed in with the plan. */
function reportFile(node: Node, { roots }: Texts, { troubles }: StationWork): void {
  const name = textOf(child(node, "file"));
  if (name === null || roots.some((root) => root.place.file === name)) return;
  const hint = "put the file beside the plan, or write the pegs under stations: P7: {at: [12.30, 48.52]}";
  troubles.report(node, {
    code: "file-not-found",
    expected: "a file of points that can be read",
    got: wordsOf(name),
    hint,
  });
}

function reportNoDatum(node: Node, { troubles }: StationWork): void {
  troubles.report(node, {
    code: "missing-key",
    part: "key",
    expected: "one peg that the plan starts from",
    got: "no peg with at: [0, 0]",
    hint: "write at: [0, 0] for the first peg",
  });
}

function firstLineOf(written: ReadonlyMap<string, Node>, reading: StationReading): readonly [string, string] | null {
  const name = reading.firstLine;
  const to = name === null ? null : textOf(child(written.get(name) ?? null, "line_to"));
  return name === null || to === null || !written.has(to) ? null : [to, name];
}

/** What the network says of the measurements: residuals, redundancy, the angles at which ties cut. */
export function factsOf(survey: SurveyRead): Omit<SurveyFacts, "levelRuns"> | null {
  const { adjusted } = survey;
  if (adjusted === null) return null;
  const spare = new Set(survey.checks);
  const measurements = survey.observed.map((one, k): SurveyMeasurement => {
    const { residual, redundancy, standardised } = adjusted.observations[k] as (typeof adjusted.observations)[number];
    const { value, u } = one.observation;
    const stations = stationsIn(one);
    return {
      words: one.words,
      place: one.place,
      stations,
      measured: value,
      u,
      residual,
      redundancy,
      standardised,
      check: spare.has(one),
    };
  });
  const { chiSquare, degreesOfFreedom, probability } = adjusted;
  return {
    chiSquare,
    degreesOfFreedom,
    probability,
    measurements,
    cutAngles: survey.plans.flatMap((plan) => cutsOf(plan, adjusted.coordinates)),
  };
}

/** Of all pairs of ties to a peg, the one that cuts nearest to square. */
export function cutsOf(plan: StationPlan, at: ReadonlyMap<string, Point>): SurveyFacts["cutAngles"] {
  const here = at.get(plan.name);
  const ties = (plan.tiedTo ?? []).filter((name) => at.has(name));
  if (here === undefined || ties.length < 2) return [];
  const pairs = ties.flatMap((one, i) => ties.slice(i + 1).map((two) => [one, two] as const));
  const cuts = pairs.map((pair) => ({
    pair,
    angle: cutAngle(here, at.get(pair[0]) as Point, at.get(pair[1]) as Point),
  }));
  const [best] = cuts.sort((a, b) => Math.abs(Math.cos(a.angle)) - Math.abs(Math.cos(b.angle)));
  return best === undefined ? [] : [{ station: plan.name, ties: best.pair, angle: best.angle, place: plan.place }];
}
