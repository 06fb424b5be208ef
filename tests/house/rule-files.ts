// Finds the files of the rulebook and reads them with positions: for the build, the case runner and the house test.

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { readYaml } from "../../src/reading/read-yaml.ts";
import type { Problem } from "../../src/model/problem.ts";
import type { RuleFile, RuleFiles } from "../../src/rulebook/load-rulebook.ts";

export const root = new URL("../..", import.meta.url).pathname;

/** All YAML files under a folder of the repository, as paths from its top, sorted. */
export function yamlUnder(folder: string): readonly string[] {
  const found: string[] = [];
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) found.push(...yamlUnder(path));
    else if (entry.name.endsWith(".yaml")) found.push(path);
  }
  return found.sort();
}

/** Reads one YAML file of the repository; throws with its problems, since a broken file here is our own fault. */
export function readRuleFile(file: string): RuleFile {
  const { document, problems } = readYaml(file, readFileSync(join(root, file), "utf8"));
  if (!document || problems.length > 0) throw new Error(problems.map(problemLine).join("\n"));
  return {
    file,
    id: file.replace(/^rules\/(tables\/)?/, "").replace(/\.yaml$/, ""),
    data: document.data,
    locate: (path) => document.locate(path, "value"),
  };
}

export function problemLine(problem: Problem): string {
  return `${problem.file}:${problem.line}:${problem.column} ${problem.code}: expected ${problem.expected}, got ${problem.got} (${problem.hint})`;
}

/** The rulebook's files, sorted by what they are. */
export function ruleFiles(): RuleFiles {
  const all = yamlUnder("rules").filter((file) => !file.endsWith(".cases.yaml"));
  const tables = all.filter((file) => file.startsWith("rules/tables/"));
  const single = (name: string) => all.filter((file) => file === `rules/${name}.yaml`);
  const cards = all.filter((file) => !tables.includes(file) && file.split("/").length === 3);
  const read = (files: readonly string[]) => files.map(readRuleFile);
  return { cards: read(cards), tables: read(tables), sources: read(single("sources")), places: read(single("places")) };
}
