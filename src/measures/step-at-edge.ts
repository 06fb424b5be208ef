// What: how high does the bare face stand at the edge of this surface, where it was cut into the ground or filled above it?
// Formula: ground - finished top along the outline (cut), or finished top - ground (fill), where nothing holds the face.
// Source: plane geometry; corners and middles of the sides.
// Valid: where levels of the ground reach; held where a wall, bank, ramp, steps or building stands within the reach given.
// Witness: the place on the edge.

import { pointFigure } from "../geometry/figure.ts";
import { nearest } from "../geometry/nearest.ts";
import type { Feature } from "../model/plan.ts";
import type { CandidatePlace, Found, Measure, Scene } from "../model/reading.ts";
import { finishedPlane } from "../site/finished-level.ts";
import { groundOf, levelAtPoint, roughness } from "../site/ground.ts";
import { figureAt, groundFigure, type LivePoint } from "../site/live-figure.ts";
import { levelOnPlane } from "../terrain/surface.ts";
import { askedFor, missing } from "./asked-for.ts";

const holding: ReadonlySet<string> = new Set(["wall", "bank", "ramp", "steps", "building"]);

export const stepAtEdge: Measure = {
  name: "step-at-edge",
  dimension: "length",
  roles: { surface: "a surface to be built, with its finished level" },
  parameters: { side: { words: ["cut", "fill"], default: "cut" }, held_within: { dimension: "length", default: 1 } },
  phrase: "the {side} at its edge is {found} high",
  shortName: "face at the edge",
  find: ({ surface }, scene, parameters): Found => {
    const plane = surface && !surface.existing ? finishedPlane(surface) : null;
    const corners = (surface && groundFigure(surface)?.chains[0]?.points) ?? [];
    if (!surface || !plane || corners.length < 3) return { is: "does-not-bear" };
    const ground = groundOf(scene);
    const sign = parameters["side"] === "fill" ? -1 : 1;
    const edge = withMiddles(corners);
    const places = edge.flatMap((at, index): readonly CandidatePlace[] => {
      const level = levelAtPoint(ground, at, scene.read);
      if (!level) return [];
      return [
        {
          key: `edge ${index}`,
          value: (read) => {
            const top = plane(read);
            return top ? sign * (level(read) - levelOnPlane(top, at(read))) : Number.NaN;
          },
          witness: (read) => [{ part: "found", form: "point", points: [at(read)], label: "face" }],
          methodU: roughness,
        },
      ];
    });
    if (places.length === 0)
      return missing(askedFor(surface, "ground", "levels of the ground beside the edges", "length"));
    const within = Number(parameters["held_within"]);
    const bare = places.filter(({ key }) => !isHeld(edge[Number(key.split(" ")[1])] as LivePoint, within, scene));
    return bare.length > 0 ? { is: "found", places: bare } : { is: "does-not-bear" };
  },
};

/** The corners, and the middle of each side. */
function withMiddles(corners: readonly LivePoint[]): readonly LivePoint[] {
  return corners.flatMap((corner, index) => {
    const next = corners[(index + 1) % corners.length] as LivePoint;
    const middle: LivePoint = (read) => {
      const [a, b] = [corner(read), next(read)];
      return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    };
    return [corner, middle];
  });
}

function isHeld(at: LivePoint, within: number, scene: Scene): boolean {
  const place = pointFigure(at(scene.read));
  return scene.standing().some((feature: Feature) => {
    const figure = holding.has(feature.kind) ? groundFigure(feature) : null;
    const near = figure && nearest(place, figureAt(figure, scene.read));
    return near !== null && near.distance <= within;
  });
}
