// Parts that are worked out late look like any other part, and are worked out once.

import { expect, test } from "vitest";
import { withLater } from "../../src/engine/later.ts";

test("a late part is worked out when it is looked at, once, and is listed and copied like the others", () => {
  const asked: string[] = [];
  const withWords = withLater<{ readonly name: string }, { readonly words: string | undefined; readonly size: number }>(
    {
      words: ({ name }) => {
        asked.push(name);
        return name === "nothing" ? undefined : `about ${name}`;
      },
      size: ({ name }) => name.length,
    },
  );
  const [one, other] = [withWords({ id: 1 }, { name: "gate" }), withWords({ id: 2 }, { name: "nothing" })];
  expect(asked).toEqual([]);
  expect(one.size).toBe(4);
  expect(asked).toEqual([]);
  expect([one.words, one.words, other.words, other.words]).toEqual(["about gate", "about gate", undefined, undefined]);
  expect(asked).toEqual(["gate", "nothing"]);
  expect(Object.keys(one)).toEqual(["id", "words", "size"]);
  expect({ ...one, id: 3 }).toEqual({ id: 3, words: "about gate", size: 4 });
  expect(JSON.stringify(one)).toBe('{"id":1,"words":"about gate","size":4}');
});
