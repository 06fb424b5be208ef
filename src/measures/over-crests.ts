// What: how much is left under a vehicle between its axles where a way bends over a crest? How sharp is the break itself?
// Formula: ground clearance - max over axle places of (height of the break - chord from axle to axle); one break: GC - L A / 4.
// Formula of the break: A = slope before - slope behind, as rise over run.
// Source: plane geometry (COMPUTED); definition of break-over by the tangent to the tyres, 49 CFR 523.2 (READ).
// Valid: levels along the middle line, straight between them; wheels run over every break, none is rounded off.
// Witness: the stretch that lies under the vehicle.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Found, Measure, Missing } from "../model/reading.ts";
import { heightAt, type ProfilePoint, profileOf } from "../site/profile.ts";
import { groundNames, vehicleOf } from "../site/used-by.ts";

/** A crest that lifts less than this (m) under the vehicle touches none: the lowest cars have twice that (PRACTICE). */
const touchesNothing = 0.05;
/** The rear axle is put at so many places before a break. */
const axlePlaces = 48;

export const clearanceOverCrest: Measure = {
  name: "clearance-over-crest",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre", way: "a surface drawn by its middle line, with levels" },
  parameters: {},
  phrase: "{found} is left under it on the crest of {way}",
  below: { phrase: "it grounds by {found} on the crest of {way}", wanted: "clear" },
  shortName: "left under it",
  find: ({ manoeuvre, way }, scene): Found => {
    if (!manoeuvre || !way || !groundNames(manoeuvre).includes(way.name)) return { is: "does-not-bear" };
    const vehicle = vehicleOf(manoeuvre, scene);
    const profile = profileOf(way, scene.read);
    const base = vehicle ? propertyOf(vehicle, "wheelbase") : undefined;
    if (!vehicle || !isQuantity(base) || profile.length < 3) return { is: "does-not-bear" };
    const lift = (index: number) => (read: Read) => liftedBy(profile, index, read(base), read);
    const crests = inner(profile).filter((index) => lift(index)(scene.read) > touchesNothing);
    if (crests.length === 0) return { is: "does-not-bear" };
    const under = propertyOf(vehicle, "ground_clearance");
    if (!isQuantity(under)) return { is: "missing", missing: [lack(vehicle)] };
    return {
      is: "found",
      places: crests.map((index): CandidatePlace => ({
        key: (profile[index] as ProfilePoint).key,
        value: (read) => read(under) - lift(index)(read),
        witness: (read) => [{ part: "found", form: "line", points: around(profile, index, read), label: "crest" }],
      })),
    };
  },
};

const lack = (feature: Feature): Missing => ({
  feature,
  property: "ground_clearance",
  asks: `the height of the lowest point between the axles of ${featureWords(feature)} above the ground`,
  dimension: "length",
  why: "missing",
});

const inner = (profile: readonly ProfilePoint[]) => profile.map((_, i) => i).slice(1, -1);

const around = (profile: readonly ProfilePoint[], index: number, read: Read) =>
  profile.slice(index - 1, index + 2).map((point) => point.at(read));

/** How far a break rises above the chord between the two axles, at the worst place of the vehicle, m. */
function liftedBy(profile: readonly ProfilePoint[], index: number, wheelbase: number, read: Read): number {
  const plain = profile.map((point): readonly [number, number] => [point.run(read), point.height(read)]);
  const [run, height] = plain[index] as readonly [number, number];
  const lifts = Array.from({ length: axlePlaces - 1 }, (_, k) => {
    const share = (k + 1) / axlePlaces;
    const rear = heightAt(plain, run - share * wheelbase);
    const front = heightAt(plain, run + (1 - share) * wheelbase);
    return height - (rear + share * (front - rear));
  });
  return Math.max(...lifts);
}

/** Which breaks each of the measures looks at: 1 crests, -1 dips, 0 all of them. */
const breaksOf = { "change-of-grade": 0, "change-of-grade-at-crest": 1, "change-of-grade-in-sag": -1 } as const;

/** The measures `change-of-grade`, `change-of-grade-at-crest` and `change-of-grade-in-sag`. */
export const changeOfGradeMeasures: readonly Measure[] = Object.entries(breaksOf).map(([name, sign]): Measure => ({
  name,
  dimension: "slope",
  roles: { way: "a surface or ramp drawn by its middle line, with levels" },
  parameters: {},
  phrase: "its slope changes by {found} at one break",
  shortName: "change of slope",
  shownIn: "%",
  find: ({ way }, scene): Found => {
    const profile = way ? profileOf(way, scene.read) : [];
    const breaks = inner(profile)
      .map((index) => ({ index, change: (read: Read) => brokenBy(profile, index, read) }))
      .filter(({ change }) => sign === 0 || sign * change(scene.read) > 0);
    if (breaks.length === 0) return { is: "does-not-bear" };
    return {
      is: "found",
      places: breaks.map(({ index, change }): CandidatePlace => ({
        key: (profile[index] as ProfilePoint).key,
        value: (read) => (sign === 0 ? Math.abs(change(read)) : sign * change(read)),
        witness: (read) => [{ part: "found", form: "line", points: around(profile, index, read), label: "break" }],
      })),
    };
  },
}));

/** Slope before a break less the slope behind it: above 0 on a crest. */
function brokenBy(profile: readonly ProfilePoint[], index: number, read: Read): number {
  const slope = (from: ProfilePoint, to: ProfilePoint) =>
    (to.height(read) - from.height(read)) / (to.run(read) - from.run(read));
  const [before, here, after] = profile.slice(index - 1, index + 2) as [ProfilePoint, ProfilePoint, ProfilePoint];
  return slope(before, here) - slope(here, after);
}

export const clearOfSag: Measure = {
  name: "clear-of-sag",
  dimension: "slope",
  roles: { manoeuvre: "a manoeuvre", way: "a surface drawn by its middle line, with levels" },
  parameters: {},
  phrase: "its nose and tail clear a rise steeper by {found} than the one of {way}",
  below: { phrase: "the rise of {way} is {found} steeper than its nose and tail clear", wanted: "to spare" },
  shortName: "steeper than the rise",
  shownIn: "%",
  find: ({ manoeuvre, way }, scene): Found => {
    const vehicle = manoeuvre && vehicleOf(manoeuvre, scene);
    if (!vehicle || !way || !groundNames(manoeuvre).includes(way.name)) return { is: "does-not-bear" };
    const profile = profileOf(way, scene.read);
    const sags = inner(profile).filter((index) => -brokenBy(profile, index, scene.read) > 0);
    const angles = ["approach_angle", "departure_angle"].flatMap((name) => {
      const angle = propertyOf(vehicle, name);
      return isQuantity(angle) ? [{ name, angle }] : [];
    });
    if (sags.length === 0 || angles.length === 0) return { is: "does-not-bear" };
    const places = sags.flatMap((index) =>
      angles.map(({ name, angle }): CandidatePlace => ({
        key: `${(profile[index] as ProfilePoint).key} ${name}`,
        value: (read) => Math.tan(read(angle)) + brokenBy(profile, index, read),
        where: name === "approach_angle" ? "at its nose" : "at its tail",
        witness: (read) => [{ part: "found", form: "line", points: around(profile, index, read), label: "dip" }],
      })),
    );
    return { is: "found", places };
  },
};
