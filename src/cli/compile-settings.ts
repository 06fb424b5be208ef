// How eagerly V8 makes machine code of the program while it runs.

import { setFlagsFromString } from "node:v8";

/** The V8 of node 20, which these figures were measured on; another keeps its own settings. */
const measuredOn = "11.";

/**
 * A check is a short run through much code. As V8 comes, it makes machine code of some 800 functions in a run of two seconds. A second thread
 * does that, but memory can only be cleared while that thread stands still, and the check waits for it: 0.6 s of the 2.25 s of 2,000 features.
 *
 * `interrupt-budget`: bytes of bytecode that a function runs before it may be worth it, 67,584 if not set;
 * `max-inlined-bytecode-size-cumulative`: how much of what it calls goes into its own code, 920 if not set.
 */
const settings = ["--interrupt-budget=160000", "--max-inlined-bytecode-size-cumulative=80"];

/** To be called before the program is loaded: V8 does not take over what it compiled under other settings. */
export function compileSparingly(): void {
  if (!process.versions.v8.startsWith(measuredOn)) return;
  for (const setting of settings) setFlagsFromString(setting);
}
