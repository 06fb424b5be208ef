// `check`: reads plans, prints the report, saves what was asked for.

import type { CheckOptions, Inspection, Problem, Text } from "../index.ts";
import { endings, exitCode, inspect, printed, problemSentence, wants, withProblems } from "../index.ts";
import { isSameFile, readCards, readInclude, readPlanFile, type ReadFile, writeTextFile } from "./files.ts";
import type { Streams } from "./streams.ts";
import { version } from "./version.ts";

export interface CheckFlags extends PlanFlags {
  readonly save: readonly string[];
  /** True with --remedies, false with --no-remedies. */
  readonly remedies?: boolean;
  readonly all?: boolean;
  readonly plain?: boolean;
  readonly brief?: boolean;
  readonly width?: number;
}

/** Runs the check; returns the exit code. */
export async function checkCommand(plans: readonly string[], flags: CheckFlags, streams: Streams): Promise<number> {
  const refusal = refuse(flags) ?? wouldOverwrite(flags.save, plans);
  if (refusal) {
    streams.err(`${refusal}\n`);
    return 2;
  }
  const read = plans.map((plan) => readPlanFile(plan, streams));
  const cards = flags.rules ? readCards(flags.rules) : [];
  const includes = read.map((file, index) =>
    "text" in file ? wants(file.text).map((name) => readInclude(plans[index] ?? "", name)) : [],
  );
  const problems = [...read, ...cards, ...includes.flat()].flatMap((file) => ("problem" in file ? [file.problem] : []));
  const whole = read.flatMap((file, index) =>
    "text" in file ? [{ ...file.text, includes: texts(includes[index] ?? []) }] : [],
  );
  const inspection = withProblems(
    inspect(whole, { ...optionsOf(flags, texts(cards), streams), remedies: flags.remedies ?? "plain" }),
    problems,
  );
  streams.out(await printed(inspection, ".txt", printOptions(plans, flags, streams)));
  const saved = await save(inspection, plans, { ...flags, streams });
  return saved ? exitCode(inspection.report) : 2;
}

/** The texts of the files that could be read. */
export const texts = (files: readonly ReadFile[]): readonly Text[] =>
  files.flatMap((file) => ("text" in file ? [file.text] : []));

/** What is wrong with the flags, in words; null if nothing. */
function refuse(flags: CheckFlags): string | null {
  const day = wrongDay(flags.asOf);
  if (day !== null) return day;
  const unknown = flags.save.find((file) => !endings.some((ending) => file.endsWith(ending)));
  if (unknown) return `--save: expected a file ending in ${endings.join(", ")}, got ${unknown}.`;
  if (flags.width !== undefined && !(flags.width >= 40)) return "--width: expected a number of columns, 80 or more.";
  return null;
}

/** A report is never written over a plan. */
function wouldOverwrite(files: readonly string[], plans: readonly string[]): string | null {
  const file = files.find((save) => plans.some((plan) => isSameFile(save, plan)));
  return file === undefined ? null : `--save: ${file} is the plan itself; give the report another name.`;
}

/** What is wrong with the day of --as-of, in words; null if nothing. */
export function wrongDay(asOf: string | undefined): string | null {
  return asOf === undefined || isDate(asOf) ? null : `--as-of: expected a day such as 2026-11-25, got ${asOf}.`;
}

function isDate(text: string): boolean {
  return (
    /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(text)) && new Date(text).toISOString().startsWith(text)
  );
}

/** What every command that looks at a plan may be asked for. */
export interface PlanFlags {
  readonly rules?: string;
  readonly place?: string;
  readonly stage?: string;
  readonly option?: string;
  readonly asOf?: string;
}

/** The options of a check, but for its remedies, from the words of the command. */
export function optionsOf(flags: PlanFlags, cards: readonly Text[], streams: Streams): CheckOptions {
  return {
    asOf: flags.asOf ?? streams.today,
    asOfStands: flags.asOf !== undefined,
    cards,
    ...(flags.place ? { place: flags.place.split(",").map((place) => place.trim()) } : {}),
    ...(flags.stage ? { stage: flags.stage } : {}),
    ...(flags.option ? { option: flags.option } : {}),
  };
}

/** How to ask for more, with the plans and the choices of this report. */
function moreWords(plans: readonly string[], flags: CheckFlags): string {
  const named = plans.map(quoted).join(" ");
  const given = [
    ["--rules", flags.rules],
    ["--place", flags.place],
    ["--stage", flags.stage],
    ["--option", flags.option],
    ["--as-of", flags.asOf],
  ].flatMap(([flag, value]) => (value === undefined ? [] : [` ${flag} ${quoted(value)}`]));
  const asked = `${named}${given.join("")}`;
  const measure = plans.length === 1 ? `. What to measure next: sightrail remeasure ${asked}` : "";
  return `More on a number above: sightrail reason NUMBER ${asked}${measure}`;
}

const quoted = (text: string): string => (/^[\w./:,@+-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`);

function printOptions(plans: readonly string[], flags: CheckFlags, streams: Streams) {
  const width = flags.width ?? streams.columns;
  return {
    version,
    more: moreWords(plans, flags),
    ...(flags.all ? { all: true } : {}),
    ...(flags.plain ? { plain: true } : {}),
    ...(flags.brief ? { brief: true } : {}),
    ...(width ? { width } : {}),
  };
}

const earthHint = "Add earth: {station: P1, latitude: 52.0831, longitude: -3.1162, north: 4 deg}.";

async function save(
  inspection: Inspection,
  plans: readonly string[],
  { streams, ...flags }: CheckFlags & { readonly streams: Streams },
): Promise<boolean> {
  let all = true;
  for (const file of flags.save) {
    const ending = endings.find((known) => file.endsWith(known)) ?? ".txt";
    if (ending === ".geojson" && inspection.tie === null) {
      streams.err(`Could not write ${file}: the plan does not say where on the earth it lies. ${earthHint}\n`);
      all = false;
      continue;
    }
    const reason = writeTextFile(
      file,
      await printed(inspection, ending, printOptions(plans, flags, { ...streams, columns: undefined })),
    );
    if (reason) streams.err(`Could not write ${file}: ${reason}.\n`);
    all &&= reason === null;
  }
  return all;
}

/** Problems as one line each, for commands that print no report. */
export function problemLines(problems: readonly Problem[]): string {
  return problems.map((problem) => `${problemSentence(problem)}\n`).join("");
}
