// The built-in rulebook is read and checked when it is built: packed as JSON and unpacked it must be the same in every part.

import { expect, test } from "vitest";
import { rulebook } from "../../src/index.ts";
import { measures } from "../../src/measures/index.ts";
import { loadRulebook } from "../../src/rulebook/load-rulebook.ts";
import { packRulebook, type PackedRulebook, unpackRulebook } from "../../src/rulebook/packed.ts";
import { ruleFiles } from "../house/rule-files.ts";

const { value: book } = loadRulebook(ruleFiles(), measures);

test("a rulebook comes back from JSON as it was", () => {
  const text = JSON.stringify(packRulebook(book));
  expect(unpackRulebook(JSON.parse(text) as PackedRulebook)).toStrictEqual(book);
});

test("the built-in rulebook is the one of the rule files (run npm run compile after a change)", () => {
  expect(rulebook()).toStrictEqual(book);
});
