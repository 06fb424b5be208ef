// What: how wide is the way between the things that stand on its two sides, at its narrowest?
// Formula: least distance between a thing on the left and a thing on the right whose connection crosses the way's middle line.
// Source: plane geometry.
// Valid: things that stand up from the ground and hang lower than `under`, and the gap of a wall that the way goes through; a yard as
//   broad as it is long has no clear width; overhanging branches and open gate leaves are not counted here.
// Witness: the narrowest place.

import { boxDistance } from "../geometry/box.ts";
import { figureBox } from "../geometry/figure.ts";
import { lineLength, piecesOf, pointAtRun, runAndLeft } from "../geometry/line.ts";
import { meeting } from "../geometry/segment.ts";
import { type Feature, featureWords, isQuantity, type Property, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Measure, Point, Scene } from "../model/reading.ts";
import { groundBox } from "../site/ground-box.ts";
import { figureAt, groundFigure, type LiveFigure } from "../site/live-figure.ts";
import { type Middle, middleOf } from "../site/way-middle.ts";
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
  roles: { way: "a surface or strip: its middle line, a long narrow outline, or the two things it lies between" },
  /** What hangs at this height or higher hems nothing in; at 0 everything does. */
  parameters: { under: { dimension: "length", default: 0 } },
  phrase: "{found} is clear at its narrowest",
  below: { phrase: "no way is left: what stands there overlaps by {found}", wanted: "clear" },
  shortName: "clear width",
  find: (subject, scene, { under }) => {
    const way = subject["way"];
    if (!way) return { is: "does-not-bear" };
    const named = betweenTwo(way, scene);
    const middle = named ? null : middleOf(way, scene.read);
    const places = named ?? (middle ? placesAlong(way, middle, { scene, under: Number(under) }) : []);
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};

interface Around {
  readonly scene: Scene;
  readonly under: number;
}

function placesAlong(way: Feature, { figure, line }: Middle, around: Around): readonly CandidatePlace[] {
  const { scene } = around;
  const beside = hemming(way, figure, around);
  const between = beside.flatMap((one, index) =>
    beside.slice(index + 1).flatMap((other) => across(one, other, line, scene.read)),
  );
  return [
    ...beside.flatMap((one) => inTheWay(one, figure, scene.read)),
    ...beside.flatMap((one) => gapsOnTheWay(one.feature, line, scene.read)),
    ...between,
  ];
}

/** The strip between two things that it names is as wide as they are apart, wherever they come nearest; null where it names none. */
function betweenTwo(way: Feature, scene: Scene): readonly CandidatePlace[] | null {
  const names = propertyOf(way, "between");
  if (!Array.isArray(names)) return null;
  const [one, other] = names.flatMap((name): readonly Beside[] => {
    const feature = scene.standing().find((standing) => standing.name === name && !standing.partOf);
    const figure = feature && groundFigure(feature);
    return feature && figure ? [{ feature, figure }] : [];
  });
  if (!one || !other) return [];
  return nearPlaces(one.figure, other.figure, open, scene.read).map((near) => placeBetween(one, other, near));
}

/** Gaps of one wall or fence that the middle line goes through: as wide as the wall stops short. */
function gapsOnTheWay(feature: Feature, line: readonly Point[], read: Read): readonly CandidatePlace[] {
  const gaps = propertyOf(feature, "gaps");
  const course = feature.shape?.form === "line" ? feature.shape.line : [];
  if (!Array.isArray(gaps)) return [];
  const points = (now: Read) => course.map((spot): Point => [now(spot.east), now(spot.north)]);
  return gaps.flatMap((gap: unknown, index): readonly CandidatePlace[] => {
    const { from, to } = gap as { readonly from?: Property; readonly to?: Property };
    if (!isQuantity(from) || !isQuantity(to)) return [];
    const ends = (now: Read): readonly Point[] =>
      [from, to].map((run) => pointAtRun(points(now), now(run))).filter((point) => point !== null);
    const [start, end] = ends(read);
    if (!start || !end || !piecesOf(line).some((piece) => meeting([start, end], piece) !== "apart")) return [];
    return [
      {
        key: `${feature.name}|gap ${index + 1}`,
        value: (now) => Math.abs(now(to) - now(from)),
        where: `in the gap of ${featureWords(feature)}`,
        witness: (now) => [{ part: "found", form: "line", points: ends(now), label: "narrowest" }],
      },
    ];
  });
}

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

/** Whether a thing hangs so high that what comes along passes below it: other rules ask for the headroom. */
function hangsOver(thing: Feature, { scene, under }: Around): boolean {
  const underside = propertyOf(thing, "underside");
  return under > 0 && isQuantity(underside) && scene.read(underside) >= under;
}

function hemming(way: Feature, middle: LiveFigure, around: Around): readonly Beside[] {
  const { scene } = around;
  const wayBox = figureBox(figureAt(middle, scene.read));
  if (!wayBox) return [];
  return featuresNear(scene, hemmingKinds, wayBox, open).flatMap((feature) => {
    const figure = feature === way || hangsOver(feature, around) ? null : groundFigure(feature);
    return figure ? [{ feature, figure }] : [];
  });
}

/** Places of two things whose shortest connection crosses the middle line of the way. */
function across(one: Beside, other: Beside, line: readonly Point[], read: Read): readonly CandidatePlace[] {
  if (areFarApart(one, other, read)) return [];
  return nearPlaces(one.figure, other.figure, open, read)
    .filter((near) => crossesMiddle(near, line, read))
    .map((near) => placeBetween(one, other, near));
}

/** Boxes are compared first, a hair wider: most of what hems a way in stands far from most of the rest. */
const hair = 1e-6;

function areFarApart(one: Beside, other: Beside, read: Read): boolean {
  const [a, b] = [groundBox(one.feature, read), groundBox(other.feature, read)];
  return a !== null && b !== null && boxDistance(a, b) > open + one.figure.grow(read) + other.figure.grow(read) + hair;
}

function placeBetween(one: Beside, other: Beside, near: NearPlace): CandidatePlace {
  return {
    key: `${one.feature.name}|${other.feature.name}|${near.key}`,
    value: near.distance,
    where: `between ${featureWords(one.feature)} and ${featureWords(other.feature)}`,
    witness: (now) => [{ part: "found", form: "line", points: near.ends(now), label: "narrowest" }],
  };
}

function crossesMiddle(near: NearPlace, line: readonly Point[], read: Read): boolean {
  const [first, second] = near.ends(read).map((end) => runAndLeft(line, end));
  if (!first || !second || first.left * second.left >= 0) return false;
  const end = lineLength(line);
  return Math.max(first.run, second.run) >= 0 && Math.min(first.run, second.run) <= end;
}
