// Two areas that overlap though no corner lies inside the other and no sides cross: they share edges.

import { sideAt, sideCount, type Chain, type Figure } from "./figure.ts";
import type { NearPair } from "./near-pair.ts";
import { sideOf } from "./orientation.ts";
import { intersection } from "./overlay.ts";
import { polygonEdge, totalArea, whereInPolygon } from "./polygon.ts";
import { footOn } from "./segment.ts";

/** Width below which a common strip is a shared edge and no overlap, metres. */
const touching = 1e-6;

/**
 * The pair that tells how deep two areas overlap where all their corners lie on or outside each other and no sides
 * cross (rectangles with a common edge, or the same one twice): of the corners on the other's edge the one with
 * least way to a side that it does not lie on. Empty where the areas only touch.
 */
export function overlapPairs(a: Figure, b: Figure): readonly NearPair[] {
  if (!a.area || !b.area) return [];
  const common = intersection([a.area], [b.area]);
  if (!common || totalArea(common) <= touching * polygonEdge(a.area)) return [];
  const pairs = [...onEdge(a, b, "a"), ...onEdge(b, a, "b")];
  return pairs.length === 0 ? [] : [pairs.reduce((best, next) => (next.distance > best.distance ? next : best))];
}

function onEdge(figure: Figure, other: Figure, vertexOf: "a" | "b"): readonly NearPair[] {
  const { area } = other;
  return figure.chains.flatMap(({ points }, chain) =>
    points.flatMap((at, vertex): readonly NearPair[] => {
      if (!area || whereInPolygon(area, at) !== "boundary") return [];
      return other.chains.flatMap((sides, sideChain) =>
        inwards(sides, at).map(({ side, foot, distance, outside }) => ({
          vertexOf,
          chain,
          vertex,
          at,
          sideChain,
          side,
          foot,
          how: "inside" as const,
          outside,
          distance: -distance,
        })),
      );
    }),
  );
}

/** Sides of a ring that a point on its edge does not lie on. */
function inwards(sides: Chain, at: NearPair["at"]) {
  return Array.from({ length: sideCount(sides) }, (_, side) => {
    const segment = sideAt(sides, side);
    const { foot, distance } = footOn(segment, at);
    const outside: 1 | -1 = sideOf(...segment, at) > 0 ? -1 : 1;
    return { side, foot, distance, outside };
  }).filter(({ distance }) => distance > touching);
}
