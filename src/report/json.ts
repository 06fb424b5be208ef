// The report as JSON: the form other programs rely on (`schemas/report.schema.json`). Fixed order of keys, same bytes.

import type { Finding, FoundValue, Need, PlaceInFile, RemedyFound, Report, Verdict, Wanted } from "../model/finding.ts";
import { verdictOrder } from "../model/finding.ts";
import type { Problem } from "../model/problem.ts";
import type { Point, Witness } from "../model/reading.ts";

export interface JsonOptions {
  /** Lists also what does not bear on the plan; it is counted either way. */
  readonly all?: boolean;
}

type Counts = Readonly<Record<Verdict, number>>;

/** Numbers are kept to a millionth of their unit. */
const steps = 1e6;
/** Characters that a terminal or an editor would act on; inside JSON text they are written as escapes. */
const acting = /[\u007f-\u009f\u2028\u2029\p{Cf}]/gu;

/** The report as JSON text, two spaces of indent, ending with a line break. Numbers that are not finite become null. */
export function jsonReport(report: Report, options: JsonOptions = {}): string {
  return jsonText(reportObject(report, options));
}

/** JSON text without a character that a terminal would act on, ending with a line break. */
export function jsonText(value: unknown): string {
  const escaped = (letter: string) =>
    [...Array(letter.length).keys()]
      .map((index) => `\\u${letter.charCodeAt(index).toString(16).padStart(4, "0")}`)
      .join("");
  return `${JSON.stringify(value, null, 2).replace(acting, escaped)}\n`;
}

/** Rounded to a millionth of its unit; null where it is not finite. */
export function rounded(value: number): number | null {
  if (!Number.isFinite(value)) return null;
  const scaled = Math.round(value * steps) / steps;
  return Number.isFinite(scaled) ? scaled + 0 : value;
}

function reportObject(report: Report, options: JsonOptions) {
  const listed = report.findings.filter((finding) => options.all || finding.verdict !== "does-not-bear");
  return {
    sightrail: report.sightrail,
    as_of: report.as_of,
    place: report.place,
    plans: report.plans.map(({ file, title, stages, stage, features }) => ({ file, title, stages, stage, features })),
    options: report.options,
    counts: countsObject(report.counts),
    rules: report.rules.map(({ rule, title, counts }) => ({ rule, title, counts: countsObject(counts) })),
    findings: listed.map(findingObject),
    needs: report.needs.map(needObject),
    problems: report.problems.map(problemObject),
    not_checked: report.not_checked,
    assumed: report.assumed,
  };
}

function countsObject(counts: Counts) {
  return Object.fromEntries(verdictOrder.map((verdict) => [verdict, counts[verdict]]));
}

function findingObject(finding: Finding) {
  const { reason, beneath } = finding;
  return {
    rule: finding.rule,
    verdict: finding.verdict,
    ...(reason === undefined ? {} : { reason }),
    ...(beneath === undefined ? {} : { beneath: beneathObject(beneath) }),
    grade: finding.grade,
    stakes: finding.stakes,
    stage: finding.stage,
    stages: finding.stages,
    option: finding.option,
    features: finding.features.map(({ kind, name, role }) => ({ kind, name, role })),
    reading: finding.reading,
    dimension: finding.dimension,
    shown_in: finding.shown_in,
    found: finding.found && foundObject(finding.found),
    wanted: finding.wanted && wantedObject(finding.wanted),
    probability: finding.probability === null ? null : rounded(finding.probability),
    decided_by: finding.decided_by,
    kinked: finding.kinked,
    sentence: finding.sentence,
    remedies: finding.remedies.map(remedyObject),
    cautions: finding.cautions,
    defers_to: finding.defers_to,
    doubts: finding.doubts.map((doubt) => ({
      path: doubt.path,
      words: doubt.words,
      share: rounded(doubt.share),
      needed: doubt.needed === null ? null : rounded(doubt.needed),
    })),
    at: finding.at.map(placeObject),
    witness: finding.witness.map(witnessObject),
    others: finding.others.map(({ features, value, verdict }) => ({ features, value: rounded(value), verdict })),
    fingerprint: finding.fingerprint,
  };
}

function beneathObject({ verdict, agreed_by, because, review, expired }: NonNullable<Finding["beneath"]>) {
  return { verdict, agreed_by, because, review, expired };
}

function foundObject({ value, unit, doubt, method }: FoundValue) {
  return { value: rounded(value), unit, doubt: rounded(doubt), method };
}

/** What is wanted, as it stands in JSON and in the properties of a SARIF result. */
export function wantedObject(wanted: Wanted) {
  const { value, source } = wanted;
  return {
    sense: wanted.sense,
    value: typeof value === "number" ? rounded(value) : value.map(rounded),
    unit: wanted.unit,
    limit: wanted.limit,
    where: wanted.where,
    fell_back: wanted.fell_back,
    standing: wanted.standing,
    source: source && { id: source.id, title: source.title, clause: source.clause, seen: source.seen },
  };
}

function remedyObject({ words, short, sure, unit, would_then_fail }: RemedyFound) {
  return {
    words,
    short: short === null ? null : rounded(short),
    sure: sure === null ? null : rounded(sure),
    unit,
    would_then_fail,
  };
}

function placeObject({ file, path, line, column }: PlaceInFile) {
  return { file, path, line, column };
}

function pointObject(point: Point) {
  return [rounded(point[0]), rounded(point[1])];
}

function witnessObject({ part, form, points, radius, label, gear }: Witness) {
  return {
    part,
    form,
    points: points.map(pointObject),
    ...(radius === undefined ? {} : { radius: rounded(radius) }),
    ...(label === undefined ? {} : { label }),
    ...(gear === undefined ? {} : { gear }),
  };
}

function needObject({ path, asks, unit, waits, stakes, reason, at }: Need) {
  return { path, asks, unit, waits, stakes, reason, at: at && placeObject(at) };
}

function problemObject({ code, file, line, column, expected, got, hint }: Problem) {
  return { code, file, line, column, expected, got, hint };
}
