// The level that was used and the ground that was levelled, as things that rules can be about.

import { distance, type Point } from "../geometry/point.ts";
import type { Place } from "../model/path.ts";
import type { Feature, LevelledPlace } from "../model/plan.ts";
import { longestEdges } from "../terrain/long-edges.ts";
import { groundOf } from "../site/ground.ts";
import { child, textOf } from "./node.ts";
import type { BookWriter } from "./number-book.ts";
import { readNumberText } from "./numbers.ts";
import type { Customs } from "./practice.ts";
import { allItems, firstAt, type Texts } from "./sources.ts";
import { thing } from "./surveyed.ts";
import { exact, follows, type Uncertain } from "./sway.ts";
import { wordsOf, type Troubles } from "./troubles.ts";

interface LevelWork {
  readonly texts: Texts;
  readonly book: BookWriter;
  readonly customs: Customs;
  readonly troubles: Troubles;
}

/** The level, with the tilt of its line of sight by the two-peg test; null where nothing was levelled. */
export function levelThing({ texts, book, customs, troubles }: LevelWork): Feature | null {
  const [first] = allItems(texts, "survey", "level_book");
  if (first === undefined) return null;
  const levelling = firstAt(texts, "survey", "levelling");
  const place: Place = levelling?.place ?? { file: first.place.file, path: ["survey", "level_book"] };
  const node = child(levelling, "two_peg_error");
  const name = textOf(child(levelling, "instrument")) ?? "used";
  const text = textOf(node);
  if (node === null || text === null) return { ...thing("level", name, place), properties: { tested: false } };
  const match = /^(.+?)\s+(?:in|over|on)\s+(.+)$/.exec(text);
  const error = match && readNumberText(node, match[1], { dimension: "length", troubles });
  const over = match && readNumberText(node, match[2], { dimension: "length", troubles });
  if (!error || !over || !(over.value > 0)) {
    if (!match || (over && !(over.value > 0)))
      troubles.report(node, {
        code: "wrong-type",
        expected: "by how much the second difference was out, and over how far",
        got: wordsOf(text),
        hint: "write two_peg_error: 2 mm in 40 m",
      });
    return { ...thing("level", name, place), properties: { tested: false } };
  }
  // c = [(a2 - b2) - (a1 - b1)] / D: four readings of the staff, so u(c) = 2 u(reading) / D.
  const u = (error.plusMinus === null ? 2 * customs.u("staff") : error.plusMinus / 2) / over.value;
  const tilt = book.doubted(Math.abs(error.value) / over.value, {
    sort: "survey",
    words: "the two-peg test",
    place: node.place,
    u,
    dimension: "slope",
  });
  return {
    ...thing("level", name, place),
    properties: { tested: true, two_peg_error: book.seal(tilt, "slope", node.place) },
  };
}

/** The net between the levels of the ground, with its longest and its middle edge; null where there is none. */
export function groundThing(levels: readonly LevelledPlace[], { texts, book }: Pick<LevelWork, "texts" | "book">) {
  const { values, sways } = book.finish();
  const read = ({ id }: { readonly id: number }): number => values[id] as number;
  const { net, spots } = groundOf({ levels, read });
  const [longest, middle] = net === null ? [] : longestEdges(net);
  if (net === null || longest === undefined || middle === undefined) return null;
  const root = texts.roots[0];
  const place: Place = { file: root?.place.file ?? "", path: ["survey"] };
  const live = (id: number): Uncertain => ({ value: values[id] as number, sway: sways[id] ?? new Map() });
  const lengthOf = ([a, b]: readonly [number, number]): Uncertain => {
    const [from, to] = [spots[a], spots[b]];
    if (!from || !to) return exact(Number.NaN);
    const ends: readonly Point[] = [from, to].map(({ east, north }) => [read(east), read(north)]);
    const [here, there] = ends as [Point, Point];
    const length = distance(here, there);
    const [e, n] = [(there[0] - here[0]) / length, (there[1] - here[1]) / length];
    return follows(length, [
      [e, live(to.east.id)],
      [n, live(to.north.id)],
      [-e, live(from.east.id)],
      [-n, live(from.north.id)],
    ]);
  };
  return {
    ...thing("ground", "levels", place),
    properties: {
      widest_gap: book.seal(lengthOf(longest), "length", place),
      middle_gap: book.seal(lengthOf(middle), "length", place),
    },
  } satisfies Feature;
}
