// Which pairs are looked at: the index must find what comparing every pair finds, in the same order (exhaustive check, fixed seed).

import { describe, expect, test } from "vitest";
import { type Lie, lieOf, subjectFinder } from "../../src/engine/select.ts";
import { areaFigure } from "../../src/geometry/figure.ts";
import { polygonOf } from "../../src/geometry/polygon.ts";
import type { Card } from "../../src/model/card.ts";
import type { Feature } from "../../src/model/plan.ts";
import { seeded } from "../seeded.ts";

const kinds = ["wall", "fence", "tree"];
const random = seeded(20261125);

function feature(index: number): Feature {
  const kind = kinds[index % kinds.length] as string;
  const place = { file: "plan", path: [index] };
  return { kind, name: `${kind} ${index}`, place, existing: true, from: 0, until: null, shape: null, properties: {} };
}

const whole = Array.from({ length: 200 }, (_, index) => feature(index));
const part: Feature = { ...feature(200), kind: "wall", name: "wall 0, gap 1", partOf: whole[0] as Feature };
const standing = [...whole, part];
type Upright = readonly [west: number, south: number, east: number, north: number];

function lieOfUpright([west, south, east, north]: Upright): Lie {
  const outline = polygonOf([
    [west, south],
    [east, south],
    [east, north],
    [west, north],
  ]);
  return { figure: areaFigure(outline), grow: 0, box: { west, south, east, north } };
}

/** Rectangles of up to 6 m on a plot of 150 m; every tenth thing has no place. */
const uprights = new Map(
  standing.map((one, index): [Feature, Upright | null] => {
    const [east, north] = [150 * random(), 150 * random()];
    return [one, index % 10 === 0 ? null : [east, north, east + 6 * random(), north + 6 * random()]];
  }),
);
const lies = new Map([...uprights].map(([one, upright]) => [one, upright && lieOfUpright(upright)]));
const lie = (one: Feature) => lies.get(one) ?? null;

function cardOf(about: readonly string[], against: readonly string[], within: number): Card {
  return {
    about: { role: "thing", kinds: about },
    against: { role: "other", kinds: against },
    within,
  } as unknown as Card;
}

/** Every pair compared with every other, as the rule says. */
function byComparing({ about, against, within }: Card): readonly string[] {
  const plays = (kindsOf: readonly string[], one: Feature) => kindsOf.includes(one.kind);
  const gap = (a: Upright, b: Upright) =>
    Math.hypot(Math.max(a[0] - b[2], b[0] - a[2], 0), Math.max(a[1] - b[3], b[1] - a[3], 0));
  const told: string[] = [];
  for (const [i, one] of standing.entries()) {
    for (const [j, other] of standing.entries()) {
      if (!plays(about.kinds, one) || !plays(against?.kinds ?? [], other)) continue;
      if (i === j || one.partOf === other || other.partOf === one) continue;
      if (plays(about.kinds, other) && plays(against?.kinds ?? [], one) && i > j) continue;
      const [a, b] = [uprights.get(one), uprights.get(other)];
      if (!a || !b || gap(a, b) <= (within ?? 0)) told.push(`${one.name} | ${other.name}`);
    }
  }
  return told;
}

const cards = [
  cardOf(["wall"], ["fence"], 8),
  cardOf(["wall", "fence"], ["fence", "tree"], 3),
  cardOf(["tree"], ["tree"], 12),
  cardOf(["fence"], ["wall", "tree"], 0),
];

describe("subjects", () => {
  test.each(cards.map((card) => [card.about.kinds.join("+"), card] as const))(
    "of %s are those that comparing every pair finds",
    (_, card) => {
      const found = subjectFinder(standing, lie)
        .all(card)
        .map(({ thing, other }) => `${thing?.name} | ${other?.name}`);
      expect(found).toEqual(byComparing(card));
      expect(found.length).toBeGreaterThan(10);
    },
  );

  test("that one feature plays a role in are the same, picked out", () => {
    const finder = subjectFinder(standing, lie);
    for (const card of cards) {
      for (const one of standing) {
        const having = finder.having(card, one, lie(one));
        const picked = finder.all(card).filter((subject) => Object.values(subject).includes(one));
        expect(new Set(having.map((subject) => JSON.stringify(subject)))).toEqual(
          new Set(picked.map((subject) => JSON.stringify(subject))),
        );
      }
    }
  });
});

test("a reach is narrowed by a number of one of the two, where the plan gives it", () => {
  const trees = [0.2, 2, null].map((stem, k) => ({
    kind: "tree",
    name: `tree ${k}`,
    properties: stem === null ? {} : { stem: { id: k, dimension: "length" } },
  })) as unknown as Feature[];
  const fence = { kind: "fence", name: "fence", properties: {} } as unknown as Feature;
  const placed = new Map<Feature, Lie>([
    [fence, lieOfUpright([0, 0, 1, 1])],
    ...trees.map((tree): [Feature, Lie] => [tree, lieOfUpright([31, 0, 32, 1])]),
  ]);
  const card = {
    ...cardOf(["fence"], ["tree"], 45),
    narrowed: { from: "times", times: 20, of: "other.stem", downTo: 16 },
  } as unknown as Card;
  const read = ({ id }: { readonly id: number }) => [0.2, 2][id] ?? 0;
  const finder = subjectFinder([fence, ...trees], (one) => placed.get(one) ?? null, read);
  const names = (found: ReturnType<typeof finder.all>) => found.map(({ other }) => other?.name);
  // 20 x 0.2 m is less than 16 m, and 30 m lie between them; 20 x 2 m reaches; the third has no stem in the plan.
  expect(names(finder.all(card))).toEqual(["tree 1", "tree 2"]);
  // Moved to 10 m from all of them.
  expect(names(finder.having(card, fence, lieOfUpright([20, 0, 21, 1])))).toEqual(["tree 0", "tree 1", "tree 2"]);
});

test("a reach is a true distance, whichever way the two lie: a line with its width, a tree with its crown", () => {
  const read = ({ id }: { readonly id: number }) => id;
  const spot = (east: number, north: number) => ({ east: { id: east }, north: { id: north } });
  const turned = (angle: number) => {
    const at = (x: number, y: number) =>
      spot(x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle));
    const way = {
      kind: "wall",
      name: "way",
      shape: { form: "line", line: [at(0, 0), at(20, 0)], width: { id: 3 } },
      properties: {},
    } as unknown as Feature;
    const oak = {
      kind: "tree",
      name: "oak",
      shape: { form: "point", at: at(10, 9) },
      properties: { crown: { radius: { id: 4, dimension: "length" } } },
    } as unknown as Feature;
    return subjectFinder([way, oak], (one) => lieOf(one, read));
  };
  // 9 m less 1.5 m of width less 4 m of crown leave 3.5 m.
  for (let k = 0; k < 16; k++) {
    const finder = turned((k * Math.PI) / 8 + 0.1);
    expect(finder.all(cardOf(["wall"], ["tree"], 3.499))).toHaveLength(0);
    expect(finder.all(cardOf(["wall"], ["tree"], 3.501))).toHaveLength(1);
  }
});
