// How deep the trench of a drain or service is dug, from its inverts and the ground, where the plan does not state it.

import { type Feature, isQuantity, type LevelledPlace, type Properties, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import { type DrainNode, type LiveNumber, type StandingOf } from "../site/drain-nodes.ts";
import { drainRuns } from "../site/drain-runs.ts";
import { groundLevelAt, groundOf } from "../site/ground.ts";
import { isDug, isForm } from "../site/trenches.ts";
import { keyOfKind } from "../model/kinds.ts";
import type { BookWriter } from "./number-book.ts";
import { beddingDepth, type Customs } from "./practice.ts";
import { follows, type Uncertain } from "./sway.ts";

export interface TrenchWork {
  readonly book: BookWriter;
  readonly customs: Customs;
  readonly levels: readonly LevelledPlace[];
}

/** Every drain and buried service that is dug, with the greatest depth of its trench where that can be told. */
export function withTrenches(features: readonly Feature[], work: TrenchWork): readonly Feature[] {
  return features.map((written) => {
    const feature = withCourse(written);
    if (!isDug(feature) || isQuantity(propertyOf(feature, "trench.depth"))) return feature;
    const depths = depthsOf(feature, features, work);
    if (depths.length === 0) return feature;
    const deepest = depths.map((depth) => worked(depth, work.book)).reduce((a, b) => (b.value > a.value ? b : a));
    if (feature.kind === "drain" && isPiped(feature))
      work.customs.assume("trenches are dug 100 mm deeper than the invert, for the bed of the pipe (common practice)");
    const depth = work.book.seal(deepest, "length", feature.place);
    const trench = { ...(feature.properties["trench"] as Properties | undefined), depth };
    return { ...feature, properties: { ...feature.properties, trench } };
  });
}

/** A service that is said to be neither overhead nor in the ground is taken to lie in it. */
function withCourse(feature: Feature): Feature {
  const { overhead, buried } = feature.properties;
  if (feature.kind !== "service" || overhead !== undefined || buried !== undefined) return feature;
  return { ...feature, properties: { ...feature.properties, buried: {} } };
}

const open: ReadonlySet<string> = new Set(["ditch", "swale"]);

function isPiped(drain: Feature): boolean {
  return !isForm(drain, open);
}

/** Depths at the places where they can be told; none where the deepest may be elsewhere. */
function depthsOf(feature: Feature, all: readonly Feature[], work: TrenchWork): readonly LiveNumber[] {
  if (feature.kind === "service") return plainDepth(feature, ["buried.depth", "buried.across"]);
  if (!isPiped(feature)) return plainDepth(feature, ["section.depth"]);
  const standing = all.filter(({ from, until }) => from <= feature.from && (until === null || feature.from < until));
  const standingOf: StandingOf = (key) => standing.filter((one) => keyOfKind(one.kind) === key);
  const runs = drainRuns(feature, standingOf);
  const nodes = [...runs.map((run) => run.upper), ...runs.slice(-1).map((run) => run.lower)];
  const depths = nodes.map((node) => depthAt(node, work));
  const [first, last] = [depths[0], depths.at(-1)];
  const bedded = depths.flatMap((depth): LiveNumber[] => (depth ? [(read) => depth(read) + beddingDepth] : []));
  if (first && last) return bedded;
  return feature.properties["form"] === "french drain" ? plainDepth(feature, ["stone.depth"]) : [];
}

function plainDepth(feature: Feature, properties: readonly [string, ...string[]]): readonly LiveNumber[] {
  const numbers = properties.map((property) => propertyOf(feature, property));
  if (!isQuantity(numbers[0])) return [];
  return [(read) => numbers.filter(isQuantity).reduce((sum, number) => sum + read(number), 0)];
}

function depthAt({ feature, spot, invert }: DrainNode, { levels, book }: TrenchWork): LiveNumber | null {
  const cover = feature?.kind === "chamber" ? propertyOf(feature, "cover") : undefined;
  const plain = plainRead(book);
  const ground: LiveNumber | null = isQuantity(cover)
    ? (read) => read(cover)
    : groundLevelAt(groundOf({ levels, read: plain }), spot, plain);
  return ground && invert ? (read) => ground(read) - invert(read) : null;
}

function plainRead(book: BookWriter): Read {
  const { values } = book.finish();
  return (quantity) => values[quantity.id] as number;
}

/** A step for central differences, metres: depths follow levels in a straight line, so any small one will do. */
const step = 1e-4;

/** What follows from sealed numbers, with its doubt: slopes by central differences. */
function worked(depth: LiveNumber, book: BookWriter): Uncertain {
  const { values, sways } = book.finish();
  const noted = new Set<number>();
  const value = depth((quantity) => {
    noted.add(quantity.id);
    return values[quantity.id] as number;
  });
  const moved = (id: number, by: number): number =>
    depth((quantity) => (values[quantity.id] as number) + (quantity.id === id ? by : 0));
  return follows(
    value,
    [...noted].map((id) => [
      (moved(id, step) - moved(id, -step)) / (2 * step),
      { value: values[id] as number, sway: sways[id] ?? new Map<number, number>() },
    ]),
  );
}
