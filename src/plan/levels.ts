// Lays the levels of the book on the plan: on pegs, on spots of ground, on named parts of features.

import { keyOfKind, kinds } from "../model/kinds.ts";
import type { Feature, LevelledPart, LevelledPlace } from "../model/plan.ts";
import { bookLevels, rowWords, type Booked, type LevelBook } from "./level-book.ts";
import { pointAlong } from "./lines.ts";
import { child, textOf, type Node } from "./node.ts";
import type { LivePoint } from "./number-book.ts";
import { readNumber, type Written } from "./numbers.ts";
import type { FeatureWork } from "./features.ts";
import { settingFor } from "./features.ts";
import { readPoint, type Setting } from "./points.ts";
import { exact, mean, type Uncertain } from "./sway.ts";
import { allEntries, allItems, type Texts } from "./sources.ts";
import { pointOf, shapeLine } from "./live-shape.ts";
import type { Version } from "./stages.ts";
import { wordsOf } from "./troubles.ts";

/** The book of a plan, with levels that pegs carry by themselves. */
export function readLevelBook(
  texts: Texts,
  work: FeatureWork,
): LevelBook & { readonly given: ReadonlyMap<string, Uncertain> } {
  const given = new Map<string, Uncertain>();
  for (const [name, node] of allEntries(texts, "survey", "stations")) {
    const level = readNumber(child(node, "level"), "length", work.troubles);
    if (level !== null)
      given.set(
        name,
        work.measuring.size(level, `the level of peg ${name}`, { sort: "level", dimension: "length", existing: true }),
      );
  }
  const rows = allItems(texts, "survey", "level_book");
  return { ...bookLevels(rows, { measuring: work.measuring, troubles: work.troubles, given }), given };
}

/** Pegs with the levels of the book; several readings of one peg are averaged. Spots with a name become pegs. */
export function pegsWithLevels(
  pegs: ReadonlyMap<string, LivePoint>,
  book: ReturnType<typeof readLevelBook>,
  spotOf: (row: Node) => LivePoint | null,
): ReadonlyMap<string, LivePoint> {
  const levels = new Map<string, Uncertain[]>();
  const found = new Map(pegs);
  for (const { row, level } of book.booked) {
    const name = child(row, "of") === null ? nameOf(row) : null;
    if (name === null) continue;
    levels.set(name, [...(levels.get(name) ?? []), level]);
    const named = textOf(child(row, "name")) !== null;
    const spot = named && child(row, "spot") !== null && !found.has(name) ? spotOf(row) : null;
    if (spot !== null) found.set(name, { ...spot, name });
  }
  for (const [name, point] of found) {
    const read = levels.get(name);
    const level = read === undefined ? book.given.get(name) : read.length === 1 ? read[0] : mean(read);
    if (level !== undefined) found.set(name, { ...point, level });
  }
  return found;
}

/** The peg or the named spot that a row stands on. */
function nameOf(row: Node): string | null {
  return textOf(child(row, "at")) ?? textOf(child(row, "name")) ?? textOf(child(row, "spot"));
}

/** Everything levelled: pegs, spots of ground, and parts of features. */
export function levelledPlaces(
  book: ReturnType<typeof readLevelBook>,
  at: {
    readonly pegs: ReadonlyMap<string, LivePoint>;
    readonly versions: readonly Version[];
    readonly work: FeatureWork;
    readonly setting: Setting;
  },
): readonly LevelledPlace[] {
  const pegs = [...at.pegs.values()].flatMap((peg): LevelledPlace[] =>
    peg.level === undefined
      ? []
      : [{ spot: at.work.book.sealPoint(peg), level: at.work.book.sealNumber(peg.level, "length", peg.place) }],
  );
  const rest = book.booked.flatMap((booked): readonly LevelledPlace[] => {
    if (child(booked.row, "of") !== null) {
      const place = levelOfFeature(booked, at);
      return place === null ? [] : [place];
    }
    const name = nameOf(booked.row);
    if (child(booked.row, "spot") === null || (name !== null && at.pegs.has(name))) return [];
    const point = readPoint(child(booked.row, "spot"), at.setting, "the spot");
    const level = at.work.book.sealNumber(booked.level, "length", booked.row.place);
    return point === null ? [] : [{ spot: at.work.book.sealPoint({ ...point, level: booked.level }), level }];
  });
  return [...pegs, ...rest];
}

/** `walls march wall`: the kind and the name in it. */
function featureIn(text: string, versions: readonly Version[]): Version | null {
  const words = text.split(" ");
  for (let i = 1; i < words.length; i += 1) {
    const [kind, name] = [words.slice(0, i).join("_"), words.slice(i).join(" ")];
    const key = kind in kinds ? kind : keyOfKind(words.slice(0, i).join(" "));
    const found = versions.find((version) => version.kind === key && version.name === name);
    if (found !== undefined) return found;
  }
  return versions.find((version) => version.name === text) ?? null;
}

function levelOfFeature(
  { row, level }: Booked,
  { versions, work }: { readonly versions: readonly Version[]; readonly work: FeatureWork },
): LevelledPlace | null {
  const version = featureIn(rowWords(row), versions);
  if (version === null) return reportNoFeature(row, work);
  const part = partOf(row);
  const atNode = child(row, "at");
  const run = atNode !== null && textOf(atNode) === null ? readNumber(atNode, "length", work.troubles) : null;
  const shape = work.places().shape(version);
  const along = run === null ? null : staffAlong(run, part, { version, row, work });
  const name = textOf(atNode);
  const named = name === null || atNode === null ? null : work.places().point(name, atNode, version);
  const spot = along ?? named ?? (shape === null ? null : pointOf(shape));
  return {
    spot: spot === null ? null : work.book.sealPoint({ ...spot, level }),
    level: work.book.sealNumber(level, "length", row.place),
    of: { feature: version.name, ...(run === null ? {} : { at: run.value }), part },
  };
}

function reportNoFeature(row: Node, { names, troubles }: FeatureWork): null {
  const words = rowWords(row).split(" ");
  if (words.some((_, i) => names.lost(words.slice(i).join(" ")) !== null)) return null;
  const ofNode = child(row, "of") ?? row;
  return troubles.report(ofNode, {
    code: "unknown-name",
    expected: "a feature by kind and name, such as walls march wall",
    got: wordsOf(ofNode.data),
    hint: "use the name under which it is written",
  });
}

/** Where the staff stood, `run` metres along a feature; at the face of a wall where it stood at a foot. */
function staffAlong(
  run: Written,
  part: LevelledPart,
  { version, row, work }: { readonly version: Version; readonly row: Node; readonly work: FeatureWork },
): LivePoint | null {
  const shape = work.places().shape(version);
  const line = shape === null ? null : shapeLine(shape);
  if (line === null) return null;
  const taped = work.measuring.taped(run, `the run of the staff on ${settingFor(version, row, work).whose}`);
  return pointAlong(line, { run: taped, left: footLeft(version, part, work) }, row.place);
}

/** How far left of the line of a wall the staff stood at its foot: at the face, half its thickness off a centre line. */
function footLeft(version: Version, part: LevelledPart, work: FeatureWork): Uncertain {
  const thickness = readNumber(child(version.node, "thickness"), "length", work.troubles)?.value ?? 0;
  const lineIs = textOf(child(version.node, "line_is"));
  const toLeft = lineIs === "left face" ? 0 : lineIs === "right face" ? thickness : thickness / 2;
  if (part === "foot left") return exact(toLeft);
  return exact(part === "foot right" ? toLeft - thickness : 0);
}

function partOf(row: Node): LevelledPart {
  const foot = textOf(child(row, "foot"));
  if (foot === "left" || foot === "right") return `foot ${foot}`;
  if (child(row, "top")?.data === true) return "top";
  if (child(row, "invert")?.data === true) return "invert";
  return (textOf(child(row, "part")) ?? "foot") as LevelledPart;
}

/** Parts of a whole feature that a property of its own holds. */
const propertyOfPart: Readonly<Partial<Record<LevelledPart, string>>> = {
  invert: "invert",
  cover: "cover",
  floor: "floor",
  "damp course": "damp_course",
  sill: "sill",
  water: "level",
};

/** The feature with levels that the book took on it, where the plan writes none itself. */
export function withLevels(feature: Feature, levelled: readonly LevelledPlace[]): Feature {
  const taken = levelled.flatMap(({ of, level }): readonly (readonly [string, LevelledPlace["level"]])[] => {
    const key =
      of === undefined || of.feature !== feature.name || of.at !== undefined ? undefined : propertyOfPart[of.part];
    return key === undefined ? [] : [[key, level]];
  });
  return taken.length === 0
    ? feature
    : { ...feature, properties: { ...Object.fromEntries(taken), ...feature.properties } };
}
