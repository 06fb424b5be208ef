// What would let a vehicle do its manoeuvre: waiting for its ground, a loose thing moved off, a side of the ground carried
// out, or one more change each way. The amount is found by search, and judged anew with its doubt before it is told.

import type { RemedyFound } from "../model/finding.ts";
import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Witness } from "../model/reading.ts";
import { words } from "../model/units.ts";
import { areaOf, names } from "../site/drive-ends.ts";
import { hasWay, type Look } from "../site/drive-room.ts";
import type { Drive } from "../site/drive.ts";
import { awayEase, canMove, type Ease, isTaken, sideEases, widthEase } from "../site/eases.ts";
import { ringAt } from "../site/live-ring.ts";
import { splayEases } from "../site/splay-eases.ts";
import { drivesAt } from "../site/manoeuvre-states.ts";
import { evaluate, type EvaluationContext, type Outcome } from "./evaluate.ts";
import { oneSided } from "./judge.ts";
import { halved, leastOfMany } from "./least-of-many.ts";
import { freshNumbers, type FreshNumbers, replacedScene, type Replaced } from "./variant.ts";
import { wantedValues } from "./sentence.ts";
import { type Spoiled, spoiledSentence, titlesOf } from "./spoiled.ts";

/** What a remedy may ask about the rest of the plan. */
export interface AroundTurning {
  readonly context: EvaluationContext;
  /** All features of the plan, of all stages. */
  readonly features: readonly Feature[];
  /** False where only what needs no search is told. */
  readonly searches: boolean;
  /** Rules that would newly fail with one thing in place of another. */
  readonly wouldFailWith: (changed: Variant, was: Feature, becomes: Feature) => readonly Spoiled[];
}

/** The plan with something changed, as rules see it. */
export type Variant = Pick<EvaluationContext, "book" | "read" | "scene">;

/** Changes of direction are added in pairs, so that it leaves the way it was to leave. */
const moreMoves = 2;
/** Amounts are counted in steps of so much, m. */
const step = 0.05;
/** So many steps beyond what a quick look found are tried until the rule is met with its doubt. */
const raises = [0, 2] as const;
/** A closer look brings an amount that a quick look found down by at most so many steps. */
const closerSteps = 4;
/** Room beyond the wanted (m) that is looked for: a step by which the rule itself looks beyond it. */
const leastSpare = 0.05;

/** Stands for what a search would tell. */
const askFor: RemedyFound = {
  words: "Which side must go out, or what must move, and how far, is searched for with --remedies (some seconds).",
  short: null,
  sure: null,
  unit: "",
  would_then_fail: [],
};

/** Remedies of a manoeuvre that has no room; none where it is not known where it starts and ends. */
export function turningRemedies(outcome: Outcome, around: AroundTurning): readonly RemedyFound[] {
  const { manoeuvre } = outcome.subject;
  const { context } = around;
  const judged = outcome.judged;
  if (!manoeuvre || !judged) return [];
  const drives = drivesIn(manoeuvre, context.scene);
  const [wanted] = wantedValues(judged.requirement, context.read);
  if (!drives || wanted === undefined) return [];
  const spare = Math.max(leastSpare, survey(outcome));
  const work: Work = { outcome, around, manoeuvre, drives, wanted, spare };
  const waited = waiting(work);
  if (waited) return [waited];
  if (!around.searches) return [askFor];
  const ways = [movedThings(work), carriedOut(work), splayed(work)];
  return [...ways.flatMap((candidates) => eased(candidates, work)), ...moreTurns(work)];
}

/** How much more is needed to be sure, from what was surveyed or is built. */
function survey({ judged }: Outcome): number {
  if (!judged) return 0;
  const { u, methodU } = judged.inside;
  return oneSided.usual * Math.sqrt(Math.max(0, u * u - methodU * methodU));
}

interface Work {
  readonly outcome: Outcome;
  readonly around: AroundTurning;
  readonly manoeuvre: Feature;
  readonly drives: readonly Drive[];
  readonly wanted: number;
  readonly spare: number;
}

function drivesIn(manoeuvre: Feature, scene: EvaluationContext["scene"]): readonly Drive[] | null {
  const founds = drivesAt(manoeuvre, scene);
  const drives = founds.flatMap((found) =>
    found.is === "drive" && found.drive.mostChanges !== null ? [found.drive] : [],
  );
  return drives.length === founds.length && drives.length > 0 ? drives : null;
}

/** The plan with things replaced. */
function varied(
  { around: { context } }: Work,
  fresh: FreshNumbers,
  replaced: Replaced,
  moves = new Map<number, number>() as ReadonlyMap<number, number>,
): Variant {
  const read = fresh.readAt(moves);
  return { book: fresh.book(), read, scene: replacedScene(context.scene, replaced, read) };
}

interface Asked {
  readonly manoeuvre?: Feature;
  readonly spare?: number;
  readonly look?: Look;
}

/** Whether a look finds a way in a changed plan. */
function goes(work: Work, { scene, read }: Variant, asked: Asked = {}): boolean {
  const { manoeuvre = work.manoeuvre, spare = work.spare, look = "quick" } = asked;
  const drives = drivesIn(manoeuvre, scene);
  return drives !== null && drives.every((drive) => hasWay(drive, { wanted: work.wanted, spare, look }, read));
}

/** The outcome of the same row in a changed plan. */
function outcomeIn({ outcome, around: { context } }: Work, variant: Variant, manoeuvre: Feature): Outcome | null {
  const again = evaluate(outcome.card, { ...outcome.subject, manoeuvre }, { ...context, ...variant });
  return again.find(({ limit }) => limit?.id === outcome.limit?.id) ?? null;
}

/** The same where it is met. */
function metIn(work: Work, variant: Variant, manoeuvre: Feature): Outcome | null {
  const again = outcomeIn(work, variant, manoeuvre);
  return again?.verdict === "met" ? again : null;
}

const replacing = (was: Feature, becomes: Feature | null): Replaced => ({
  instead: new Map([[was, becomes]]),
  besides: [],
});

/** Ground that is only made later: then it waits for that. */
function waiting(work: Work): RemedyFound | null {
  const { around, manoeuvre, drives } = work;
  const absent = new Set(drives.flatMap((drive) => drive.absent));
  const later = [...absent].flatMap((name) => around.features.filter((one) => one.name === name).slice(0, 1));
  if (absent.size === 0 || later.length < absent.size) return null;
  const variant = varied(work, freshNumbers(around.context), { instead: new Map(), besides: later });
  const then = outcomeIn(work, variant, manoeuvre);
  if (!then?.judged) return null;
  const things = later.map(featureWords).join(" and ");
  const wait = `Have ${things} made before it comes, or let it come later`;
  if (then.verdict !== "met")
    return { ...told(`${wait}; even then ${roomWords(then)}.`, then, variant.read), witness: [] };
  return told(`${wait}: then ${roomWords(then)}.`, then, variant.read);
}

interface Candidate {
  readonly ease: Ease;
  readonly at: (amount: number) => Variant;
}

function candidate(work: Work, fresh: FreshNumbers, ease: Ease): Candidate {
  return { ease, at: (amount) => varied(work, fresh, replacing(ease.was, ease.becomes), ease.moves(amount)) };
}

/** The ground that it uses, as it stands. */
function groundsOf(work: Work): readonly Feature[] {
  const used = new Set(names(work.manoeuvre, "comes_in_by", "goes_out_by", "on", "to", "start.on", "end.on"));
  return work.around.context.scene.standing().filter((one) => used.has(one.name) && areaOf(one).length > 0);
}

/** Sides and widths of all the ground that it uses. */
function carriedOut(work: Work): readonly Candidate[] {
  const { context } = work.around;
  return groundsOf(work).flatMap((ground) => {
    const fresh = freshNumbers(context);
    return [...sideEases(ground, context.read, fresh), ...widthEase(ground, context.read, fresh)].map((ease) =>
      candidate(work, fresh, ease),
    );
  });
}

/** The corners of the mouths of its tracks cut off. */
function splayed(work: Work): readonly Candidate[] {
  const { context } = work.around;
  const grounds = groundsOf(work);
  return grounds.flatMap((ground) => {
    const fresh = freshNumbers(context);
    const eases = grounds.flatMap((track) => splayEases(ground, track, { read: context.read, making: fresh }));
    return eases.map((ease) => candidate(work, fresh, ease));
  });
}

/** Loose things without which there is a way. */
function movedThings(work: Work): readonly Candidate[] {
  const { context } = work.around;
  const { read } = context;
  const things = new Set(work.drives.flatMap((drive) => drive.inTheWay.map(({ feature }) => feature)));
  return [...things].filter(canMove).flatMap((thing) => {
    const fresh = freshNumbers(context);
    if (!goes(work, varied(work, fresh, replacing(thing, null)))) return [];
    const ground = work.drives.flatMap(({ running }) => running.map((ring) => ringAt(ring, read)));
    const ease = awayEase(thing, ground, { read, clear: work.wanted + 2 * work.spare, making: fresh });
    return ease ? [candidate(work, fresh, ease)] : [];
  });
}

/** The one of several changes that does with the least amount, judged anew. */
function eased(candidates: readonly Candidate[], work: Work): readonly RemedyFound[] {
  const { scene } = work.around.context;
  const does =
    (asked: Asked) =>
    ({ ease, at }: Candidate, steps: number) =>
      !isTaken(ease, steps * step, scene) && goes(work, at(steps * step), asked);
  const most = ({ ease }: Candidate) => Math.ceil(ease.most / step);
  const best = leastOfMany(candidates, { does: does({}), most });
  if (!best) return [];
  const closer = (steps: number, asked: Asked) =>
    halved(best.of, [Math.max(0, steps - closerSteps), steps], does({ ...asked, look: "close" }));
  const sure = closer(best.steps, {});
  const short = closer(sure, { spare: 0 });
  const quick = best.steps;
  for (const steps of new Set([sure, Math.ceil((sure + quick) / 2), ...raises.map((raise) => quick + raise)])) {
    const amount = steps * step;
    const met = isTaken(best.of.ease, amount, scene) ? null : metIn(work, best.of.at(amount), work.manoeuvre);
    if (met) return [easedTold(work, best.of, { amount, short: short * step, met })];
  }
  return [];
}

function easedTold(
  work: Work,
  { ease, at }: Candidate,
  { amount, short, met }: { readonly amount: number; readonly short: number; readonly met: Outcome },
): RemedyFound {
  const variant = at(amount);
  const wouldFail = work.around.wouldFailWith(variant, ease.was, ease.becomes);
  const text = words(amount, "length", { decimals: 2 });
  const less = short < amount ? ` (${words(short, "length", { decimals: 2 })} is just enough; ${text} to be sure)` : "";
  const found = told(
    `${ease.words(text, amount)}${less}: then ${roomWords(met)}.${spoiledSentence(wouldFail)}`,
    met,
    variant.read,
  );
  const taken: Witness = { part: "found", form: "outline", points: ease.taken(amount), label: `${text} more` };
  return {
    ...found,
    short,
    sure: amount,
    unit: "m",
    would_then_fail: titlesOf(wouldFail),
    witness: [taken, ...(found.witness ?? [])],
    ...(ease.newly === "all" ? { redrawn: ease.was.name } : {}),
  };
}

/** As drawn, with one more change of direction each way. */
function moreTurns(work: Work): readonly RemedyFound[] {
  const { manoeuvre, around } = work;
  const moves = propertyOf(manoeuvre, "moves");
  if (!isQuantity(moves)) return [];
  const fresh = freshNumbers(around.context);
  const more = fresh.like(moves);
  const again: Feature = { ...manoeuvre, properties: { ...manoeuvre.properties, moves: more } };
  const variant = varied(work, fresh, replacing(manoeuvre, again), new Map([[more.id, moreMoves]]));
  if (!goes(work, variant, { manoeuvre: again })) return [];
  const met = metIn(work, variant, again);
  const count = Math.round(around.context.read(moves)) + moreMoves;
  return met ? [told(`Allow it ${count} moves: as drawn, ${roomWords(met)}.`, met, variant.read)] : [];
}

/** `0.37 m is clear all round, in 3 moves`. */
function roomWords({ judged }: Outcome): string {
  const where = /in (\d+) moves?/.exec(judged?.place.where ?? "")?.[0];
  const room = words(Math.floor((judged?.value.value ?? 0) * 100 + 1e-6) / 100, "length", { decimals: 2 });
  return `${judged?.place.bound === "at_least" ? "at least " : ""}${room} is clear at the tightest place${where ? `, ${where}` : ""}`;
}

function told(text: string, met: Outcome, read: Read): RemedyFound {
  return {
    words: text,
    short: null,
    sure: null,
    unit: "",
    would_then_fail: [],
    witness: met.judged?.place.witness(read) ?? [],
  };
}
