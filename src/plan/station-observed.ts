// What was observed to place stations: tapes, offsets, bearings, coordinates, each with its number and its doubt.

import type { Observation } from "../adjustment/observation.ts";
import type { Place } from "../model/path.ts";
import type { Measuring } from "./measuring.ts";
import { child, items, type Node } from "./node.ts";
import { pathText } from "../model/path.ts";
import { readNumber, type Written } from "./numbers.ts";
import type { BookWriter } from "./number-book.ts";
import type { Customs } from "./practice.ts";
import { exact, scaled, sum, type Uncertain } from "./sway.ts";
import type { Troubles } from "./troubles.ts";

/** One thing measured, with its number and words for it. `observation.u` is its weight, without what it shares. */
export interface Observed {
  readonly observation: Observation;
  readonly number: Uncertain;
  readonly words: string;
  readonly place: Place;
  /** True where the plan says how the tape lay, so that it was brought level. */
  readonly reduced?: boolean;
}

/** What the readers of stations need. */
export interface StationWork {
  readonly measuring: Measuring;
  readonly customs: Customs;
  readonly book: BookWriter;
  readonly troubles: Troubles;
  /** Radius of the trunk or post that a station stands in the middle of; null where it is not known. */
  readonly roundRadius: (station: string) => Uncertain | null;
}

const idOf = (place: Place, part = ""): string => `${pathText(place.path)} ${part}`;

/** One length or a list of them, brought level by the `slope` or `rise` of their holder, with its own `plus_minus`. */
export function lengthsOf(node: Node | null, holder: Node, troubles: Troubles): readonly Written[] {
  if (node === null) return [];
  const nodes = Array.isArray(node.data) ? items(node) : [node];
  const own = readNumber(child(holder, "plus_minus"), "length", troubles);
  const rise = readNumber(child(holder, "rise"), "length", troubles);
  const slope = readNumber(child(holder, "slope"), "slope", troubles);
  return nodes.flatMap((one) => {
    const written = readNumber(one, "length", troubles);
    if (written === null) return [];
    const level = broughtLevel(written.value, rise?.value ?? 0, slope?.value ?? 0);
    const reduced = rise !== null || slope !== null;
    return [{ ...written, value: level, plusMinus: written.plusMinus ?? own?.value ?? null, reduced }];
  });
}

/** Length on plan of a tape laid up a slope: sqrt(L^2 - h^2), or L cos(atan s). Plane geometry. */
function broughtLevel(length: number, rise: number, slope: number): number {
  const byRise =
    Math.abs(rise) < Math.abs(length) ? Math.sign(length) * Math.sqrt(length * length - rise * rise) : length;
  return byRise / Math.hypot(1, slope);
}

/** The station that stands for the reel's own error in the network; no peg can have this name. */
export const reelStation = "reel.";

const sharedBy = (by: number) => (by === 0 ? {} : { shared: { of: reelStation, by } });

/** A tape between two stations. `more` is added to it: the radius of a trunk taped to its near face. */
export function tapeObserved(
  work: StationWork,
  written: Written,
  between: readonly [string, string],
  more: Uncertain | null = null,
): Observed {
  const [from, to] = between;
  const words = `tape ${from} to ${to}`;
  const taped = work.measuring.taped(written, words);
  const number = more === null ? taped : sum(taped, more);
  const { place } = written.node;
  const u = work.measuring.ownU(written, "tape");
  const shared = sharedBy(work.measuring.reelShare(written));
  const observation = { id: idOf(place), kind: "distance", from, to, value: number.value, u, ...shared } as const;
  return { observation, number, words, place, reduced: written.reduced ?? false };
}

/** The run or the offset of a station along a line; an offset to the right counts below 0. */
export function offsetObserved(
  work: StationWork,
  written: Written,
  to: {
    readonly kind: "run" | "offset";
    readonly of: string;
    readonly line: readonly [string, string];
    readonly sign?: number;
  },
): Observed {
  const words = `the ${to.kind} of peg ${to.of}`;
  const number = scaled(work.measuring.taped(written, words), to.sign ?? 1);
  const { place } = written.node;
  const u = work.measuring.ownU(written, "tape");
  const [from, end] = to.line;
  return {
    observation: {
      id: idOf(place),
      kind: to.kind,
      of: to.of,
      from,
      to: end,
      value: number.value,
      u,
      ...sharedBy((to.sign ?? 1) * work.measuring.reelShare(written)),
    },
    number,
    words,
    place,
  };
}

/** The right angle set out at a peg: the station's run from there is 0, give or take the angle times the length. */
export function squareObserved(
  work: StationWork,
  written: Written,
  to: { readonly of: string; readonly line: readonly [string, string]; readonly run: Uncertain },
): Observed {
  const words = `the right angle of peg ${to.of}`;
  const { place } = written.node;
  const angle = work.customs.u("squareOff");
  const cause = work.book.doubted(0, { sort: "survey", words, place, part: "square", u: angle, dimension: "angle" });
  const number = sum(to.run, scaled(cause, Math.abs(written.value)));
  const [from, end] = to.line;
  const u = angle * Math.abs(written.value);
  return {
    observation: { id: idOf(place, "square"), kind: "run", of: to.of, from, to: end, value: number.value, u },
    number,
    words,
    place,
  };
}

/** A bearing between two stations, already turned to the plan's north. */
export function bearingObserved(work: StationWork, written: Written, between: readonly [string, string]): Observed {
  const [from, to] = between;
  const words = `bearing ${from} to ${to}`;
  const number = work.measuring.observed(written, words, { name: "compass", dimension: "angle" });
  const { place } = written.node;
  const u = work.measuring.ownU(written, "compass");
  return { observation: { id: idOf(place), kind: "bearing", from, to, value: number.value, u }, number, words, place };
}

/** The direction of the plan's first line: east, exactly. */
export function firstLineObserved(place: Place, [from, to]: readonly [string, string]): Observed {
  const value = Math.PI / 2;
  const words = "the direction of the first line";
  return {
    observation: { id: idOf(place, "east"), kind: "bearing", from, to, value, u: 0 },
    number: exact(value),
    words,
    place,
  };
}

/** One coordinate of a station; exact where the plan's grid hangs on it. */
export function coordinateObserved(
  work: StationWork,
  written: Written,
  of: { readonly station: string; readonly axis: "east" | "north"; readonly exactly: boolean },
): Observed {
  const words = `the position of peg ${of.station}`;
  const { place } = written.node;
  const number = of.exactly ? exact(written.value) : work.measuring.coordinate(written, words, of.axis);
  const u = of.exactly ? 0 : work.measuring.ownU(written, "coordinates");
  return {
    observation: { id: idOf(place), kind: of.axis, of: of.station, value: written.value, u },
    number,
    words,
    place,
  };
}
