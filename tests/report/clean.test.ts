// What a page carries of a letter, for every letter there is, against the categories of Unicode as the regular expressions
// of the language know them (COMPUTED).

import { expect, test } from "vitest";
import { clean, letterColumns } from "../../src/report/clean.ts";

const letters = Array.from({ length: 0x110000 }, (_, code) => code)
  .filter((code) => code < 0xd800 || code > 0xdfff)
  .map((code) => String.fromCodePoint(code));

test("marks that combine take no column, all other letters one or two", () => {
  const wrong = letters.filter((letter) => /\p{M}/u.test(letter) !== (letterColumns(letter) === 0));
  expect(wrong).toEqual([]);
});

test("spaces and controls become one space, letters that hide or reorder go, the rest stays", () => {
  const wrong = letters.slice(0, 0x3000).filter((letter) => {
    const wanted = /[\p{Zs}\p{Zl}\p{Zp}\p{Cc}]/u.test(letter) ? "a b" : /\p{Cf}/u.test(letter) ? "ab" : `a${letter}b`;
    // A control may begin an order to the terminal that takes the next letter with it: looked at in the report's tests.
    return !["\u001b", "\u009b"].includes(letter) && clean(`a${letter}b`) !== wanted;
  });
  expect(wrong).toEqual([]);
  expect([clean("  a  b "), clean("± 0.3 m,  180°"), clean("a\u00adb")]).toEqual(["a b", "± 0.3 m, 180°", "ab"]);
});
