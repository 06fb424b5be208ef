// An outcome -> a finding, with its places in the file, its doubts, its remedies and its fingerprint.

import type { Card, Rulebook, Stakes } from "../model/card.ts";
import type {
  Deciding,
  DoubtShare,
  Finding,
  FoundValue,
  PlaceInFile,
  RemedyFound,
  Verdict,
  Wanted,
} from "../model/finding.ts";
import { pathText, type Place, type Position } from "../model/path.ts";
import type { Feature } from "../model/plan.ts";
import type { NumberBook, Read } from "../model/quantity.ts";
import type { Subject } from "../model/reading.ts";
import { propertyWords } from "../model/property-words.ts";
import { baseUnit, shown } from "../model/units.ts";
import type { Outcome } from "./evaluate.ts";
import type { JudgedPlace } from "./worst-place.ts";
import { fingerprint } from "./fingerprint.ts";
import { multiplier, oneSided } from "./judge.ts";
import { withLater } from "./later.ts";
import { type DecidedBy, sentenceOf, shownOf, wantedValues } from "./sentence.ts";

export interface ComposeContext {
  readonly rulebook: Rulebook;
  readonly book: NumberBook;
  readonly read: Read;
  readonly stages: readonly string[];
  readonly option: string | null;
  readonly locate: (place: Place) => Position;
}

/** Verdict of a finding from its outcome: a screen's best is `no-fault-seen`. */
export function verdictOf(outcome: Outcome): Verdict {
  if (outcome.verdict === "met" && outcome.card.faultsOnly) return "no-fault-seen";
  return outcome.verdict;
}

/** What a finding is made of. */
interface Composed {
  readonly outcome: Outcome;
  readonly others: readonly Outcome[];
  readonly roles: readonly { readonly role: string; readonly feature: Feature }[];
  readonly stakes: Stakes;
  readonly context: ComposeContext;
  readonly remedies: () => readonly RemedyFound[];
}

type Later = Pick<
  Finding,
  | "found"
  | "sentence"
  | "remedies"
  | "doubts"
  | "at"
  | "witness"
  | "others"
  | "fingerprint"
  | "reading"
  | "shown_in"
  | "kinked"
>;

/** Of most findings a report tells only that they are met: their words and numbers are worked out when they are looked at. */
const withWords = withLater<Composed, Later>({
  found: ({ outcome }) => outcome.judged && foundOf(outcome, outcome.judged),
  sentence: ({ outcome, context }) =>
    sentenceOf(outcome, context.read, outcome.judged ? decidedBy(outcome.judged, context.book) : "survey"),
  remedies: ({ remedies }) => remedies(),
  doubts: ({ outcome, stakes, context }) => (outcome.judged ? doubtsOf(outcome.judged, stakes, context) : []),
  at: ({ roles, context }) => roles.map(({ feature }) => placeInFile(feature.place, context.locate)),
  witness: ({ outcome, context }) => outcome.judged?.place.witness(context.read) ?? [],
  others: ({ others }) => others.map((other) => otherOf(other)),
  fingerprint: ({ outcome, roles, context }) =>
    fingerprint(
      outcome.card.id,
      roles.map(({ role, feature }) => ({ role, name: feature.name })),
      outcome.limit?.id ?? outcome.reason ?? "",
      context.option,
    ),
  reading: ({ outcome }) => readingName(outcome),
  shown_in: ({ outcome: { measure }, outcome }) =>
    measure.shownIn === "yes or no" ? "yes or no" : shown(measure.dimension, shownOf(outcome)).unit,
  kinked: ({ outcome }) => outcome.judged?.value.kinked ?? false,
});

/** What stands around an outcome: what is folded beneath it, the indexes of the stages it holds in, what would put it right. */
export interface Around {
  readonly others: readonly Outcome[];
  readonly stages: readonly number[];
  readonly remedies: () => readonly RemedyFound[];
}

/** Composes the finding of an outcome. */
export function compose(outcome: Outcome, { others, stages, remedies }: Around, context: ComposeContext): Finding {
  const { card, judged } = outcome;
  const names = [...new Set(stages.map((stage) => context.stages[stage] ?? ""))];
  const missedShould = outcome.grade === "should" && (outcome.verdict === "not-met" || outcome.verdict === "undecided");
  const stakes: Stakes = missedShould ? "nuisance" : card.stakes;
  const roles = rolesOf(card, outcome.subject);
  return withWords(
    {
      rule: card.id,
      verdict: verdictOf(outcome),
      ...(outcome.reason ? { reason: outcome.reason } : {}),
      grade: outcome.grade,
      stakes,
      stage: names[0] ?? "",
      stages: names,
      option: context.option,
      features: roles.map(({ role, feature }) => ({ kind: feature.kind, name: feature.name, role })),
      wanted: judged ? wantedOf(outcome, judged, context) : null,
      probability: judged ? round(judged.probability) : null,
      cautions: card.cautions,
      defers_to: card.defersTo,
      dimension: outcome.measure.dimension,
      decided_by: judged && outcome.verdict === "undecided" ? decidedBy(judged, context.book) : null,
    },
    { outcome, others, roles, stakes, context, remedies },
  );
}

/** Short name of the reading; a number that was only stated goes by its own name. */
function readingName({ measure, card, limit }: Outcome): string {
  const { property } = limit?.measure?.parameters ?? card.parameters;
  return measure.phrase.includes("{property}") && property ? propertyWords(String(property)) : measure.shortName;
}

/** Numbers of the output are rounded to 1e-6 of their unit. */
export function round(value: number): number {
  const rounded = Math.round(value * 1e6) / 1e6;
  return Object.is(rounded, -0) ? 0 : rounded;
}

export function placeInFile(place: Place, locate: (place: Place) => Position): PlaceInFile {
  return { file: place.file, path: pathText(place.path), ...locate(place) };
}

function rolesOf(card: Card, subject: Subject): readonly { role: string; feature: Feature }[] {
  const order = [card.about.role, ...(card.against ? [card.against.role] : [])];
  return order.flatMap((role) => (subject[role] ? [{ role, feature: subject[role] }] : []));
}

function foundOf(outcome: Outcome, judged: JudgedPlace): FoundValue {
  const bound = judged.place.bound;
  return {
    value: round(judged.value.value),
    unit: baseUnit[outcome.measure.dimension],
    doubt: round(judged.value.u),
    method:
      bound === "at_least"
        ? "at least"
        : bound === "at_most"
          ? "at most"
          : judged.value.methodU > 0
            ? "searched"
            : "computed",
  };
}

function wantedOf(outcome: Outcome, judged: JudgedPlace, { rulebook, read }: ComposeContext): Wanted {
  const values = wantedValues(judged.requirement, read).map(round);
  const limit = outcome.limit;
  const requirement = judged.requirement;
  const own =
    requirement.sense === "between" ? (requirement.low.source ?? requirement.high.source) : requirement.bound.source;
  const id = own ?? limit?.source;
  const source = id ? rulebook.sources.get(id) : undefined;
  return {
    sense: judged.requirement.sense,
    value: judged.requirement.sense === "between" ? [values[0] ?? 0, values[1] ?? 0] : (values[0] ?? 0),
    unit: baseUnit[outcome.measure.dimension],
    limit: limit?.id ?? "",
    where: limit?.where ?? "anywhere",
    fell_back: outcome.fellBack,
    standing: limit?.standing ?? "practice",
    source: source
      ? { id: source.id, title: source.title, clause: limit?.clause ?? "", seen: source.seen }
      : ownEntry(outcome),
  };
}

/** The owner's own limit is printed as the owner's entry. */
function ownEntry({ limit }: Outcome): Wanted["source"] {
  return limit?.id === "your-entry"
    ? { id: "your-entry", title: limit.clause ?? "your own entry", clause: "", seen: "none" }
    : null;
}

const mostShares = 8;

/** Shares of the doubt by cause, largest first, with the accuracy each alone would have to reach for a decision. */
function doubtsOf(judged: JudgedPlace, stakes: Stakes, { book }: ComposeContext): readonly DoubtShare[] {
  const { contributions, u } = judged.inside;
  if (u === 0) return [];
  const target = wantedDoubt(judged, stakes);
  return [...contributions]
    .map(([id, part]) => ({ id, part, share: (part * part) / (u * u) }))
    .filter(({ share }) => share >= 0.005)
    .sort((a, b) => b.share - a.share || a.id - b.id)
    .slice(0, mostShares)
    .map(({ id, part, share }) => {
      const cause = book.causes[id];
      return {
        path: cause ? pathText(cause.place.path) : "",
        words: cause?.words ?? "",
        share: round(share),
        needed: neededFor(part, u, target, cause?.u ?? 0),
      };
    });
}

/** The standard uncertainty that would decide a margin: gap / 3.09 inside on safety, else gap / 1.645. */
function wantedDoubt({ margin }: JudgedPlace, stakes: Stakes): number {
  const gap = Math.min(margin.inside, margin.other ?? Infinity);
  return Math.abs(gap) / (gap > 0 ? multiplier(stakes) : oneSided.usual);
}

/** What stands behind an undecided finding; null where it is decided. */
export function decidingOf({ verdict, judged }: Outcome, finding: Finding): Deciding | null {
  if (verdict !== "undecided" || !judged) return null;
  const { inside, margin } = judged;
  return {
    get fingerprint() {
      return finding.fingerprint;
    },
    gap: Math.min(margin.inside, margin.other ?? Infinity),
    u: inside.u,
    wantedU: wantedDoubt(judged, finding.stakes),
    contributions: inside.contributions,
  };
}

/** u_i that brings the whole doubt to the target while the others stay: sqrt(target^2 - rest^2) / sensitivity. */
function neededFor(part: number, u: number, target: number, causeU: number): number | null {
  const rest = u * u - part * part;
  const room = target * target - rest;
  if (room <= 0 || part === 0 || target >= u) return null;
  return round((Math.sqrt(room) * causeU) / Math.abs(part));
}

function decidedBy(judged: JudgedPlace, book: NumberBook): DecidedBy {
  const method = (judged.place.methodU ?? 0) ** 2;
  const sums = { survey: 0, build: 0, method, limit: Math.max(0, judged.inside.methodU ** 2 - method) };
  for (const [id, part] of judged.inside.contributions) {
    const sort = book.causes[id]?.sort;
    sums[sort === undefined ? "method" : sort === "table" ? "limit" : sort] += part * part;
  }
  const [largest] = Object.entries(sums).sort((a, b) => b[1] - a[1]);
  return (largest?.[0] ?? "survey") as DecidedBy;
}

function otherOf(outcome: Outcome): Finding["others"][number] {
  return {
    features: Object.entries(outcome.subject).flatMap(([role, feature]) =>
      role === outcome.card.about.role ? [] : [feature.name],
    ),
    value: round(outcome.judged?.reading ?? 0),
    verdict: verdictOf(outcome),
  };
}
