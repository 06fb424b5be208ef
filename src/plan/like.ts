// What a vehicle is taken to be like: figures of the table of vehicles where the plan has none of its own.

import type { Table } from "../model/card.ts";
import type { Properties, Property } from "../model/plan.ts";
import type { Dimension } from "../model/quantity.ts";
import { nearestWord } from "../reading/nearest-word.ts";
import type { BookWriter } from "./number-book.ts";
import { child, textOf, type Node } from "./node.ts";
import type { Version } from "./stages.ts";
import type { Troubles } from "./troubles.ts";

/** What reading `like` needs. */
export interface LikeWork {
  readonly book: BookWriter;
  readonly troubles: Troubles;
  /** Rows by the word that a plan uses; null where no table is at hand. */
  readonly vehicles: Table | null;
}

/** Columns of the table and the properties they stand for. */
const columns: readonly (readonly [column: string, property: string, dimension: Dimension])[] = [
  ["length", "length", "length"],
  ["width", "width", "length"],
  ["height", "height", "length"],
  ["wheelbase", "wheelbase", "length"],
  ["front_overhang", "front_overhang", "length"],
  ["rear_overhang", "rear_overhang", "length"],
  ["front_track", "track", "length"],
  ["hitch", "hitch", "length"],
  ["mass", "mass", "mass"],
  ["ground_clearance", "ground_clearance", "length"],
];

/** Columns of turning radii, first the one that hangs on the fewest other lengths. */
const radii: readonly (readonly [column: string, to: string])[] = [
  ["radius_of_front_axle", "front axle centre"],
  ["radius_between_kerbs", "outer front tyre"],
  ["radius_between_walls", "outer front corner"],
  ["radius_inside", "inner rear body"],
];

const turning = ["turning_circle", "turning_radius", "full_lock"] as const;
const alongTheVehicle = ["wheelbase", "front_overhang", "rear_overhang"] as const;

/** Properties that a vehicle's `like` brings; its own stand before them. None for other kinds. */
export function likeProperties(version: Version, own: Properties, work: LikeWork): Properties {
  const node = version.kind === "vehicles" && work.vehicles ? child(version.node, "like") : null;
  const word = node === null ? null : textOf(node);
  if (node === null || word === null || !work.vehicles) return {};
  const row = work.vehicles.rows.get(word);
  if (!row) return unknownVehicle(node, word, work);
  const sealed = (column: string, dimension: Dimension, words: string): Property | undefined => {
    const cell = row[column];
    if (!cell || !Number.isFinite(cell.value)) return undefined;
    const cause = { sort: "table", words, place: node.place, dimension, u: cell.u, part: column } as const;
    return work.book.seal(work.book.doubted(cell.value, cause), dimension, node.place);
  };
  const found: Record<string, Property> = {};
  for (const [column, property, dimension] of columns) {
    if (own[property] !== undefined || isLaidOver(property, own)) continue;
    const number = sealed(column, dimension, `the ${property.replaceAll("_", " ")} of a vehicle like "${word}"`);
    if (number !== undefined) found[property] = number;
  }
  const radius = turning.some((key) => own[key] !== undefined) ? undefined : radii.find(([column]) => row[column]);
  const turns = radius && sealed(radius[0], "length", `the turning radius of a vehicle like "${word}"`);
  if (radius && turns !== undefined) found["turning_radius"] = { radius: turns, to: radius[1] };
  return found;
}

/** A length written in the plan leaves the rear overhang to follow from it, and an overhang or wheelbase the length. */
function isLaidOver(property: string, own: Properties): boolean {
  if (property === "rear_overhang") return own["length"] !== undefined;
  return property === "length" && alongTheVehicle.some((key) => own[key] !== undefined);
}

function unknownVehicle(node: Node, word: string, { troubles, vehicles }: LikeWork): Properties {
  const known = [...(vehicles?.rows.keys() ?? [])];
  const near = nearestWord(word, known);
  troubles.report(node, {
    code: "unknown-name",
    expected: `one of the vehicles ${known.join(", ")}`,
    got: `"${word}"`,
    hint:
      near === null ? "choose one of these, or measure the vehicle and write its lengths" : `did you mean "${near}"?`,
  });
  return {};
}
