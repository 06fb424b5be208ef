// Finds points and lines by name: pegs, corners of features, chambers, lines between two pegs. Each is worked out once.

import { kinds, type KindKey } from "../model/kinds.ts";
import type { LiveLine } from "./lines.ts";
import type { Names } from "./names.ts";
import type { Node } from "./node.ts";
import type { LivePoint } from "./number-book.ts";
import { cornersOf, pointOf, shapeLine, type LiveShape } from "./live-shape.ts";
import type { Version } from "./stages.ts";
import type { Troubles } from "./troubles.ts";

/** What is asked for by name, and by whom: the version that stands when the asker does is the one that is meant. */
export interface Places {
  readonly point: (name: string, node: Node, asker: Version | null) => LivePoint | null;
  readonly line: (name: string, node: Node, asker: Version | null) => LiveLine | null;
  readonly isLine: (name: string) => boolean;
  readonly shape: (version: Version) => LiveShape | null;
  /** A problem where no peg, feature or corner has this name. */
  readonly check: (name: string, node: Node, asker: Version | null) => void;
}

/** What the look-up draws on. `readShape` is called once for each version. */
export interface PlacesWork {
  readonly names: Names;
  readonly versions: readonly Version[];
  readonly pegs: ReadonlyMap<string, LivePoint>;
  /** Names an option takes away, for the hint. */
  readonly removed: ReadonlySet<string>;
  readonly readShape: (version: Version) => LiveShape | null;
  readonly troubles: Troubles;
}

/** Kinds whose name stands for a line or an area whatever its shape is read from. */
const pointKinds: ReadonlySet<KindKey> = new Set([
  "chambers",
  "outfalls",
  "trees",
  "septic_tanks",
  "soakaways",
  "tanks",
  "obstacles",
  "thresholds",
]);

/** Look-up over the pegs and features of a plan. */
export function openPlaces(work: PlacesWork): Places {
  const look: LookUp = { work, shape: openShapes(work), versionFor: openVersions(work.versions) };
  return {
    point: (name, node, asker) => findPoint(name, node, { look, asker }),
    line: (name, node, asker) => findLine(name, node, { look, asker }),
    isLine: (name) => isLineName(name, work.names),
    shape: look.shape,
    check: (name, node, asker) => {
      if (work.names.find(name) !== null || splitLine(name, work.names) !== null) return;
      if (/ ?(?:corner|point) \d+$/.test(name)) findPoint(name, node, { look, asker });
      else reportUnknown(name, node, { what: "a name that the plan has", work });
    },
  };
}

interface LookUp {
  readonly work: PlacesWork;
  readonly shape: (version: Version) => LiveShape | null;
  readonly versionFor: (name: string, asker: Version | null) => Version | null;
}

interface Asked {
  readonly look: LookUp;
  readonly asker: Version | null;
}

/** Things placed by things placed by things: beyond this nobody can follow it on the ground, nor need we. */
const longestChain = 100;

/** Shapes, each read once. A thing that is placed by itself has none. */
function openShapes({ readShape, troubles }: PlacesWork): LookUp["shape"] {
  const made = new Map<Version, LiveShape | null>();
  const open = new Set<Version>();
  return (version) => {
    const known = made.get(version);
    if (known !== undefined) return known;
    if (open.has(version) || open.size > longestChain) return reportCircle(version, troubles);
    open.add(version);
    const read = readShape(version);
    open.delete(version);
    made.set(version, read);
    return read;
  };
}

/** The version of a feature that stands when the asker does; the first where none does yet. */
function openVersions(all: readonly Version[]): LookUp["versionFor"] {
  const byName = new Map<string, Version[]>();
  for (const version of all) byName.set(version.name, [...(byName.get(version.name) ?? []), version]);
  return (name, asker) => {
    const versions = byName.get(name) ?? [];
    return versions.findLast((version) => version.from <= (asker?.from ?? 0)) ?? versions[0] ?? null;
  };
}

function isLineName(name: string, names: Names): boolean {
  if (splitLine(name, names) !== null) return true;
  const named = names.find(name);
  const kind = named?.is === "feature" ? named.kind : names.lost(name);
  return kind !== null && kind !== "peg" && !pointKinds.has(kind);
}

function findPoint(name: string, node: Node, { look, asker }: Asked): LivePoint | null {
  const { work, versionFor } = look;
  const named = work.names.find(name);
  if (named?.is === "peg") return work.pegs.get(name) ?? null;
  if (named?.is === "feature") return featurePoint(name, node, { version: versionFor(name, asker), look });
  const corner = /^(?:(.+) )?(?:corner|point) (\d+)$/.exec(name);
  if (corner === null) return reportUnknown(name, node, { what: "a peg or a thing in the plan", work });
  const [, whose, count] = corner;
  const owner = whose === undefined ? asker : versionFor(whose, asker);
  if (owner === null && whose !== undefined && work.names.find(whose) !== null) return null;
  if (owner === null) return reportUnknown(whose ?? name, node, { what: "a thing in the plan", work });
  const found = look.shape(owner);
  if (found === null) return null;
  const corners = cornersOf(found);
  const at = corners[Number(count) - 1];
  if (at !== undefined) return { ...at, name };
  return reportCorner(name, node, { count: corners.length, owner, troubles: work.troubles });
}

function findLine(name: string, node: Node, { look, asker }: Asked): LiveLine | null {
  const { work, versionFor } = look;
  const pair = splitLine(name, work.names);
  if (pair !== null) {
    const [from, to] = pair.map((end) => findPoint(end, node, { look, asker }));
    if (from === null || from === undefined || to === null || to === undefined) return null;
    return { points: [from, to], closed: false, name };
  }
  const version = versionFor(name, asker);
  if (version === null && work.names.find(name)?.is === "feature") return null;
  if (version === null) {
    return reportUnknown(name, node, {
      what: "a line between two pegs such as P1 to P2, or a thing with a line",
      work,
    });
  }
  const found = look.shape(version);
  const live = found === null ? null : shapeLine(found);
  if (found === null || live !== null) return live;
  return work.troubles.report(node, {
    code: "bad-geometry",
    expected: "a line or an outline",
    got: `${kinds[version.kind]} "${name}", which is a point`,
    hint: "name a line between two pegs, such as P1 to P2",
  });
}

/** The two names of `A to B`, where both are names of the plan; names may hold the word `to` themselves. */
export function splitLine(text: string, names: Names): readonly [string, string] | null {
  const words = text.split(" to ");
  for (let i = 1; i < words.length; i += 1) {
    const [from, to] = [words.slice(0, i).join(" to "), words.slice(i).join(" to ")];
    if (names.find(from) !== null && names.find(to) !== null) return [from, to];
  }
  return null;
}

function featurePoint(
  name: string,
  node: Node,
  { version, look }: { readonly version: Version | null; readonly look: LookUp },
): LivePoint | null {
  const found = version === null ? null : look.shape(version);
  if (version === null || found === null) return null;
  const at = pointOf(found);
  if (at !== null) return { ...at, name, built: true };
  return look.work.troubles.report(node, {
    code: "bad-geometry",
    expected: "a point",
    got: `${kinds[version.kind]} "${name}", which is a line`,
    hint: `name a peg, or one of its points: ${name} point 1`,
  });
}

function reportUnknown(
  name: string,
  node: Node,
  { what, work }: { readonly what: string; readonly work: PlacesWork },
): null {
  const pair = name.split(" to ");
  const owner = name.replace(/ (?:corner|point) \d+$/, "");
  if ([...pair, name, owner].some((part) => work.names.lost(part) !== null)) return null;
  const gone = work.removed.has(name);
  const missing = pair.length === 2 ? pair.find((end) => work.names.find(end) === null) : undefined;
  return work.troubles.report(node, {
    code: "unknown-name",
    expected: what,
    got: missing === undefined ? `"${name}"` : `"${name}", and the plan has no "${missing}"`,
    hint: gone ? "the option takes it away: take away what hangs on it too" : work.names.hint(missing ?? name),
  });
}

function reportCorner(
  name: string,
  node: Node,
  { count, owner, troubles }: { readonly count: number; readonly owner: Version; readonly troubles: Troubles },
): null {
  const whose = `${kinds[owner.kind]} "${owner.name}"`;
  const expected = `a corner from 1 to ${count} of ${whose}`;
  return troubles.report(node, {
    code: "unknown-name",
    expected,
    got: `"${name}"`,
    hint: "corners count in the order they are written",
  });
}

function reportCircle(version: Version, troubles: Troubles): null {
  return troubles.report(version.node, {
    code: "circular",
    expected: "a place that does not hang on itself",
    got: `${kinds[version.kind]} "${version.name}", which is placed by things that are placed by it`,
    hint: "write its points by pegs or coordinates",
  });
}
