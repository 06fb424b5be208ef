// What: how wide is the way between the things that stand on its two sides, at its narrowest?
// Formula: least distance between a thing on the left and a thing on the right whose connection crosses the way's middle line.
// Source: plane geometry.
// Valid: things that stand up from the ground; overhanging branches and open gate leaves are not counted here.
// Witness: the narrowest place.

import { figureBox } from "../geometry/figure.ts";
import { lineLength, runAndLeft } from "../geometry/line.ts";
import type { Feature } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Measure, Point, Scene } from "../model/reading.ts";
import { featureWords } from "../model/plan.ts";
import { centreFigure, figureAt, groundFigure, type LiveFigure } from "../site/live-figure.ts";
import { featuresNear } from "../site/near-features.ts";
import { type NearPlace, nearPlaces } from "../site/near-places.ts";

/** Wider than this the way counts as open (metres). */
const open = 12;

/** Kinds that stand up and hem a way in. */
const hemmingKinds: ReadonlySet<string> = new Set([
  "wall",
  "building",
  "fence",
  "tree",
  "hedge",
  "heap",
  "tank",
  "obstacle",
]);

export const clearWidth: Measure = {
  name: "clear-width",
  dimension: "length",
  roles: { way: "a surface or strip drawn by its middle line" },
  parameters: {},
  phrase: "{found} is clear at its narrowest",
  shortName: "clear width",
  find: (subject, scene) => {
    const way = subject["way"];
    const middle = way && centreFigure(way);
    if (!way || way.shape?.form !== "line" || !middle) return { is: "does-not-bear" };
    const line = figureAt(middle, scene.read).chains[0]?.points ?? [];
    const beside = hemming(way, middle, scene);
    const between = beside.flatMap((one, index) =>
      beside.slice(index + 1).flatMap((other) => across(one, other, line, scene.read)),
    );
    const places = [...beside.flatMap((one) => inTheWay(one, middle, scene.read)), ...between];
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};

/** Kinds that nothing goes through: one of these across the middle line leaves no way at all. */
const massive: ReadonlySet<string> = new Set(["building", "tank", "heap", "tree", "obstacle"]);

/** Where a thing stands on the middle line itself: nothing is left, by as much as it reaches over the line. */
function inTheWay({ feature, figure }: Beside, middle: LiveFigure, read: Read): readonly CandidatePlace[] {
  if (!massive.has(feature.kind)) return [];
  return nearPlaces(figure, middle, 0, read)
    .filter((near) => near.distance(read) < 0)
    .map((near) => ({
      key: `${feature.name}|middle|${near.key}`,
      value: near.distance,
      where: `${featureWords(feature)} stands in the way`,
      witness: (now) => [{ part: "found", form: "line", points: near.ends(now), label: "in the way" }],
    }));
}

interface Beside {
  readonly feature: Feature;
  readonly figure: LiveFigure;
}

function hemming(way: Feature, middle: LiveFigure, scene: Scene): readonly Beside[] {
  const wayBox = figureBox(figureAt(middle, scene.read));
  if (!wayBox) return [];
  return featuresNear(scene, hemmingKinds, wayBox, open).flatMap((feature) => {
    const figure = feature === way ? null : groundFigure(feature);
    return figure ? [{ feature, figure }] : [];
  });
}

/** Places of two things whose shortest connection crosses the middle line of the way. */
function across(one: Beside, other: Beside, line: readonly Point[], read: Read): readonly CandidatePlace[] {
  return nearPlaces(one.figure, other.figure, open, read)
    .filter((near) => crossesMiddle(near, line, read))
    .map((near) => ({
      key: `${one.feature.name}|${other.feature.name}|${near.key}`,
      value: near.distance,
      where: `between ${featureWords(one.feature)} and ${featureWords(other.feature)}`,
      witness: (now) => [{ part: "found", form: "line", points: near.ends(now), label: "narrowest" }],
    }));
}

function crossesMiddle(near: NearPlace, line: readonly Point[], read: Read): boolean {
  const [first, second] = near.ends(read).map((end) => runAndLeft(line, end));
  if (!first || !second || first.left * second.left >= 0) return false;
  const end = lineLength(line);
  return Math.max(first.run, second.run) >= 0 && Math.min(first.run, second.run) <= end;
}
