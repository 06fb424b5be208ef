// Which of the things that stand lie near a place on the ground: by an index, so that a plan of thousands is as quick as one of ten.

import type { Box } from "../geometry/box.ts";
import { boxDistance } from "../geometry/box.ts";
import { type BoxIndex, indexBoxes } from "../geometry/index-boxes.ts";
import type { Feature } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Scene } from "../model/reading.ts";
import { groundBox } from "./ground-box.ts";
import { numbersOfShape, originOf } from "./moved-read.ts";

type Kinds = ReadonlySet<string>;

/** What stands of some kinds, indexed as it lies at one read. */
interface Standing {
  readonly features: readonly Feature[];
  readonly index: BoxIndex;
  /** Positions of the features whose shape is made of a number, by its id. */
  readonly madeOf: ReadonlyMap<number, readonly number[]>;
}

const kept = new WeakMap<readonly Feature[], WeakMap<Read, WeakMap<Kinds, Standing>>>();

/** Features of some kinds whose boxes come within `reach` metres of a box, in the order of the plan. */
export function featuresNear(scene: Scene, kinds: Kinds, box: Box, reach: number): readonly Feature[] {
  const origin = originOf(scene.read);
  const { features, index, madeOf } = standingOf(scene, kinds, origin?.base ?? scene.read);
  const near = index.within(box, reach);
  if (!origin) return near.map((at) => features[at] as Feature);
  // What is moved may have come near or gone: it is looked at where it lies now.
  const moved = new Set([...origin.moves.keys()].flatMap((id) => madeOf.get(id) ?? []));
  const arrived = [...moved].filter((at) => {
    const now = groundBox(features[at] as Feature, scene.read);
    return now !== null && boxDistance(now, box) <= reach;
  });
  const all = [...near.filter((at) => !moved.has(at)), ...arrived].sort((a, b) => a - b);
  return all.map((at) => features[at] as Feature);
}

function standingOf(scene: Scene, kinds: Kinds, read: Read): Standing {
  const list = scene.standing();
  const byRead = kept.get(list) ?? new WeakMap<Read, WeakMap<Kinds, Standing>>();
  kept.set(list, byRead);
  const byKinds = byRead.get(read) ?? new WeakMap<Kinds, Standing>();
  byRead.set(read, byKinds);
  const known = byKinds.get(kinds) ?? indexed(list, kinds, read);
  byKinds.set(kinds, known);
  return known;
}

function indexed(list: readonly Feature[], kinds: Kinds, read: Read): Standing {
  const features = list.filter((feature) => kinds.has(feature.kind));
  const madeOf = new Map<number, number[]>();
  for (const [at, feature] of features.entries())
    for (const id of numbersOfShape(feature)) madeOf.set(id, [...(madeOf.get(id) ?? []), at]);
  return { features, index: indexBoxes(features.map((feature) => groundBox(feature, read))), madeOf };
}
