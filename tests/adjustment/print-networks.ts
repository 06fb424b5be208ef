// Prints the random networks as JSON, one a line, for solve-networks.py: npx tsx tests/adjustment/print-networks.ts 500

import { randomNetwork } from "./random-networks.ts";

for (let seed = 1; seed <= Number(process.argv[2] ?? 0); seed += 1) console.log(JSON.stringify(randomNetwork(seed)));
