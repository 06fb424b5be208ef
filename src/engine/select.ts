// Which features a card is about at a stage, and which pairs lie within its reach.

import { type Box, boxDistance, grownBox, joinedBox } from "../geometry/box.ts";
import { areaFigure, type Figure, figureBox, lineFigure, pointFigure } from "../geometry/figure.ts";
import { type BoxIndex, indexBoxes } from "../geometry/index-boxes.ts";
import { nearest } from "../geometry/nearest.ts";
import { polygonOf } from "../geometry/polygon.ts";
import type { Card, RoleChoice } from "../model/card.ts";
import { type Feature, isQuantity, propertyOf, roleAndProperty, type Shape } from "../model/plan.ts";
import type { Read, Spot } from "../model/quantity.ts";
import type { Point, Subject } from "../model/reading.ts";

/** Whether a feature stands at the end of a stage. */
export function standsAt(feature: Feature, stage: number): boolean {
  return feature.from <= stage && (feature.until === null || stage < feature.until);
}

/** How a feature lies on the ground at the plan's own values: its drawn shape, how far it has grown round that, and the box round both. */
export interface Lie {
  readonly figure: Figure;
  /** Half its width or diameter and the radius of its crown, m. */
  readonly grow: number;
  readonly box: Box;
}

/** Lie of a feature; null where it has no shape. */
export function lieOf(feature: Feature, read: Read): Lie | null {
  const { shape } = feature;
  if (!shape) return null;
  const point = ({ east, north }: Spot): Point => [read(east), read(north)];
  const crown = propertyOf(feature, "crown.radius");
  const grow = (isQuantity(crown) ? read(crown) : 0) + halfAcross(shape, read);
  const figure = figureOf(shape, point);
  const box = figureBox(figure);
  return box && { figure, grow, box: grownBox(box, grow) };
}

function halfAcross(shape: Shape, read: Read): number {
  if (shape.form === "circle") return read(shape.across) / 2;
  return shape.form === "line" && shape.width ? read(shape.width) / 2 : 0;
}

function figureOf(shape: Shape, point: (spot: Spot) => Point): Figure {
  if (shape.form === "point") return pointFigure(point(shape.at));
  if (shape.form === "circle") return pointFigure(point(shape.centre));
  if (shape.form === "line") return lineFigure(shape.line.map(point));
  return areaFigure(
    polygonOf(
      shape.outline.map(point),
      shape.holes.map((hole) => hole.map(point)),
    ),
  );
}

/**
 * Whether two things come within `reach` metres of each other, by their true distance: upright boxes would choose other pairs
 * when the plot is turned. They are looked at first, as most pairs can be told by them.
 */
function comeWithin(a: Lie, b: Lie, reach: number): boolean {
  const most = reach + roundingRoom;
  if (boxDistance(a.box, b.box) > most) return false;
  const both = joinedBox(a.box, b.box);
  if (Math.hypot(both.east - both.west, both.north - both.south) <= most) return true;
  const found = nearest(a.figure, b.figure);
  return found !== null && found.distance - a.grow - b.grow <= most;
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
  readonly having: (card: Card, feature: Feature, lie: Lie | null) => readonly Subject[];
}

type LieOf = (feature: Feature) => Lie | null;

type ChoiceOf = (role: RoleChoice) => Choice;

/** What can play a role; cards with the same kinds share it. */
function choosing(standing: readonly Feature[], lie: LieOf): ChoiceOf {
  const ofKinds = new Map<string, Choice>();
  return keptBy((role: RoleChoice): Choice => {
    const key = role.kinds.join("\n");
    const made = ofKinds.get(key) ?? choiceAmong(choose(role, standing), lie);
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
export function subjectFinder(standing: readonly Feature[], lie: LieOf, read?: Read): SubjectFinder {
  const order = new Map(standing.map((feature, index) => [feature, index]));
  const choiceOf = choosing(standing, lie);
  const reachOf = keptBy((card: Card) => farthestReach(card, choiceOf, read));
  const pairing = ({ about, against }: Card) => {
    const [first, second] = [choiceOf(about), choiceOf(against ?? about)];
    return (one: Feature, other: Feature): readonly Subject[] => {
      if (!against || other === one || other.partOf === one || one.partOf === other) return noSubject;
      const eitherWay = second.has(one) && first.has(other);
      if (eitherWay && (order.get(one) ?? 0) > (order.get(other) ?? 0)) return noSubject;
      return [{ [about.role]: one, [against.role]: other }];
    };
  };
  return {
    all: (card) => {
      const { about, against } = card;
      const { features } = choiceOf(about);
      if (!against) return features.map((feature) => ({ [about.role]: feature }));
      const [others, reach, pair] = [choiceOf(against), reachOf(card), pairing(card)];
      return features.flatMap((one) =>
        others.near(lie(one), reach, narrowing(card, { about: one }, read)).flatMap((other) => pair(one, other)),
      );
    },
    having: (card, feature, its) => {
      const { about, against } = card;
      const first = choiceOf(about);
      if (!against) return first.has(feature) ? [{ [about.role]: feature }] : [];
      const second = choiceOf(against);
      const [reach, pair] = [reachOf(card), pairing(card)];
      const among = (others: Choice, own: Fixed) => others.near(its, reach, narrowing(card, own, read));
      return [
        ...(first.has(feature) ? among(second, { about: feature }).flatMap((other) => pair(feature, other)) : []),
        ...(second.has(feature) ? among(first, { against: feature }).flatMap((one) => pair(one, feature)) : []),
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

/** Features that can play a role, and which of them come within a reach of a thing, in the order of the plan. */
interface Choice {
  readonly features: readonly Feature[];
  readonly has: (feature: Feature) => boolean;
  readonly near: (lie: Lie | null, reach: number | null, narrower: ReachTo | null) => readonly Feature[];
}

/** Below this many, comparing with each is quicker than an index. */
const fewFeatures = 32;
/** A pair this little beyond a reach (m) is looked at too, so that rounding does not choose. */
const roundingRoom = 1e-6;

function choiceAmong(features: readonly Feature[], lieOfOne: LieOf): Choice {
  const held = new Set(features);
  let index: BoxIndex | null = null;
  const unplaced = features.flatMap((feature, at) => (lieOfOne(feature) ? [] : [at]));
  const near = ({ box }: Lie, reach: number): readonly Feature[] => {
    index ??= indexBoxes(features.map((feature) => lieOfOne(feature)?.box ?? null));
    const found = index.meeting(grownBox(box, reach + roundingRoom));
    const places = unplaced.length === 0 ? found : [...found, ...unplaced].sort((a, b) => a - b);
    return places.map((at) => features[at] as Feature);
  };
  return {
    features,
    has: (feature) => held.has(feature),
    near: (its, reach, narrower) => {
      if (!its || (reach === null && !narrower)) return features;
      const candidates = reach === null || features.length < fewFeatures ? features : near(its, reach);
      return candidates.filter((feature) => {
        const other = lieOfOne(feature);
        const most = Math.min(reach ?? Infinity, narrower?.(feature) ?? Infinity);
        return !other || most === Infinity || comeWithin(its, other, most);
      });
    },
  };
}

/** The reach that a number of a pair tells, metres; without bound where it is not given. */
function narrowedReach(
  { times, upTo, downTo }: NonNullable<Card["narrowed"]>,
  number: ReturnType<typeof propertyOf>,
  read: Read,
): number {
  return isQuantity(number) ? Math.max(downTo ?? 0, Math.min(upTo ?? Infinity, times * read(number))) : Infinity;
}

/** The one of a pair that is given, while the other is looked for. */
type Fixed = { readonly about: Feature } | { readonly against: Feature };
/** How near (m) one of a pair has to come for the pair to be looked at. */
type ReachTo = (other: Feature) => number;

/** What a number of either of the two narrows a card's reach to; null where nothing does. */
function narrowing({ about, against, narrowed }: Card, fixed: Fixed, read: Read | undefined): ReachTo | null {
  if (!narrowed || !read) return null;
  const [role, property] = roleAndProperty(narrowed.of);
  const [own, ownRole] = "about" in fixed ? [fixed.about, about.role] : [fixed.against, against?.role];
  if (role !== ownRole) return (other) => narrowedReach(narrowed, propertyOf(other, property), read);
  const reach = narrowedReach(narrowed, propertyOf(own, property), read);
  return () => reach;
}
