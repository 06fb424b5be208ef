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
  const made = new Map<Version, LiveShape | null>();
  const open = new Set<Version>();
  const byName = new Map<string, Version[]>();
  for (const version of work.versions) byName.set(version.name, [...(byName.get(version.name) ?? []), version]);

  const shape = (version: Version): LiveShape | null => {
    const known = made.get(version);
    if (known !== undefined) return known;
    if (open.has(version)) return reportCircle(version, work.troubles);
    open.add(version);
    const read = work.readShape(version);
    open.delete(version);
    made.set(version, read);
    return read;
  };
  const versionFor = (name: string, asker: Version | null): Version | null => {
    const versions = byName.get(name) ?? [];
    return versions.findLast((version) => version.from <= (asker?.from ?? 0)) ?? versions[0] ?? null;
  };
  const unknown = (name: string, node: Node, what: string): null => reportUnknown(name, node, { what, work });
  const isLine = (name: string): boolean => {
    if (splitLine(name, work.names) !== null) return true;
    const named = work.names.find(name);
    const kind = named?.is === "feature" ? named.kind : work.names.lost(name);
    return kind !== null && kind !== "peg" && !pointKinds.has(kind);
  };

  const point: Places["point"] = (name, node, asker) => {
    const named = work.names.find(name);
    if (named?.is === "peg") return work.pegs.get(name) ?? null;
    if (named?.is === "feature")
      return featurePoint(name, node, versionFor(name, asker), { shape, troubles: work.troubles });
    const corner = /^(?:(.+) )?(corner|point) (\d+)$/.exec(name);
    if (corner === null) return unknown(name, node, "a peg or a thing in the plan");
    const owner = corner[1] === undefined ? asker : versionFor(corner[1], asker);
    if (owner === null && corner[1] !== undefined && work.names.find(corner[1]) !== null) return null;
    if (owner === null) return unknown(corner[1] ?? name, node, "a thing in the plan");
    const found = shape(owner);
    const corners = found === null ? [] : cornersOf(found);
    const at = corners[Number(corner[3]) - 1];
    if (found === null) return null;
    return at === undefined
      ? reportCorner(name, node, { count: corners.length, owner, troubles: work.troubles })
      : { ...at, name };
  };

  const line: Places["line"] = (name, node, asker) => {
    const pair = splitLine(name, work.names);
    if (pair !== null) {
      const ends = pair.map((end) => point(end, node, asker));
      const [from, to] = ends;
      if (from === null || from === undefined || to === null || to === undefined) return null;
      return { points: [from, to], closed: false, name };
    }
    const version = versionFor(name, asker);
    if (version === null && work.names.find(name)?.is === "feature") return null;
    if (version === null)
      return unknown(name, node, "a line between two pegs such as P1 to P2, or a thing with a line");
    const found = shape(version);
    const live = found === null ? null : shapeLine(found);
    if (found !== null && live === null) {
      return work.troubles.report(node, {
        code: "bad-geometry",
        expected: "a line or an outline",
        got: `${kinds[version.kind]} "${name}", which is a point`,
        hint: "name a line between two pegs, such as P1 to P2",
      });
    }
    return live;
  };

  const check: Places["check"] = (name, node, asker) => {
    if (work.names.find(name) !== null || splitLine(name, work.names) !== null) return;
    if (/ ?(?:corner|point) \d+$/.test(name)) point(name, node, asker);
    else unknown(name, node, "a name that the plan has");
  };
  return { point, line, isLine, shape, check };
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
  version: Version | null,
  { shape, troubles }: { readonly shape: (version: Version) => LiveShape | null; readonly troubles: Troubles },
): LivePoint | null {
  const found = version === null ? null : shape(version);
  if (version === null || found === null) return null;
  const at = pointOf(found);
  if (at !== null) return { ...at, name, built: true };
  return troubles.report(node, {
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
