// Puts features together: shape, properties, stages.

import type { Table } from "../model/card.ts";
import { kinds } from "../model/kinds.ts";
import type { Feature, Properties, Property } from "../model/plan.ts";
import type { Quantity } from "../model/quantity.ts";
import type { KindTable } from "./kind-table.ts";
import type { Measuring } from "./measuring.ts";
import { child, textOf, type Node } from "./node.ts";
import type { BookWriter, LivePoint } from "./number-book.ts";
import type { Names } from "./names.ts";
import type { Places } from "./places.ts";
import type { Setting } from "./points.ts";
import { readProperties } from "./properties.ts";
import { withDoubt, type PropertyWork } from "./property-numbers.ts";
import { readNumber } from "./numbers.ts";
import { checkPlausible } from "./plausible.ts";
import { sealShape, type LiveShape } from "./live-shape.ts";
import { faultless } from "./shape-faults.ts";
import { readShape, shapeKeys } from "./shapes.ts";
import type { ShapeWork } from "./shape-work.ts";
import type { Version } from "./stages.ts";
import { radiusOf, readStem } from "./stems.ts";
import { knownPoison } from "./known-poison.ts";
import { likeProperties } from "./like.ts";
import type { LiveLine } from "./lines.ts";
import type { Uncertain } from "./sway.ts";
import type { Troubles } from "./troubles.ts";

/** What all features of a plan share while they are read. */
export interface FeatureWork {
  readonly book: BookWriter;
  readonly measuring: Measuring;
  readonly troubles: Troubles;
  readonly kindTable: KindTable;
  readonly names: Names;
  readonly places: () => Places;
  /** The plan's first line, which in-place points are measured from where nothing else is said. */
  readonly firstLine: () => LiveLine | null;
  readonly turnFrom: PropertyWork["turnFrom"];
  /** The table of vehicles that `like` looks into; null where none is at hand. */
  readonly vehicles: Table | null;
  /** The table of plants that poison stock; null where none is at hand. */
  readonly poisons: Table | null;
}

/** `surface "track"`. */
export function wordsOfVersion(version: Version): string {
  return `${kinds[version.kind]} "${version.name}"`;
}

/** Whether a number was measured on something that stands: not where a change or an option has written it. */
function stands(node: Node, version: Version): boolean {
  const [top, , part] = node.place.path;
  return version.existing && top !== "changes" && !(top === "options" && part === "change");
}

/** Kinds whose points are wishes: nobody builds them, so no tolerance of building stands on them. */
const wishes: ReadonlySet<string> = new Set(["manoeuvres", "jobs", "stock"]);

function wishing(measuring: Measuring): Measuring {
  return { ...measuring, built: (point) => ({ ...point, built: true }) };
}

/** How the points written at a node of a feature are to be understood. */
export function settingFor(version: Version, node: Node, work: FeatureWork): Setting {
  const along = child(version.node, "along");
  const name = textOf(along);
  return {
    existing: stands(node, version),
    isAlongNamed: along !== null && name !== null,
    along: () => (along !== null && name !== null ? work.places().line(name, along, version) : work.firstLine()),
    byName: (text, at) => work.places().point(text, at, version),
    lineByName: (text, at) => work.places().line(text, at, version),
    isLine: (text) => work.places().isLine(text),
    whose: wordsOfVersion(version),
    measuring: wishes.has(version.kind) ? wishing(work.measuring) : work.measuring,
    troubles: work.troubles,
  };
}

function propertyWork(version: Version, work: FeatureWork): PropertyWork {
  return {
    kind: version.kind,
    book: work.book,
    settingOf: (node) => settingFor(version, node, work),
    checkName: (node) => work.places().check(textOf(node) ?? "", node, version),
    turnFrom: work.turnFrom,
  };
}

/** The shape of one version of a feature, before it is sealed. */
export function shapeOf(version: Version, work: FeatureWork): LiveShape | null {
  const properties = propertyWork(version, work);
  const shapeWork: ShapeWork = {
    setting: settingFor(version, version.node, work),
    settingOf: (node) => settingFor(version, node, work),
    size: (node, path) => {
      const written = readNumber(node, "length", work.troubles);
      const of = { kind: version.kind, path, form: { dimension: "length" } } as const;
      return written === null || !checkPlausible(written, of, work.troubles)
        ? null
        : withDoubt(written, { dimension: "length" }, { work: properties, path: path.split(".") });
    },
  };
  const live = readShape(version.node, shapeWork);
  return live === null
    ? null
    : faultless(live, { node: version.node, whose: wordsOfVersion(version), troubles: work.troubles });
}

/** One version of a feature, resolved and sealed. */
export function featureOf(version: Version, work: FeatureWork): Feature {
  const live = work.places().shape(version);
  const forms = Object.fromEntries(
    Object.entries(work.kindTable[version.kind] ?? {}).filter(([key]) => isProperty(key, version)),
  );
  const read = readProperties(version.node, forms, { work: propertyWork(version, work), path: [] });
  const properties: Properties = {
    ...likeProperties(version, read, work),
    ...knownPoison(version, read, work),
    ...read,
    ...lineProperties(live, work.book),
    ...readStem(version, { work: propertyWork(version, work) }),
  };
  return {
    kind: kinds[version.kind],
    name: version.name,
    place: version.node.place,
    existing: version.existing,
    from: version.from,
    until: version.until,
    ...(version.superseded ? { superseded: true } : {}),
    ...(version.standingUnsaid ? { standingUnsaid: true } : {}),
    ...(version.reworked ? { reworked: true } : {}),
    shape: live === null ? null : sealShape(live, work.book, widthOf(read)),
    properties,
  };
}

/** Keys of place, of stage and of the reader's own are no properties. */
function isProperty(key: string, { kind, node }: Version): boolean {
  if (key === "from" || key === "until" || key === "existing" || key === "note") return false;
  if ((key === "left" || key === "right") && child(node, "beside") !== null) return false;
  if (key === "between") return kind !== "gates";
  if (key === "along") return /^[-+\d.]/.test(String(child(node, "along")?.data));
  return !shapeKeys.has(key);
}

function lineProperties(live: LiveShape | null, book: BookWriter): Properties {
  if (live === null) return {};
  const seal = (points: readonly LivePoint[]): Property => points.map(book.sealPoint);
  return Object.fromEntries(Object.entries(live.lines).map(([key, points]) => [key, seal(points)]));
}

/** The width of a line on the ground: `width`, or a wall's `thickness`. */
function widthOf(properties: Properties): Quantity<"length"> | null {
  const width = properties["width"] ?? properties["thickness"];
  const isLength = typeof width === "object" && "dimension" in width && width["dimension"] === "length";
  return isLength ? (width as unknown as Quantity<"length">) : null;
}

/** The radius of what stands in the middle of a station: half a trunk, or half of `across`. */
export function radiusAt(station: string, versions: readonly Version[], work: FeatureWork): Uncertain | null {
  const round = versions.find(
    (version) =>
      textOf(child(version.node, "at")) === station && (version.kind === "trees" || version.kind === "obstacles"),
  );
  if (round === undefined) return null;
  return radiusOf(round, propertyWork(round, work));
}
