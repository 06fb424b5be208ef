// The `when` of a row: conditions on properties of roles or on companion readings.

import type { Condition } from "../model/card.ts";
import type { Dimension } from "../model/quantity.ts";
import { type Complain, isData, readAnyNumber } from "./bounds.ts";

/** Reads `{run.carries: foul, run.bore: {over: 90 mm, up_to: 115 mm}}`. */
export function readConditions(
  value: unknown,
  path: readonly (string | number)[],
  complain: Complain,
): readonly Condition[] {
  if (value === undefined) return [];
  if (!isData(value)) {
    complain(
      path,
      "properties with the values they must have",
      JSON.stringify(value),
      "write when: {drain.carries: foul}",
    );
    return [];
  }
  return Object.entries(value).flatMap(([of, test]) => readCondition(of, test, [...path, of], complain));
}

function readCondition(of: string, test: unknown, path: readonly (string | number)[], complain: Complain): Condition[] {
  if (typeof test === "string" || typeof test === "boolean") return [{ of, is: test }];
  if (Array.isArray(test) && test.every((word) => typeof word === "string")) return [{ of, is: test }];
  if (!isData(test)) {
    complain(
      path,
      "a word, true or false, a list of words, or {over, from, up_to, under}",
      JSON.stringify(test),
      "numbers go in {from: 90 mm, up_to: 115 mm}",
    );
    return [];
  }
  if (typeof test["so"] === "boolean") return [{ of, is: test["so"], silent: "ask" }];
  const names = { over: "over", from: "from", up_to: "upTo", under: "under" } as const;
  const band: {
    of: string;
    over?: number;
    from?: number;
    upTo?: number;
    under?: number;
    dimension?: Dimension;
  } = { of };
  for (const [word, key] of Object.entries(names)) {
    if (test[word] === undefined) continue;
    const number = readAnyNumber(test[word], [...path, word], complain);
    if (number === null) continue;
    band[key] = number.value;
    if (number.dimension !== null) band.dimension = number.dimension;
  }
  return [band];
}

/** Whether two conditions on the same property can both hold; unknown pairs count as "can". */
export function canBothHold(a: Condition, b: Condition): boolean {
  if ("is" in a && "is" in b) {
    const first = Array.isArray(a.is) ? a.is : [a.is];
    const second = Array.isArray(b.is) ? b.is : [b.is];
    return first.some((word) => second.includes(word));
  }
  if ("is" in a || "is" in b) return true;
  return meets(a, b) && meets(b, a);
}

type Band = Extract<Condition, { over?: number }>;

/** Whether band a's lower end leaves room below band b's upper end. */
function meets(a: Band, b: Band): boolean {
  const low = a.over ?? a.from ?? -Infinity;
  const high = b.upTo ?? b.under ?? Infinity;
  const open = a.over !== undefined || b.under !== undefined;
  return open ? low < high : low <= high;
}
