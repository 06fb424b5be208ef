// Lines along which the ground breaks: levels taken along one foot, crest or bed follow each other, and so do levelled pegs
// that a bank, a ditch or a wall is drawn through.

import { type Feature, isSpot, type LevelledPlace, type Property, propertyOf } from "../model/plan.ts";
import type { Spot } from "../model/quantity.ts";

/** Kinds of which the line itself is a break of the ground. */
const breakKinds: ReadonlySet<string> = new Set(["wall", "water", "road", "surface"]);

/** The levelled places with the breaklines that each lies on, in the order of their runs. */
export function withBreakLines(
  levelled: readonly LevelledPlace[],
  features: readonly Feature[],
): readonly LevelledPlace[] {
  const drawn = features.flatMap((feature) => linesOf(feature));
  return levelled.map((place) => {
    const along = [...ownLine(place), ...drawn.flatMap(({ name, spots }) => placesOn(name, spots, place))];
    return along.length === 0 ? place : { ...place, along };
  });
}

type Along = NonNullable<LevelledPlace["along"]>;

/** Levels at runs along one part of a feature. */
function ownLine({ of }: LevelledPlace): Along {
  return of?.at === undefined ? [] : [{ line: `${of.feature} ${of.part}`, order: of.at }];
}

function placesOn(line: string, spots: readonly Spot[], { spot }: LevelledPlace): Along {
  if (spot === null) return [];
  return spots.flatMap((one, order) =>
    one.east.id === spot.east.id && one.north.id === spot.north.id ? [{ line, order }] : [],
  );
}

function linesOf(feature: Feature): readonly { readonly name: string; readonly spots: readonly Spot[] }[] {
  if (!feature.existing) return [];
  if (feature.kind === "bank")
    return (["crest", "toe"] as const).map((part) => {
      const list = propertyOf(feature, part);
      const spots = Array.isArray(list) ? (list as readonly Property[]).filter(isSpot) : [];
      return { name: `drawn ${feature.name} ${part}`, spots };
    });
  const { shape, kind, name } = feature;
  if (!breakKinds.has(kind) || shape === null) return [];
  if (shape.form === "line" && shape.width === undefined) return [{ name: `drawn ${name}`, spots: shape.line }];
  if (shape.form !== "outline") return [];
  return [{ name: `drawn ${name}`, spots: [...shape.outline, ...shape.outline.slice(0, 1)] }];
}
