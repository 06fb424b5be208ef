import { expect, test } from "vitest";
import { movedRead } from "../../src/site/moved-read.ts";
import { featuresNear } from "../../src/site/near-features.ts";
import type { Feature } from "../../src/model/plan.ts";
import type { Quantity, Read } from "../../src/model/quantity.ts";
import type { Scene } from "../../src/model/reading.ts";

/** Round things of one metre along a line, two numbers and a width each. */
const values: number[] = [];
const number = (value: number) => ({ id: values.push(value) - 1, dimension: "length" });
const heapAt = (east: number) =>
  ({
    kind: "heap",
    name: String(east),
    shape: { form: "circle", centre: { east: number(east), north: number(0) }, across: number(1) },
  }) as unknown as Feature;
const heaps = [0, 10, 20, 30].map(heapAt);
const plain: Read = (quantity) => values[quantity.id] as number;
const kinds = new Set(["heap"]);
const box = { west: 9, south: -1, east: 11, north: 1 };
const near = (read: Read) =>
  featuresNear({ read, standing: () => heaps } as unknown as Scene, kinds, box, 2).map(({ name }) => name);

test("what lies within reach is found, what is moved is found where it lies now", () => {
  expect(near(plain)).toEqual(["10"]);
  const eastOf = (heap: Feature) => (heap.shape as { centre: { east: Quantity } }).centre.east.id;
  expect(near(movedRead(plain, new Map([[eastOf(heaps[2] as Feature), -8]])))).toEqual(["10", "20"]);
  expect(near(movedRead(plain, new Map([[eastOf(heaps[1] as Feature), 8]])))).toEqual([]);
});
