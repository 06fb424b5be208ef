// `remeasure`, `setout` and `ground`: sheets to take outside, printed or saved as text or CSV.

import { groundSheet, inspect, remeasureSheet, setOutSheet, type Sheet, sheetCsv, sheetText, wants } from "../index.ts";
import { optionsOf, type PlanFlags, problemLines, texts, wrongDay } from "./check-command.ts";
import { readCards, readInclude, readPlanFile, type ReadFile, writeTextFile } from "./files.ts";
import type { Streams } from "./streams.ts";

export type SheetName = "remeasure" | "setout" | "ground";

type Worked = ReturnType<typeof inspect>["worked"][number];
const makers: Readonly<Record<SheetName, (worked: Worked) => Sheet>> = {
  remeasure: remeasureSheet,
  setout: ({ plan }) => setOutSheet(plan),
  ground: ({ plan, densities }) => groundSheet(plan, densities),
};

export interface SheetFlags extends PlanFlags {
  readonly save: readonly string[];
}

const problemsOf = (files: readonly ReadFile[]) => files.flatMap((file) => ("problem" in file ? [file.problem] : []));

/** Prints a sheet; 0, or 2 where the plan, a card or the command could not be read. */
export function sheetCommand(sheet: SheetName, plan: string, flags: SheetFlags & { streams: Streams }) {
  const { streams, save } = flags;
  const wrong = save.find((file) => !/\.(?:txt|csv)$/.test(file));
  if (wrong !== undefined) {
    streams.err(`--save: expected a file ending in .txt or .csv, got ${wrong}.\n`);
    return 2;
  }
  const day = wrongDay(flags.asOf);
  if (day !== null) {
    streams.err(`${day}\n`);
    return 2;
  }
  const file = readPlanFile(plan, streams);
  const cards = flags.rules ? readCards(flags.rules) : [];
  const includes = "text" in file ? wants(file.text).map((name) => readInclude(plan, name)) : [];
  const { report, worked } = inspect(
    texts([file]).map((text) => ({ ...text, includes: texts(includes) })),
    { ...optionsOf(flags, texts(cards), streams), remedies: false },
  );
  const problems = [...problemsOf([file, ...cards, ...includes]), ...report.problems];
  streams.err(problemLines(problems));
  const [one] = worked;
  if (one === undefined) return 2;
  const made = makers[sheet](one);
  streams.out(sheetText(made, streams.columns));
  return saved(made, save, streams) && problems.length === 0 ? 0 : 2;
}

function saved(sheet: Sheet, files: readonly string[], streams: Streams): boolean {
  const reasons = files.flatMap((file) => {
    const reason = writeTextFile(file, file.endsWith(".csv") ? sheetCsv(sheet) : sheetText(sheet));
    return reason === null ? [] : [`Could not write ${file}: ${reason}.\n`];
  });
  streams.err(reasons.join(""));
  return reasons.length === 0;
}
