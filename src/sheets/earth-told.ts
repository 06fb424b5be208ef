// Cut and fill of what is to be built, in the states in which the earth is dug, heaped and rolled.

import { type Feature, featureWords, type Plan } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Sheet, SheetEntry, SheetPart } from "../model/sheet.ts";
import { type Earthworks, earthworksOf } from "../site/earthworks.ts";
import type { CutAndFill } from "../terrain/cut-and-fill.ts";
import { type EarthFactors, over, type Sized, times } from "../site/earth-states.ts";
import { surveyDoubt } from "./survey-doubt.ts";
import { nineteenInTwenty } from "./two-ties.ts";

type Row = Sheet["table"]["rows"][number];

/** A part of an area, or a millimetre over it, that is not told (method). */
const nothing = 0.001;

/** Volumes of one surface as it lies in the ground, with the doubt of the survey and of the ground between levels. */
interface Moved {
  readonly cut: Sized;
  readonly fill: Sized;
  /** Cut less what must be dug for the fill, with the doubt that both have in common counted once; null without factors. */
  readonly left: Sized | null;
}

/** Entries and rows for everything that is to be built over levelled ground. */
export function earthTold(
  plan: Plan,
  standing: readonly Feature[],
  factors: EarthFactors | null,
): { readonly parts: readonly SheetPart[]; readonly rows: readonly Row[] } {
  const read: Read = ({ id }) => plan.numbers.values[id] as number;
  const told = standing.flatMap((feature) => {
    const works = earthworksOf(feature, plan.levels, read);
    const now = works?.volumes(read);
    if (!works || !now) return [];
    const surveyed = (of: (volumes: CutAndFill) => number): number =>
      surveyDoubt((moved) => {
        const volumes = works.volumes(moved);
        return volumes === null ? Number.NaN : of(volumes);
      }, plan.numbers);
    const sized = (of: (volumes: CutAndFill) => number): Sized => ({
      value: of(now),
      u: Math.hypot(surveyed(of), works.roughU),
    });
    const moved: Moved = {
      cut: sized(({ cut }) => cut),
      fill: sized(({ fill }) => fill),
      left:
        factors &&
        leftOver(
          sized(({ cut, fill }) => cut - fill / factors.rolled.value),
          now.fill,
          factors,
        ),
    };
    return [{ entry: entryOf(feature, works, moved, factors), rows: rowsOf(featureWords(feature), moved, factors) }];
  });
  const part = { heading: "CUT AND FILL, down to the formation", entries: told.map(({ entry }) => entry) };
  return { parts: told.length === 0 ? [] : [part], rows: told.flatMap(({ rows }) => rows) };
}

/** What is over (below 0: lacks) as it lies in the ground, cut - fill / c, with the doubt of c. */
function leftOver(surveyed: Sized, fill: number, { rolled }: EarthFactors): Sized {
  return { value: surveyed.value, u: Math.hypot(surveyed.u, (fill * rolled.u) / rolled.value ** 2) };
}

const said = ({ value, u }: Sized): string => `${value.toFixed(1)} ± ${(nineteenInTwenty * u).toFixed(1)} m3`;

function entryOf(
  feature: Feature,
  { area, notKnown }: Earthworks,
  moved: Moved,
  factors: EarthFactors | null,
): SheetEntry {
  const isSome = ({ value }: Sized): boolean => value >= nothing * area;
  const parts = (["cut", "fill"] as const).map((pick) =>
    isSome(moved[pick]) ? `${pick} ${said(moved[pick])}` : `no ${pick}`,
  );
  const words = `${featureWords(feature)}: ${parts.join(", ")}`;
  const unknown = `${notKnown.toFixed(1)} m2 of it lie off the levels and are not counted`;
  return {
    words: words.replace(/^./, (first) => first.toUpperCase()),
    notes: [...(factors ? stateNotes(moved, factors, isSome) : []), ...(notKnown > nothing * area ? [unknown] : [])],
  };
}

function stateNotes(
  { cut, fill, left }: Moved,
  factors: EarthFactors,
  isSome: (one: Sized) => boolean,
): readonly string[] {
  const as = `as ${factors.words}`;
  return [
    ...(isSome(cut) ? [`the cut takes up ${said(times(cut, factors.loose))} loose in the heap (${as})`] : []),
    ...(isSome(fill) ? [`the fill wants ${said(over(fill, factors.rolled))} as it lies in the ground (${as})`] : []),
    ...(isSome(cut) && isSome(fill) && left ? [leftNote(left)] : []),
  ];
}

function leftNote(left: Sized): string {
  const half = nineteenInTwenty * left.u;
  if (Math.abs(left.value) < half)
    return `rolled into the fill the cut comes out even, within ± ${half.toFixed(1)} m3 as it lies in the ground`;
  const size = said({ ...left, value: Math.abs(left.value) });
  return left.value > 0
    ? `after the fill is rolled ${size} are over, as it lies in the ground`
    : `${size} lack for the fill, as it lies in the ground`;
}

function rowsOf(name: string, moved: Moved, factors: EarthFactors | null): readonly Row[] {
  const row = (sort: string, cut: Sized | null, fill: Sized | null): Row => {
    const good = nineteenInTwenty * Math.max(cut?.u ?? 0, fill?.u ?? 0);
    return [sort, name, "", "", "", "", "", "", "", fixed(cut), fixed(fill), Number(good.toFixed(2))];
  };
  const plain = row("earth", moved.cut, moved.fill);
  if (factors === null) return [plain];
  return [
    plain,
    row("earth loose", times(moved.cut, factors.loose), null),
    row("earth to dig for the fill", null, over(moved.fill, factors.rolled)),
  ];
}

const fixed = (one: Sized | null): number | string => (one ? Number(one.value.toFixed(2)) : "");
