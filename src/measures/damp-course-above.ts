// What: how far does the damp course stand above the ground or the paving outside, where it is least?
// Formula: level of the damp course - level outside: as stated, of surfaces that touch the wall, of the ground at the wall.
// Source: plane geometry.
// Valid: levels of one datum; ground between levels as a net of triangles.
// Witness: the place at the wall.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Quantity, Read } from "../model/quantity.ts";
import type { CandidatePlace, Measure, Scene } from "../model/reading.ts";
import { levelOnPlane } from "../terrain/surface.ts";
import { finishedPlane } from "../site/finished-level.ts";
import { groundOf, levelAtPoint, roughness } from "../site/ground.ts";
import { groundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { wallPlaces } from "../site/outside-walls.ts";
import { askedFor, missing } from "./asked-for.ts";

/** A surface within this of the wall is taken to reach it: the width of a spade, metres (PRACTICE). */
const touching = 0.2;

export const dampCourseAbove: Measure = {
  name: "damp-course-above",
  dimension: "length",
  roles: { building: "a building" },
  parameters: { level: { words: ["damp_course", "floor", "air_bricks"], default: "damp_course" } },
  phrase: "its {level} stands {found} above what lies outside",
  below: { phrase: "its {level} lies {found} below what lies outside", wanted: "above it" },
  shortName: "above the ground",
  shownIn: "mm",
  find: (subject, scene, parameters) => {
    const { building } = subject;
    const property = String(parameters["level"]);
    if (!building) return { is: "does-not-bear" };
    const level = propertyOf(building, property);
    // Nobody looks for the damp course of a barn; one that is written down is looked at whatever it stands in.
    if (!isQuantity(level) && propertyOf(building, "habitable") === false) return { is: "does-not-bear" };
    if (!isQuantity(level))
      return missing(askedFor(building, property, `the level of the ${property.replaceAll("_", " ")}`, "length"));
    const places = [
      ...statedOutside(building, level),
      ...scene.standing("surfaces").flatMap((surface) => overSurface(building, surface, level, scene.read)),
      ...overGround(building, level, scene),
    ];
    if (places.length > 0) return { is: "found", places };
    return missing(
      askedFor(building, "ground_outside", "the level of the ground outside, where it is highest,", "length"),
    );
  },
};

function statedOutside(building: Feature, level: Quantity): readonly CandidatePlace[] {
  const outside = propertyOf(building, "ground_outside");
  if (!isQuantity(outside)) return [];
  return [{ key: "ground outside", value: (read) => read(level) - read(outside), witness: () => [] }];
}

function overSurface(building: Feature, surface: Feature, level: Quantity, read: Read): readonly CandidatePlace[] {
  const plane = finishedPlane(surface);
  const [a, b] = [groundFigure(building), groundFigure(surface)];
  if (!plane || !a || !b) return [];
  return nearPlaces(a, b, touching, read).map((near) => ({
    key: `${surface.name} ${near.key}`,
    where: `at ${featureWords(surface)}`,
    value: (now) => {
      const top = plane(now);
      return top ? now(level) - levelOnPlane(top, near.ends(now)[1]) : Number.NaN;
    },
    witness: (now) => [{ part: "found", form: "point", points: [near.ends(now)[1]] }],
  }));
}

function overGround(building: Feature, level: Quantity, scene: Scene): readonly CandidatePlace[] {
  return wallPlaces(building, scene.read).flatMap((wall): readonly CandidatePlace[] => {
    const ground = levelAtPoint(groundOf(scene), wall.at, scene.read);
    if (!ground) return [];
    return [
      {
        key: `wall ${wall.key}`,
        value: (read) => read(level) - ground(read),
        witness: (read) => [{ part: "found", form: "point", points: [wall.at(read)] }],
        methodU: roughness,
      },
    ];
  });
}
