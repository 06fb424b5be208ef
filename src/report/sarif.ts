// The report as SARIF 2.1.0 (OASIS standard, errata 01): for the tools that stand beside a repository.
// kind and level: not-met is fail with a level by stakes; undecided and not-given are open; met and no-fault-seen are
// pass; does-not-bear is notApplicable; a departure is what lies beneath it, suppressed with its reason.

import type { Stakes } from "../model/card.ts";
import type { Finding, Report, Verdict } from "../model/finding.ts";
import type { Problem } from "../model/problem.ts";
import { clean, sentence } from "./clean.ts";
import { doWords, saysWords } from "./finding-words.ts";
import { foundWords } from "./found-words.ts";
import { standingVerdict } from "./grouping.ts";
import { jsonText, rounded, wantedObject } from "./json.ts";
import { distinctPlaces, location, physical } from "./sarif-places.ts";
import { limitWords, type PlaceNames } from "./standing-words.ts";

export interface SarifOptions {
  /** Version of the tool that ran. */
  readonly version?: string;
  /** Lists also what does not bear on the plan. */
  readonly all?: boolean;
  /** Names of places by their word in the plan. */
  readonly places?: PlaceNames;
}

const schemaAddress = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
const fingerprintName = "sightrail/v1";
const levels: Readonly<Record<Stakes, "error" | "warning" | "note">> = {
  safety: "error",
  damage: "warning",
  nuisance: "note",
};
const kinds: Readonly<Record<Verdict, "fail" | "open" | "pass" | "notApplicable">> = {
  "not-met": "fail",
  undecided: "open",
  "not-given": "open",
  departure: "open",
  "no-fault-seen": "pass",
  met: "pass",
  "does-not-bear": "notApplicable",
};

/** The report as a SARIF 2.1.0 log with one run. Plain text only; the same report gives the same bytes. */
export function sarifReport(report: Report, options: SarifOptions = {}): string {
  const findings = report.findings.filter((finding) => options.all || finding.verdict !== "does-not-bear");
  const rules = rulesOf(report, findings);
  const titles = new Map(rules);
  const index = new Map(rules.map(([rule], at) => [rule, at]));
  const driver = {
    name: "sightrail",
    ...(options.version === undefined ? {} : { version: options.version }),
    shortDescription: { text: "Checks the plan of a rural plot before ground is broken." },
    rules: rules.map(([rule, title]) => ruleObject(rule, title, { findings, places: options.places ?? {} })),
  };
  const run = {
    tool: { driver },
    invocations: [invocation(report.problems)],
    columnKind: "utf16CodeUnits",
    results: findings.map((finding) =>
      resultObject(finding, { ruleIndex: index.get(finding.rule) ?? -1, titles, places: options.places ?? {} }),
    ),
    properties: runProperties(report),
  };
  return jsonText({ $schema: schemaAddress, version: "2.1.0", runs: [run] });
}

/** Rules with their titles, those of the report first, in its order. */
function rulesOf(report: Report, findings: readonly Finding[]): readonly (readonly [rule: string, title: string])[] {
  const rules = new Map(report.rules.map(({ rule, title }) => [rule, title]));
  for (const { rule } of findings) if (!rules.has(rule)) rules.set(rule, rule);
  return [...rules];
}

/** Text for a SARIF message: brackets and braces would be read there as links and placeholders (3.11.5, 3.11.6; MEMORY). */
function message(text: string): { readonly text: string } {
  return { text: clean(text).replace(/[[{]/g, "(").replace(/[\]}]/g, ")") };
}

function ruleObject(
  id: string,
  title: string,
  from: { readonly findings: readonly Finding[]; readonly places: PlaceNames },
) {
  const own = from.findings.filter((finding) => finding.rule === id);
  const distinct = (texts: readonly string[]) => [...new Set(texts.filter((text) => text !== ""))];
  const limits = distinct(own.map((finding) => limitWords(finding, from.places)));
  const cautions = distinct(own.flatMap((finding) => finding.cautions.map(sentence)));
  const deciders = distinct(own.map((finding) => clean(finding.defers_to ?? ""))).map((who) => `Ask first: ${who}.`);
  const help = [
    sentence(title),
    ...limits,
    ...cautions,
    ...deciders,
    "What is sure here is the measurement, never the ground.",
  ];
  return {
    id,
    shortDescription: message(sentence(title)),
    help: message(help.join(" ")),
    defaultConfiguration: { level: levels[worstStakes(own)] },
    properties: { tags: [id.split("/")[0] ?? id] },
  };
}

function worstStakes(findings: readonly Finding[]): Stakes {
  if (findings.some(({ stakes }) => stakes === "safety")) return "safety";
  return findings.length === 0 || findings.some(({ stakes }) => stakes === "damage") ? "damage" : "nuisance";
}

interface ResultContext {
  readonly ruleIndex: number;
  readonly titles: ReadonlyMap<string, string>;
  readonly places: PlaceNames;
}

function resultObject(finding: Finding, context: ResultContext) {
  const departed = finding.verdict === "departure" && !finding.beneath?.expired;
  const kind = kinds[departed ? (finding.beneath?.verdict ?? "not-met") : standingVerdict(finding)];
  const [first, ...others] = finding.at;
  const logical = finding.features.map(({ kind: of, name, role }) => ({
    name: clean(name),
    fullyQualifiedName: `${clean(of)}/${clean(name)}`,
    kind: "object",
    properties: { role },
  }));
  const related = distinctPlaces(first, others);
  return {
    ruleId: finding.rule,
    ruleIndex: context.ruleIndex,
    kind,
    level: kind === "fail" ? levels[finding.stakes] : "none",
    message: message(resultWords(finding, context)),
    locations: first || logical.length > 0 ? [location(first, { logicalLocations: logical })] : [],
    ...(related.length === 0
      ? {}
      : { relatedLocations: related.map((at, index) => ({ id: index + 1, ...location(at) })) }),
    partialFingerprints: { [fingerprintName]: finding.fingerprint },
    suppressions: departed ? [suppression(finding)] : [],
    properties: resultProperties(finding),
  };
}

function resultWords(finding: Finding, { titles, places }: ResultContext): string {
  return [
    sentence(finding.sentence),
    foundWords(finding),
    saysWords(finding, places),
    ...doWords(finding, titles).slice(0, 1),
  ]
    .filter((part) => part !== "")
    .join(" ");
}

function suppression(finding: Finding) {
  const { beneath } = finding;
  const because = clean(beneath?.because ?? "");
  const signer = clean(beneath?.agreed_by ?? "") || "nobody named";
  const review = clean(beneath?.review ?? "");
  return {
    kind: "inSource",
    status: "accepted",
    justification: `Agreed by ${signer}${because === "" ? "" : `: ${because}`}. To be looked at again by ${review}.`,
  };
}

function resultProperties(finding: Finding) {
  const { found, wanted, beneath, reason } = finding;
  return {
    verdict: finding.verdict,
    ...(reason === undefined ? {} : { reason }),
    ...(beneath === undefined ? {} : { beneath }),
    grade: finding.grade,
    stakes: finding.stakes,
    stages: finding.stages,
    option: finding.option,
    found: found && {
      value: rounded(found.value),
      unit: found.unit,
      doubt: rounded(found.doubt),
      method: found.method,
    },
    wanted: wanted && wantedObject(wanted),
    probability: finding.probability === null ? null : rounded(finding.probability),
    cautions: finding.cautions,
    defers_to: finding.defers_to,
    remedies: finding.remedies.map(({ words }) => words),
  };
}

/** What could not be read, as notifications; the run counts as whole only where there are none. */
function invocation(problems: readonly Problem[]) {
  return {
    executionSuccessful: problems.length === 0,
    toolConfigurationNotifications: problems.map((problem) => ({
      descriptor: { id: problem.code },
      level: "error",
      message: message(`Expected ${problem.expected}, got ${problem.got}. ${sentence(problem.hint)}`),
      locations: [{ physicalLocation: physical(problem) }],
    })),
  };
}

function runProperties(report: Report) {
  return {
    as_of: report.as_of,
    place: report.place,
    plans: report.plans.map(({ file, title, stage }) => ({ file, title, stage })),
    options: report.options,
    counts: report.counts,
    needs: report.needs.map(({ path, asks, waits, stakes }) => ({ path, asks, waits, stakes })),
    not_checked: report.not_checked,
    assumed: report.assumed,
    sure_of: "the measurement, never the ground",
  };
}
