// Which features a card is about at a stage, and which pairs lie within its reach.

import { type Box, grownBox } from "../geometry/box.ts";
import { type BoxIndex, indexBoxes } from "../geometry/index-boxes.ts";
import type { Card, RoleChoice } from "../model/card.ts";
import { type Feature, isQuantity, propertyOf, roleAndProperty } from "../model/plan.ts";
import type { Quantity, Read } from "../model/quantity.ts";
import type { Subject } from "../model/reading.ts";

/** Whether a feature stands at the end of a stage. */
export function standsAt(feature: Feature, stage: number): boolean {
  return feature.from <= stage && (feature.until === null || stage < feature.until);
}

/** West, south, east, north of a feature's shape; null where it has none. */
export type Extent = readonly [number, number, number, number];

/** Extent of a feature with its crown at the plan's own values. */
export function extentOf(feature: Feature, read: Read): Extent | null {
  const { shape } = feature;
  if (!shape) return null;
  const crown = propertyOf(feature, "crown.radius");
  const reach = isQuantity(crown) ? read(crown) : 0;
  const half =
    reach +
    (shape.form === "circle"
      ? read(shape.across) / 2
      : shape.form === "line" && shape.width
        ? read(shape.width) / 2
        : 0);
  const spots =
    shape.form === "point"
      ? [shape.at]
      : shape.form === "circle"
        ? [shape.centre]
        : shape.form === "line"
          ? shape.line
          : shape.outline;
  const axis = (quantities: readonly Quantity[]) => quantities.map(read);
  const east = axis(spots.map((spot) => spot.east));
  const north = axis(spots.map((spot) => spot.north));
  if (east.length === 0) return null;
  return [Math.min(...east) - half, Math.min(...north) - half, Math.max(...east) + half, Math.max(...north) + half];
}

/** Gap between two extents along the worse axis; negative where they overlap on both. */
function extentGap(a: Extent, b: Extent): number {
  return Math.max(a[0] - b[2], b[0] - a[2], a[1] - b[3], b[1] - a[3]);
}

/** Features that can play a role; `everything` is all that has a shape, `site` is none of them. */
export function choose(role: RoleChoice, standing: readonly Feature[]): readonly Feature[] {
  if (role.kinds.includes("everything")) return standing.filter((feature) => feature.shape !== null && !feature.partOf);
  return standing.filter((feature) => role.kinds.includes(feature.kind));
}

/** Finds the subjects of cards among the features of a stage. */
export interface SubjectFinder {
  /** All subjects: single features, or pairs within reach, unordered where both sides select the same kind. */
  readonly all: (card: Card) => readonly Subject[];
  /** Those that one feature plays a role in, wherever it may lie now. */
  readonly having: (card: Card, feature: Feature, extent: Extent | null) => readonly Subject[];
}

type ExtentOf = (feature: Feature) => Extent | null;

type ChoiceOf = (role: RoleChoice) => Choice;

/** What can play a role; cards with the same kinds share it. */
function choosing(standing: readonly Feature[], extent: ExtentOf): ChoiceOf {
  const ofKinds = new Map<string, Choice>();
  return keptBy((role: RoleChoice): Choice => {
    const key = role.kinds.join("\n");
    const made = ofKinds.get(key) ?? choiceAmong(choose(role, standing), extent);
    ofKinds.set(key, made);
    return made;
  });
}

/** The same function, which works out each answer once. */
function keptBy<Key, Answer>(answer: (key: Key) => Answer): (key: Key) => Answer {
  const kept = new Map<Key, Answer>();
  return (key) => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    const made = answer(key);
    kept.set(key, made);
    return made;
  };
}

/** A finder over what stands; lists and indexes are made when they are first asked for. */
export function subjectFinder(standing: readonly Feature[], extent: ExtentOf, read?: Read): SubjectFinder {
  const order = new Map(standing.map((feature, index) => [feature, index]));
  const choiceOf = choosing(standing, extent);
  const reachOf = keptBy((card: Card) => farthestReach(card, choiceOf, read));
  const pairing = ({ about, against, narrowed }: Card, lies = extent) => {
    const [first, second] = [choiceOf(about), choiceOf(against ?? about)];
    return (one: Feature, other: Feature): readonly Subject[] => {
      if (!against || other === one || other.partOf === one || one.partOf === other) return noSubject;
      const eitherWay = second.has(one) && first.has(other);
      if (eitherWay && (order.get(one) ?? 0) > (order.get(other) ?? 0)) return noSubject;
      const subject: Subject = { [about.role]: one, [against.role]: other };
      return !narrowed || !read || withinNarrowed(narrowed, subject, { extent: lies, read }) ? [subject] : noSubject;
    };
  };
  return {
    all: (card) => {
      const { about, against } = card;
      const { features } = choiceOf(about);
      if (!against) return features.map((feature) => ({ [about.role]: feature }));
      const [others, reach, pair] = [choiceOf(against), reachOf(card), pairing(card)];
      return features.flatMap((one) => others.near(extent(one), reach).flatMap((other) => pair(one, other)));
    },
    having: (card, feature, its) => {
      const { about, against } = card;
      const first = choiceOf(about);
      if (!against) return first.has(feature) ? [{ [about.role]: feature }] : [];
      const second = choiceOf(against);
      if (!first.has(feature) && !second.has(feature)) return [];
      const [reach, pair] = [reachOf(card), pairing(card, (one) => (one === feature ? its : extent(one)))];
      return [
        ...(first.has(feature) ? second.near(its, reach).flatMap((other) => pair(feature, other)) : []),
        ...(second.has(feature) ? first.near(its, reach).flatMap((one) => pair(one, feature)) : []),
      ];
    },
  };
}

const noSubject: readonly Subject[] = [];

/** No pair of a card lies farther apart than this, by what it names and by the numbers that narrow it; null where nothing bounds it. */
function farthestReach(card: Card, choiceOf: ChoiceOf, read: Read | undefined): number | null {
  const { about, against, within, narrowed } = card;
  if (!narrowed || !read) return within;
  const [role, property] = roleAndProperty(narrowed.of);
  const of = role === about.role ? about : against;
  if (!of || of.role !== role) return within;
  const reaches = choiceOf(of).features.map((feature) => narrowedReach(narrowed, propertyOf(feature, property), read));
  const farthest = reaches.reduce((most, reach) => Math.max(most, reach), -Infinity);
  return farthest < (within ?? Infinity) ? farthest : within;
}

/** Features that can play a role, and which of them lie within a reach of an extent, in the order of the plan. */
interface Choice {
  readonly features: readonly Feature[];
  readonly has: (feature: Feature) => boolean;
  readonly near: (extent: Extent | null, reach: number | null) => readonly Feature[];
}

/** Below this many, comparing with each is quicker than an index. */
const fewFeatures = 32;
/** The index is asked a little farther, and what it finds is compared exactly. */
const roundingRoom = 1e-6;

function choiceAmong(features: readonly Feature[], extent: ExtentOf): Choice {
  const held = new Set(features);
  let index: BoxIndex | null = null;
  const unplaced = features.flatMap((feature, at) => (extent(feature) ? [] : [at]));
  const near = (box: Extent, reach: number): readonly Feature[] => {
    index ??= indexBoxes(features.map((feature) => boxOf(extent(feature))));
    const found = index.meeting(grownBox(boxOf(box) as Box, reach + roundingRoom));
    const places = unplaced.length === 0 ? found : [...found, ...unplaced].sort((a, b) => a - b);
    return places.map((at) => features[at] as Feature);
  };
  return {
    features,
    has: (feature) => held.has(feature),
    near: (box, reach) => {
      if (!box || reach === null) return features;
      const candidates = features.length < fewFeatures ? features : near(box, reach);
      return candidates.filter((feature) => withinReach(box, extent(feature), reach));
    },
  };
}

function boxOf(extent: Extent | null): Box | null {
  return extent && { west: extent[0], south: extent[1], east: extent[2], north: extent[3] };
}

interface Drawn {
  readonly extent: ExtentOf;
  readonly read: Read;
}

/** The reach that a number of a pair tells, metres; without bound where it is not given. */
function narrowedReach(
  { times, upTo, downTo }: NonNullable<Card["narrowed"]>,
  number: ReturnType<typeof propertyOf>,
  read: Read,
): number {
  return isQuantity(number) ? Math.max(downTo ?? 0, Math.min(upTo ?? Infinity, times * read(number))) : Infinity;
}

/** Whether the two of a pair lie within the reach that one's own number tells; where it is not given they do. */
function withinNarrowed(narrowed: NonNullable<Card["narrowed"]>, subject: Subject, { extent, read }: Drawn): boolean {
  const [role, property] = roleAndProperty(narrowed.of);
  const number = subject[role] && propertyOf(subject[role], property);
  if (!isQuantity(number)) return true;
  const reach = narrowedReach(narrowed, number, read);
  const [one, other] = Object.values(subject).map((feature) => feature && extent(feature));
  return !one || !other || extentGap(one, other) <= reach;
}

function withinReach(a: Extent, b: Extent | null, reach: number): boolean {
  return !b || extentGap(a, b) <= reach;
}
