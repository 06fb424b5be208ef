// Solved remedies: how much of a change puts a finding right, what makes it sure, and what it would spoil.

import { compassWord } from "../site/compass.ts";
import { movedRead } from "../site/moved-read.ts";
import { propertyWords } from "../model/property-words.ts";
import type { Remedy } from "../model/card.ts";
import type { RemedyFound } from "../model/finding.ts";
import { type Feature, featureWords, isQuantity, propertyOf, type Shape } from "../model/plan.ts";
import type { Quantity, Read } from "../model/quantity.ts";
import type { Point, Subject } from "../model/reading.ts";
import { baseUnit, words } from "../model/units.ts";
import { evaluate, type Outcome, plainMargin } from "./evaluate.ts";
import { multiplier, slack } from "./judge.ts";
import { shownOf } from "./sentence.ts";
import { fine, leastAmount, type MarginAt, rememberedMargins } from "./least-amount.ts";
import { type Spoiled, spoiledSentence, titlesOf } from "./spoiled.ts";
import { type AroundTurning, turningRemedies } from "./turning-remedies.ts";

/** Asks the outcome anew under changed numbers. */
export interface RemedyContext extends AroundTurning {
  /** Rules that would newly fail under a changed read. */
  readonly wouldFail: (read: Read, changed: Feature) => readonly Spoiled[];
}

/** Remedies are printed in steps of this size, away from the limit (metres). */
const step = 0.05;
const farthest = 20;
/** A number is never brought down to nothing. */
const nearlyAll = 0.95;
/** The printed amount is raised at most so often, by this part of itself, until it holds with its own doubt. */
const mostTurns = 4;
const turnShare = 0.1;
/** Amounts closer than this read alike and are printed once (metres); where they are told in millimetres, than the other. */
const shownFrom = 0.005;
const alikeSmall = 0.0005;

/** All remedies of a failing or undecided outcome that can be solved, in the card's order. */
export function solveRemedies(outcome: Outcome, around: RemedyContext): readonly RemedyFound[] {
  const { remedies } = outcome.card;
  const eased = remedies.some((remedy) => "ease" in remedy) ? turningRemedies(outcome, around) : [];
  const others = remedies.filter((remedy) => !("ease" in remedy) && (eased.length === 0 || !("words" in remedy)));
  return [...eased, ...others.flatMap((remedy) => solveRemedy(remedy, outcome, around) ?? [])];
}

function solveRemedy(remedy: Remedy, outcome: Outcome, around: RemedyContext): RemedyFound | null {
  if ("words" in remedy)
    return { words: fill(remedy.words, outcome.subject), short: null, sure: null, unit: "", would_then_fail: [] };
  if ("change" in remedy) return changeNumber(remedy.change, outcome, around);
  if ("ease" in remedy) return null;
  if ("move" in remedy) return moveFeature(remedy.move, remedy.awayFrom, outcome, around);
  const feature = outcome.subject[remedy.remove];
  return feature && !feature.existing
    ? {
        words: `Leave ${featureWords(feature)} out of the plan.`,
        short: null,
        sure: null,
        unit: "",
        would_then_fail: [],
      }
    : null;
}

function fill(text: string, subject: Subject): string {
  return text.replace(/\{(\w+)\}/g, (whole, role: string) => (subject[role] ? featureWords(subject[role]) : whole));
}

/** Plain margin of the outcome's row under an amount of change; the doubt is looked at again at the amount that is printed. */
function marginsUnder(outcome: Outcome, { context }: RemedyContext, readAt: (amount: number) => Read): MarginAt {
  return rememberedMargins((amount) => {
    const read = readAt(amount);
    return plainMargin(outcome, { ...context, read, scene: { ...context.scene, read } });
  });
}

/** Whether the rule is met, doubt and all, with the changed numbers. */
function isSettled(outcome: Outcome, around: RemedyContext, read: Read): boolean {
  const { context } = around;
  const again = evaluate(outcome.card, outcome.subject, { ...context, read, scene: { ...context.scene, read } });
  return again
    .filter((other) => other.limit?.id === outcome.limit?.id)
    .every(
      (other) =>
        other.verdict === "met" ||
        other.verdict === "does-not-bear" ||
        (outcome.grade === "must" && other.grade === "should"),
    );
}

interface Solved {
  readonly short: number;
  readonly sure: number;
  /** What is printed: rounded up, and looked at again with its own doubt. */
  readonly printed: number;
}

/** Solves for what is short and what makes it sure; the printed amount is looked at with its own doubt and raised until it holds. */
function solve(
  outcome: Outcome,
  around: RemedyContext,
  readAt: (amount: number) => Read,
  { most, rounding }: { readonly most: number; readonly rounding: number },
): Solved | null {
  const marginAt = marginsUnder(outcome, around, readAt);
  const short = leastAmount(marginAt, { target: 0, most });
  if (short === null || !outcome.judged) return null;
  const enough = multiplier(outcome.grade === "should" ? "nuisance" : outcome.card.stakes) * outcome.judged.margin.u;
  const sure = leastAmount(marginAt, { target: enough, most });
  if (sure === null) return null;
  for (let turn = 0; turn < mostTurns; turn++) {
    const printed = roundUp(sure + turn * Math.max(rounding, sure * turnShare), rounding);
    if (printed <= most && isSettled(outcome, around, readAt(printed)))
      return { short, sure: turn === 0 ? sure : printed, printed };
  }
  return null;
}

function changeNumber(dotted: string, outcome: Outcome, around: RemedyContext): RemedyFound | null {
  const [role = "", ...rest] = dotted.split(".");
  const feature = outcome.subject[role];
  if (!feature || feature.existing) return null;
  const property = propertyOf(feature, rest.join("."));
  if (!isQuantity(property)) return null;
  const now = around.context.read(property);
  const rounding = roundingOf(property.dimension, rest.join("."), now);
  for (const sign of [1, -1]) {
    const most =
      sign > 0 ? Math.max(3 * Math.abs(now), property.dimension === "length" ? 2 : 0) : Math.abs(now) * nearlyAll;
    const readAt = (amount: number): Read => movedRead(around.context.read, new Map([[property.id, sign * amount]]));
    const solved = solve(outcome, around, readAt, { most, rounding });
    if (!solved) continue;
    const wouldFail = around.wouldFail(readAt(solved.printed), feature);
    const change = { property: rest.join("."), dimension: property.dimension, now, sign, shownIn: shownOf(outcome) };
    const text = changeWords(featureWords(feature), change, solved);
    return {
      words: text + spoiledSentence(wouldFail),
      short: solved.short,
      sure: solved.sure,
      unit: baseUnit[property.dimension],
      would_then_fail: titlesOf(wouldFail),
    };
  }
  return null;
}

/** Rounded away from the limit. */
const roundUp = (amount: number, to: number) => Math.ceil((amount - slack) / to) * to;

/** Numbers that are levels: told to the millimetre, with the step in millimetres. */
const levels = /(?:^|[._])(?:invert|level|floor|damp_course)$/;
/** Lengths below this are told in millimetres (m). */
const small = 0.2;
/** Levels and small lengths are changed in steps of this (m). */
const smallStep = 0.005;

function roundingOf(dimension: Quantity["dimension"], property: string, now: number): number {
  if (dimension !== "length") return fine;
  return levels.test(property) || Math.abs(now) < small ? smallStep : step;
}

interface Change {
  readonly property: string;
  readonly dimension: Quantity["dimension"];
  readonly now: number;
  readonly sign: number;
  readonly shownIn: string | undefined;
}

/** `Make the height of fence "hens" 1.75 m (now 1.04 m): 0.67 m more would just do, 0.71 m to be sure.` */
function changeWords(whose: string, { property, dimension, now, sign, shownIn }: Change, solved: Solved): string {
  const isLevel = dimension === "length" && levels.test(property);
  const wording = wordingOf({ dimension, isLevel, now, shownIn });
  const number = (value: number) => words(value, dimension, wording);
  const how = isLevel ? (sign > 0 ? "higher" : "lower") : sign > 0 ? "more" : "less";
  const size = property === "bore" && sign > 0 ? " or the next larger size that is made" : "";
  const amounts =
    dimension === "slope"
      ? ""
      : `: ${amountsWords(solved, dimension, isLevel || wording.shownIn === "mm" ? "mm" : "m", how)}`;
  return `Make the ${propertyWords(property)} of ${whose} ${number(now + sign * solved.printed)}${size} (now ${number(now)})${amounts}.`;
}

function wordingOf({ dimension, isLevel, now, shownIn }: Omit<Change, "property" | "sign"> & { isLevel: boolean }) {
  if (dimension === "slope") return shownIn === "1 in" ? { shownIn } : {};
  if (dimension !== "length") return {};
  if (isLevel) return { decimals: 3 };
  return Math.abs(now) < small ? { shownIn: "mm" } : {};
}

/** `0.67 m more would just do, 0.71 m to be sure`. */
function amountsWords(
  { short, sure }: Solved,
  dimension: Quantity["dimension"],
  unit: "m" | "mm",
  how: string,
): string {
  const wording = dimension !== "length" ? {} : unit === "mm" ? { shownIn: "mm" } : { decimals: 2 };
  const more = how === "" ? "" : ` ${how}`;
  const text = (amount: number) => words(amount, dimension, wording);
  const alike = dimension === "length" && (unit === "mm" ? alikeSmall : shownFrom);
  if (alike && short < alike) return `${text(sure)}${more} to be sure`;
  if (alike && sure - short < alike) return `${text(short)}${more} will do`;
  return `${text(short)}${more} would just do, ${text(sure)} to be sure`;
}

function moveFeature(role: string, fromRole: string, outcome: Outcome, around: RemedyContext): RemedyFound | null {
  const feature = outcome.subject[role];
  const other = outcome.subject[fromRole];
  if (
    !feature ||
    !other ||
    feature.existing ||
    !outcome.judged ||
    spotsOf(feature.shape).some((spot) => spot.name !== undefined)
  )
    return null;
  const direction = directionApart(outcome, feature, other, around.context.read);
  if (!direction) return null;
  const own = spotsOf(feature.shape);
  const readAt = (amount: number): Read => {
    const norths = own.map((spot) => [spot.north.id, amount * direction[1]] as const);
    const easts = own.map((spot) => [spot.east.id, amount * direction[0]] as const);
    return movedRead(around.context.read, new Map([...norths, ...easts]));
  };
  const solved = solve(outcome, around, readAt, { most: farthest, rounding: step });
  if (!solved) return null;
  const wouldFail = around.wouldFail(readAt(solved.printed), feature);
  const text = `Move ${featureWords(feature)} ${words(solved.printed, "length")} to the ${compassWord(direction)}, away from ${featureWords(other)} (${amountsWords(solved, "length", "m", "")}).`;
  return {
    words: text + spoiledSentence(wouldFail),
    short: solved.short,
    sure: solved.sure,
    unit: "m",
    would_then_fail: titlesOf(wouldFail),
  };
}

function spotsOf(shape: Shape | null) {
  if (!shape) return [];
  if (shape.form === "point") return [shape.at];
  if (shape.form === "circle") return [shape.centre];
  return shape.form === "line" ? shape.line : [...shape.outline, ...shape.holes.flat()];
}

/** From the other thing towards the feature, along the witness of the worst place, else between their middles. */
function directionApart(outcome: Outcome, feature: Feature, other: Feature, read: Read): Point | null {
  const witness = outcome.judged?.place
    .witness(read)
    .find((mark) => mark.part === "found" && mark.form === "line" && mark.points.length >= 2);
  const a = middle(feature, read);
  const b = middle(other, read);
  if (!a || !b) return null;
  const ends = witness ? [witness.points[0] as Point, witness.points.at(-1) as Point] : [b, a];
  const along: Point = [(ends[1]?.[0] ?? 0) - (ends[0]?.[0] ?? 0), (ends[1]?.[1] ?? 0) - (ends[0]?.[1] ?? 0)];
  const length = Math.hypot(...along);
  if (length < 1e-6) return null;
  const towards = along[0] * (a[0] - b[0]) + along[1] * (a[1] - b[1]) >= 0 ? 1 : -1;
  return [(towards * along[0]) / length, (towards * along[1]) / length];
}

function middle(feature: Feature, read: Read): Point | null {
  const spots = spotsOf(feature.shape);
  if (spots.length === 0) return null;
  const mean = (pick: (index: number) => number) =>
    spots.reduce((sum, _, index) => sum + pick(index), 0) / spots.length;
  return [
    mean((index) => read((spots[index] as { east: Quantity }).east)),
    mean((index) => read((spots[index] as { north: Quantity }).north)),
  ];
}
