// Writes dist/compiled/rulebook.json: cards, tables, sources and places as plain data, so that a start reads no YAML.

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { measures } from "../../src/measures/index.ts";
import { loadRulebook, type RuleFile } from "../../src/rulebook/load-rulebook.ts";
import { problemLine, root, ruleFiles } from "./rule-files.ts";

const files = ruleFiles();
const { problems } = loadRulebook(files, measures);
for (const problem of problems) console.error(problemLine(problem));
if (problems.length > 0) process.exit(1);
const plain = (list: readonly RuleFile[]) => list.map(({ file, id, data }) => ({ file, id, data }));
mkdirSync(join(root, "dist/compiled"), { recursive: true });
const compiled = {
  cards: plain(files.cards),
  tables: plain(files.tables),
  sources: plain(files.sources),
  places: plain(files.places),
};
writeFileSync(join(root, "dist/compiled/rulebook.json"), JSON.stringify(compiled));
console.log(`compiled ${files.cards.length} cards, ${files.tables.length} tables`);
