// From the text of a plan and of what it includes to the resolved plan, by the forms that the build made.

import type { Table } from "../model/card.ts";
import type { Plan } from "../model/plan.ts";
import type { Problem } from "../model/problem.ts";
import { readYaml } from "../reading/read-yaml.ts";
import type { SourceText } from "../reading/source-text.ts";
import { validated, type Validator } from "../reading/validate.ts";
import type { KindTable } from "./kind-table.ts";
import { isPointFile, pointFileText } from "./point-files.ts";
import { resolvePlan } from "./resolve-plan.ts";

/** What texts are read by. */
export interface Forms {
  readonly plan: Validator;
  readonly part: Validator;
  readonly kinds: KindTable;
  readonly tables: ReadonlyMap<string, Table>;
}

interface Text {
  readonly file: string;
  readonly text: string;
}

export interface ResolvedText {
  readonly plan: Plan;
  /** The plan's own text and those that it includes, to find lines in. */
  readonly sources: readonly SourceText[];
  readonly problems: readonly Problem[];
  /** False where an option was asked for that no text has: what was resolved is another plan than was meant. */
  readonly isAsAsked: boolean;
}

/** Resolves a plan that has been read as YAML, with the texts that it includes. */
export function resolveText(
  document: SourceText,
  include: readonly Text[],
  forms: Forms,
  option: string | undefined,
): ResolvedText {
  const own = checkedText(document, forms.plan);
  const includes = include.map((text) => includedText(text, document, forms));
  const [vehicles, poisons, densities] = ["vehicles", "poisonous-plants", "densities"].map((name) =>
    forms.tables.get(name),
  );
  const resolved = resolvePlan(own, forms.kinds, {
    includes: includes.flatMap(({ checked }) => checked ?? []),
    ...(option ? { option } : {}),
    ...(vehicles ? { vehicles } : {}),
    ...(poisons ? { poisons } : {}),
    ...(densities ? { densities } : {}),
  });
  const sources = [document, ...includes.flatMap(({ checked }) => checked?.source ?? [])];
  return {
    plan: resolved.plan,
    sources,
    isAsAsked: option === undefined || sources.some(({ data }) => optionsIn(data).includes(option)),
    problems: [...own.problems, ...includes.flatMap((one) => one.problems), ...resolved.problems],
  };
}

function optionsIn(data: unknown): readonly string[] {
  const options = (data as { readonly options?: unknown } | null)?.options;
  return typeof options === "object" && options !== null ? Object.keys(options) : [];
}

function checkedText(source: SourceText, check: Validator) {
  const { problems, broken } = validated(check, source);
  return { source, broken, problems };
}

function includedText(include: Text, plan: SourceText, { part }: Forms) {
  if (isPointFile(include.file, plan)) return pointFileText(include, plan);
  const { document, problems } = readYaml(include.file, include.text);
  if (!document) return { checked: null, problems };
  const checked = checkedText(document, part);
  return { checked, problems: [...problems, ...checked.problems] };
}
