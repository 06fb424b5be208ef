// The candidate place that decides: the one by which a requirement is least likely met.

import type { Card } from "../model/card.ts";
import type { NumberBook, Read } from "../model/quantity.ts";
import type { CandidatePlace } from "../model/reading.ts";
import { type Judged, judge, type Margin } from "./judge.ts";
import { type LiveRequirement, margins } from "./requirement.ts";
import { doubtOfNumber, doubtsRead, readNoting, type Spread, spread } from "./spread.ts";
import { allSurelyInside } from "./surely-inside.ts";

/** A judged place: everything a finding needs. */
export interface JudgedPlace {
  readonly place: CandidatePlace;
  /** The plain reading; `value` is the same with its doubt. */
  readonly reading: number;
  readonly value: Spread;
  readonly inside: Spread;
  readonly margin: Margin;
  readonly requirement: LiveRequirement;
  readonly verdict: Judged;
  readonly probability: number;
}

/** What places are judged with. */
export interface PlaceContext {
  readonly stakes: Card["stakes"];
  readonly read: Read;
  readonly book: NumberBook;
}

interface Plain {
  readonly place: CandidatePlace;
  readonly least: number;
}

/** Places looked at closely: those whose margin is within this many u of the least one. */
const closeEnough = 4;
const mostPlaces = 60;
/** A number that is known no better than this many metres is not known. */
const unknown = 1e9;

/**
 * Judges the candidate places and gives the worst: by probability, then by margin. Null where that cannot be told,
 * because a reading that would have to be met is not a number.
 */
export function worstPlace(
  places: readonly CandidatePlace[],
  requirement: LiveRequirement,
  context: PlaceContext,
): JudgedPlace | null {
  const noted = new Set<number>();
  const noting = readNoting(context.read, noted);
  const plain = places.map((place): Plain => ({ place, least: leastMargin(place, requirement, noting) }));
  const ordered = plain
    .filter(({ least }) => Number.isFinite(least))
    .sort((a, b) => a.least - b.least || (a.place.key < b.place.key ? -1 : 1));
  const [first] = ordered;
  if (first && ordered.length === plain.length && allSurelyInside(first.least, { places, requirement, noted, context }))
    return placeMet(first.place, requirement, context);
  const worst = worstOfNearest(ordered, requirement, context);
  if (worst?.verdict !== "met") return worst;
  if (plain.some(({ least }) => Number.isNaN(least) || least === -Infinity)) return null;
  return hardlyKnown(ordered, worst, { requirement, context, most: mostDoubt(places, noted, context) });
}

function worstOfNearest(
  ordered: readonly Plain[],
  requirement: LiveRequirement,
  context: PlaceContext,
): JudgedPlace | null {
  let worst: JudgedPlace | null = null;
  let widest = 0;
  for (const { place, least } of ordered.slice(0, mostPlaces)) {
    if (worst && least > (ordered[0]?.least ?? 0) + closeEnough * widest) break;
    const judged = judgePlace(place, requirement, context);
    widest = Math.max(widest, judged.inside.u);
    if (!worst || isWorse(judged, worst)) worst = judged;
  }
  return worst;
}

/**
 * Where the nearest places are met: the worst of the farther ones whose numbers are known so badly that they may not
 * be. How far a place may move is reckoned as all of its numbers' own doubts together, times what one of them moves
 * the worst place at most.
 */
function hardlyKnown(
  ordered: readonly Plain[],
  worst: JudgedPlace,
  {
    requirement,
    context,
    most,
  }: { readonly requirement: LiveRequirement; readonly context: PlaceContext; readonly most: number },
): JudgedPlace | null {
  const doubtOf = ({ place }: Plain) => doubtOfNumbers(place, requirement, context);
  const own = doubtOf({ place: worst.place, least: 0 });
  const gain = Math.max(1, own > 0 ? worst.inside.u / own : 1);
  // Where even all doubts of all places together would not reach, none needs to be looked at by itself.
  if (most < unknown && (ordered[0]?.least ?? 0) >= closeEnough * gain * most) return worst;
  const doubts = ordered.map((one) => ({ one, doubt: doubtOf(one) }));
  if (doubts.some(({ doubt }) => !(doubt < unknown))) return null;
  return doubts
    .filter(({ one, doubt }) => one.least < closeEnough * gain * doubt)
    .sort((a, b) => a.one.least / a.doubt - b.one.least / b.doubt)
    .slice(0, mostPlaces)
    .map(({ one }) => judgePlace(one.place, requirement, context))
    .filter((judged) => judged.verdict !== "met")
    .reduce((a, b) => (isWorse(b, a) ? b : a), worst);
}

/** No place's numbers are in more doubt together than this. */
function mostDoubt(places: readonly CandidatePlace[], noted: ReadonlySet<number>, { book }: PlaceContext): number {
  let most = 0;
  for (const { methodU } of places) most = Math.max(most, methodU ?? 0);
  for (const id of noted) most += doubtOfNumber(book, id);
  return most;
}

/** Sum of the standard uncertainties of all numbers that a place's margin is made of. */
function doubtOfNumbers(place: CandidatePlace, requirement: LiveRequirement, { read, book }: PlaceContext): number {
  const margin = (noting: Read) => leastMargin(place, requirement, noting);
  return (place.methodU ?? 0) + doubtsRead(margin, read, book).doubts;
}

/** Least margin of a place, without doubt. */
export function leastMargin(place: CandidatePlace, requirement: LiveRequirement, read: Read): number {
  const { inside, other } = margins(requirement, place.value);
  return Math.min(inside(read), other ? other(read) : Infinity);
}

/** A place that is surely met; what doubt it has is worked out when it is asked for. */
function placeMet(place: CandidatePlace, requirement: LiveRequirement, { read, book }: PlaceContext): JudgedPlace {
  const { inside, u } = margins(requirement, place.value);
  let value: Spread | null = null;
  let margin: Spread | null = null;
  const insideNow = () => (margin ??= spread(inside, read, book, Math.hypot(place.methodU ?? 0, u)));
  const reading = place.value(read);
  return {
    place,
    requirement,
    reading,
    verdict: "met",
    probability: 1,
    get value() {
      return (value ??= spread(place.value, read, book, place.methodU));
    },
    get inside() {
      return insideNow();
    },
    margin: {
      inside: inside(read),
      size: reading,
      get u() {
        return insideNow().u;
      },
    },
  };
}

function judgePlace(
  place: CandidatePlace,
  requirement: LiveRequirement,
  { stakes, read, book }: PlaceContext,
): JudgedPlace {
  const { inside, other, u } = margins(requirement, place.value);
  const insideSpread = spread(inside, read, book, Math.hypot(place.methodU ?? 0, u));
  const margin: Margin = {
    inside: insideSpread.value,
    u: insideSpread.u,
    size: place.value(read),
    ...(other ? { other: other(read) } : {}),
  };
  const { verdict, probability } = judge(margin, stakes);
  // The doubt of the reading itself is told of the worst place only: of the others it is never worked out.
  let value: Spread | null = null;
  return {
    place,
    reading: margin.size,
    get value() {
      return (value ??= spread(place.value, read, book, place.methodU));
    },
    inside: insideSpread,
    margin,
    requirement,
    verdict,
    probability,
  };
}

/** Whether a judged place is worse than another: less likely met, else with the smaller margin. */
export function isWorse(a: JudgedPlace, b: JudgedPlace): boolean {
  if (Math.abs(a.probability - b.probability) > 1e-12) return a.probability < b.probability;
  return (
    Math.min(a.margin.inside, a.margin.other ?? Infinity) <
    Math.min(b.margin.inside, b.margin.other ?? Infinity) - 1e-12
  );
}
