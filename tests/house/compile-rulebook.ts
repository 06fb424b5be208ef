// Writes dist/compiled/rulebook.json: the rulebook read, checked and packed, so that a start reads no YAML and no card.

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { measures } from "../../src/measures/index.ts";
import { loadRulebook } from "../../src/rulebook/load-rulebook.ts";
import { packRulebook } from "../../src/rulebook/packed.ts";
import { problemLine, root, ruleFiles } from "./rule-files.ts";

const { value: book, problems } = loadRulebook(ruleFiles(), measures);
for (const problem of problems) console.error(problemLine(problem));
if (problems.length > 0) process.exit(1);
mkdirSync(join(root, "dist/compiled"), { recursive: true });
writeFileSync(join(root, "dist/compiled/rulebook.json"), JSON.stringify(packRulebook(book)));
console.log(`compiled ${book.cards.length} cards, ${book.tables.size} tables`);
