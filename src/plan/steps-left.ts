// The step in the ground that is left where a wall that holds it is taken away.

import { nearest } from "../geometry/nearest.ts";
import { type Feature, isQuantity, type LevelledPlace, propertyOf } from "../model/plan.ts";
import type { Quantity, Read } from "../model/quantity.ts";
import { figureAt, groundFigure } from "../site/live-figure.ts";
import type { BookWriter } from "./number-book.ts";
import { difference, scaled, type Uncertain } from "./sway.ts";

/** What can hold the ground in the place of a wall. */
const holding: ReadonlySet<string> = new Set(["wall", "bank", "ramp", "steps", "building"]);

/** A thing this near the old wall takes its place, metres (a spade's reach; PRACTICE). */
const inItsPlace = 1;

/**
 * Walls that go at some stage, with `taken_away` and `step_left`: the height that they hold back, or what the levels at
 * their two feet differ by; not where something else holds the ground then.
 */
export function withStepsLeft(
  features: readonly Feature[],
  { levels, book }: { readonly levels: readonly LevelledPlace[]; readonly book: BookWriter },
): readonly Feature[] {
  if (!features.some(goes)) return features;
  const { values } = book.finish();
  const read: Read = ({ id }) => values[id] as number;
  return features.map((feature) => {
    const step = goes(feature) && !isFollowed(feature, features, read) ? stepOf(feature, levels, book) : null;
    if (step === null) return feature;
    return { ...feature, properties: { ...feature.properties, taken_away: true, step_left: step } };
  });
}

function goes({ kind, until, superseded }: Feature): boolean {
  return kind === "wall" && until !== null && superseded !== true;
}

function isFollowed(wall: Feature, features: readonly Feature[], read: Read): boolean {
  const own = groundFigure(wall);
  const gone = wall.until ?? 0;
  return features.some((other) => {
    const stands = other.from <= gone && (other.until === null || other.until > gone);
    const figure = other !== wall && stands && holding.has(other.kind) ? groundFigure(other) : null;
    const near = own && figure && nearest(figureAt(own, read), figureAt(figure, read));
    return near !== null && near.distance <= inItsPlace;
  });
}

function stepOf(wall: Feature, levels: readonly LevelledPlace[], book: BookWriter): Quantity | null {
  const held = propertyOf(wall, "retains.height");
  if (isQuantity(held)) return held;
  const { values, sways } = book.finish();
  const live = ({ id }: Quantity): Uncertain => ({ value: values[id] as number, sway: sways[id] ?? new Map() });
  const feet = levels.filter(({ of }) => of?.feature === wall.name);
  const steps = feet.flatMap(({ of, level }) => {
    const other = feet.find((one) => of?.part === "foot left" && one.of?.part === "foot right" && one.of.at === of.at);
    if (other === undefined) return [];
    const step = difference(live(level), live(other.level));
    return [scaled(step, step.value < 0 ? -1 : 1)];
  });
  const [highest] = steps.sort((a, b) => b.value - a.value);
  return highest === undefined ? null : book.seal(highest, "length", wall.place);
}
