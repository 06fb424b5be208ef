// Prints the table of blunders: npx tsx tests/adjustment/print-blunders.ts

import { blunderTable } from "./blunder-words.ts";

process.stdout.write(blunderTable());
