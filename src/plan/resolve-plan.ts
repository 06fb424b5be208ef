// The resolver: checked texts in, one plan with sealed numbers out. Pure, and it never throws for bad data.

import type { Table } from "../model/card.ts";
import type { Path } from "../model/path.ts";
import type { LevelledPlace, Plan } from "../model/plan.ts";
import type { Problem } from "../model/problem.ts";
import type { SourceText } from "../reading/source-text.ts";
import { withBreakLines } from "./break-lines.ts";
import { withCrowns } from "./crowns.ts";
import { withDriven } from "./driven.ts";
import { featureOf, radiusAt, shapeOf, type FeatureWork } from "./features.ts";
import { insteadOf, openTurnFrom, ownFigures, trueNorthOf } from "./instruments.ts";
import type { KindTable } from "./kind-table.ts";
import { levelledPlaces, pegsWithLevels, readLevelBook, withLevels } from "./levels.ts";
import type { LiveLine } from "./lines.ts";
import { openMeasuring } from "./measuring.ts";
import { gatherNames, type Names } from "./names.ts";
import { child, rootNode, textOf, type Node } from "./node.ts";
import { openBook, type LivePoint } from "./number-book.ts";
import { withOption } from "./options.ts";
import { openPlaces, type Places } from "./places.ts";
import { readPoint, type Setting } from "./points.ts";
import { openCustoms, type Customs } from "./practice.ts";
import { factsOf, readSurvey } from "./read-survey.ts";
import { allEntries, allItems, featuresOf, firstAt, lostNames, type Texts } from "./sources.ts";
import { withSoilFactors } from "./soil-factors.ts";
import { stageNames, versionsOf, type Version } from "./stages.ts";
import { planTapeOf, reelOf } from "./reel.ts";
import { readStatements } from "./statements.ts";
import { withOpenedGaps } from "./opened-gaps.ts";
import { withStepsLeft } from "./steps-left.ts";
import { surveyedThings } from "./surveyed.ts";
import { groundThing, levelThing } from "./surveyed-levels.ts";
import { withTrenches } from "./trenches.ts";
import { openTroubles, type Locate } from "./troubles.ts";

/** A text that has been read and checked against its schema; nodes at `broken` paths are passed over. */
export interface CheckedText {
  readonly source: SourceText;
  readonly broken: readonly Path[];
}

export interface ResolveOptions {
  /** The option of the plan to resolve; the base plan where left out. */
  readonly option?: string;
  /** The texts that the plan includes, in the order it names them. */
  readonly includes?: readonly CheckedText[];
  /** The table of vehicles that a plan's `like` names rows of; without it such figures are missing. */
  readonly vehicles?: Table;
  /** The table of trees and hedges that are known to poison stock. */
  readonly poisons?: Table;
  /** The table of densities, which tells how the soil that the plan names rolls down. */
  readonly densities?: Table;
}

export interface Resolved {
  readonly plan: Plan;
  readonly problems: readonly Problem[];
}

/**
 * Resolves a plan: stations adjusted, points placed, numbers sealed with their doubt, stages and options applied.
 * What cannot be read is a problem at its place in the file; everything else is resolved all the same.
 */
export function resolvePlan(text: CheckedText, kindTable: KindTable, options: ResolveOptions = {}): Resolved {
  const desk = openDesk([text, ...(options.includes ?? [])], kindTable, options);
  const { texts, versions, work, names } = desk;
  const { survey, levels, pegs, ground } = placePegs(desk);
  const places = levelledPlaces(levels, { pegs, versions, work, setting: ground });
  const written = versions.map((version) => withLevels(featureOf(version, work), places));
  const built = withDriven(withOpenedGaps(written, stageNames(texts), () => work.book.finish()));
  const levelled = withBreakLines(places, built);
  const stepped = withStepsLeft(withCrowns(built, work.book), { levels: levelled, book: work.book });
  const features = withTrenches(stepped, { book: work.book, customs: desk.customs, levels: levelled });
  const facts = factsOf(survey);
  const statements = readStatements(texts, { names, troubles: work.troubles, work, versions });
  const soil = textOf(firstAt(texts, "ground", "soil"));
  const plan: Plan = {
    file: text.source.file,
    ...statements,
    site: withSoilFactors(statements.site, { soil, densities: options.densities, book: work.book }),
    stages: stageNames(texts),
    features,
    pegs: new Map([...pegs].map(([name, peg]) => [name, work.book.sealPoint(peg)])),
    levels: levelled,
    trueNorth: trueNorthOf(texts, work.troubles),
    numbers: work.book.finish(),
    ...(facts === null ? {} : { surveyFacts: { ...facts, levelRuns: levels.runs } }),
    surveyed: surveyedThings({ texts, survey, levels, pegs, book: work.book, ...levelThings(desk, levelled) }),
    tape: planTapeOf(texts, desk.customs, {
      causes: work.book.finish().causes,
      troubles: openTroubles(() => ({ line: 1, column: 1 })),
    }),
    ...(soil === null ? {} : { soil }),
    ...(survey.firstLine === null ? {} : { baseline: survey.firstLine }),
    assumed: desk.customs.assumed(),
  };
  return { plan, problems: work.troubles.list() };
}

function levelThings({ texts, customs, work }: Desk, levelled: readonly LevelledPlace[]) {
  const { book, troubles } = work;
  return { level: levelThing({ texts, book, customs, troubles }), ground: groundThing(levelled, { texts, book }) };
}

/** Everything that is open while a plan is resolved. */
interface Desk {
  readonly texts: Texts;
  readonly customs: Customs;
  readonly names: Names;
  readonly versions: readonly Version[];
  readonly work: FeatureWork;
  /** From here on, names and runs are looked up among these pegs. */
  readonly layOut: (pegs: ReadonlyMap<string, LivePoint>, firstLine: readonly [string, string] | null) => void;
}

function openDesk(
  all: readonly CheckedText[],
  kindTable: KindTable,
  { option, vehicles, poisons }: ResolveOptions,
): Desk {
  const texts: Texts = { roots: all.map(({ source, broken }) => rootNode(source, broken)) };
  const troubles = openTroubles(locateIn(all));
  const book = openBook();
  const customs = openCustoms(ownFigures(texts, troubles), insteadOf(texts));
  const measuring = openMeasuring(book, customs, reelOf(texts, customs, troubles));
  const { features, removed } = withOption(featuresOf(texts), texts, { option, troubles });
  const versions = versionsOf(features, texts, troubles);
  const names = gatherNames({ pegs: namedPegs(texts), features, lost: lostNames(texts, option) }, troubles);
  const laid: { places: Places; firstLine: LiveLine | null } = { places: noPlaces, firstLine: null };
  const work: FeatureWork = {
    book,
    measuring,
    troubles,
    kindTable,
    names,
    turnFrom: openTurnFrom(texts, customs, troubles),
    places: () => laid.places,
    firstLine: () => laid.firstLine,
    vehicles: vehicles ?? null,
    poisons: poisons ?? null,
  };
  const readShape = (version: Version) => shapeOf(version, work);
  const layOut: Desk["layOut"] = (pegs, firstLine) => {
    laid.places = openPlaces({ names, versions, pegs, removed, readShape, troubles });
    laid.firstLine = lineBetween(firstLine, pegs);
  };
  return { texts, customs, names, versions, work, layOut };
}

/** The survey adjusted and the level book closed: every peg with its place and, where it was levelled, its level. */
function placePegs({ texts, customs, names, versions, work, layOut }: Desk) {
  const { book, measuring, troubles, turnFrom } = work;
  const roundRadius = (station: string) => radiusAt(station, versions, work);
  const survey = readSurvey(texts, { measuring, customs, book, troubles, turnFrom, lost: names.lost, roundRadius });
  layOut(survey.pegs, survey.firstLine);
  const levels = readLevelBook(texts, work);
  const ground = groundSetting(work);
  const pegs = pegsWithLevels(survey.pegs, levels, (row) => readPoint(child(row, "spot"), ground, "the spot"));
  layOut(pegs, survey.firstLine);
  return { survey, levels, pegs, ground };
}

function locateIn(all: readonly CheckedText[]): Locate {
  const sources = new Map(all.map(({ source }) => [source.file, source]));
  return ({ file, path }, part) => sources.get(file)?.locate(path, part) ?? { line: 1, column: 1 };
}

/** Pegs of the survey, and spots of the level book that are given a name. */
function namedPegs(texts: Texts): readonly (readonly [string, Node])[] {
  const spots = allItems(texts, "survey", "level_book").flatMap((row) => {
    const name = child(row, "spot") === null ? null : textOf(child(row, "name"));
    return name === null ? [] : [[name, row] as const];
  });
  return [...allEntries(texts, "survey", "stations"), ...spots];
}

function lineBetween(ends: readonly [string, string] | null, pegs: ReadonlyMap<string, LivePoint>): LiveLine | null {
  const points = (ends ?? []).flatMap((name) => pegs.get(name) ?? []);
  return points.length === 2 ? { points, closed: false, name: (ends ?? []).join(" to ") } : null;
}

const noPlaces: Places = {
  point: () => null,
  line: () => null,
  isLine: () => false,
  shape: () => null,
  check: () => undefined,
};

/** Points of the ground that belong to no feature: they exist, and are measured like everything that does. */
function groundSetting(work: FeatureWork): Setting {
  const asker: Version | null = null;
  return {
    existing: true,
    along: work.firstLine,
    byName: (name, node) => work.places().point(name, node, asker),
    lineByName: (name, node) => work.places().line(name, node, asker),
    isLine: (name) => work.places().isLine(name),
    whose: "the ground",
    measuring: work.measuring,
    troubles: work.troubles,
  };
}
