// The doubt that a careful person with a tape, a level and a spade leaves behind, where the plan does not say.
// Every row is common practice of the trade, not a published figure (PRACTICE), and is named in the report when used.

/** Half-width at 95 % in metres (or radians, or rise over run), growing with length where `perMetre` is given. */
export interface PracticeRow {
  readonly plusMinus: number;
  readonly perMetre?: number;
  /** In plain words for the foot of the report. */
  readonly words: string;
}

const deg = Math.PI / 180;

export const practice = {
  // u 5 mm + 0.2 mm/m, one person on grass (PRACTICE); so 95 % is twice that.
  tape: { plusMinus: 0.01, perMetre: 0.0004, words: "tapes are read and handled to ± 10 mm and 0.4 mm a metre" },
  // A measuring wheel on grass runs 0.5 to 1 % off (PRACTICE); the larger is taken as one standard uncertainty.
  wheel: { plusMinus: 0.01, perMetre: 0.02, words: "a measuring wheel is known to ± 2 %" },
  coordinates: { plusMinus: 0.05, words: "points written as east and north are known to ± 50 mm" },
  // A 6-8-10 triangle with 10 mm error in the 10 m side turns by 0.12 deg (COMPUTED); taken as one standard uncertainty.
  squareOff: { plusMinus: 0.24 * deg, words: "right angles are set out to ± 0.24 deg" },
  compass: { plusMinus: 2 * deg, words: "bearings are read to ± 2 deg" },
  // A staff read to the millimetre over 20 to 40 m, 1 to 2 mm each (MEMORY); the larger but one is taken.
  staff: { plusMinus: 0.003, words: "a staff is read to ± 3 mm in a two-peg test" },
  levelling: { plusMinus: 0.01, words: "levels are known to ± 10 mm" },
  crown: { plusMinus: 0.5, words: "crowns of trees are known to ± 0.5 m" },
  girth: { plusMinus: 0.01, words: "girths and stems are taped to ± 10 mm" },
  treeHeight: { plusMinus: 1, words: "heights of trees are known to ± 1 m" },
  wireHeight: { plusMinus: 0.5, words: "heights of wires are known to ± 0.5 m" },
  slope: { plusMinus: 0.002, words: "falls of what exists are read to ± 2 mm a metre" },
  buildPosition: { plusMinus: 0.05, words: "what is still to be built comes within ± 50 mm of its place" },
  buildHeight: { plusMinus: 0.02, words: "what is still to be built comes within ± 20 mm of its height and depth" },
  buildLevel: { plusMinus: 0.01, words: "what is still to be built comes within ± 10 mm of its level" },
  buildFall: { plusMinus: 0, words: "falls to be built are taken as written" },
  buildLayer: { plusMinus: 0, words: "layers to be built are taken as thick as written" },
} as const satisfies Readonly<Record<string, PracticeRow>>;

/** How far below the invert a trench is dug for the bed of the pipe, metres (PRACTICE: 100 mm of stone). */
export const beddingDepth = 0.1;

export type PracticeName = keyof typeof practice;

/** What is assumed and why, for the report, in the order of the table above. */
export interface Customs {
  /** Standard uncertainty of a row for a length (m) of that size; notes the row as used unless the plan gave it. */
  readonly u: (name: PracticeName, size?: number) => number;
  /** The same without noting it: for what is worked out beside the report. */
  readonly quietU: (name: PracticeName, size?: number) => number;
  readonly assume: (words: string) => void;
  readonly assumed: () => readonly string[];
}

/** The table with the plan's own figures (half-widths at 95 %) in place of ours, and one row in place of another. */
export function openCustoms(
  own: Readonly<Partial<Record<PracticeName, number>>>,
  instead: Readonly<Partial<Record<PracticeName, PracticeName>>> = {},
): Customs {
  const used = new Set<PracticeName>();
  const further = new Set<string>();
  const quietU = (asked: PracticeName, size = 0): number => {
    const given = own[asked];
    if (given !== undefined) return given / 2;
    const row: PracticeRow = practice[instead[asked] ?? asked];
    return (row.plusMinus + (row.perMetre ?? 0) * Math.abs(size)) / 2;
  };
  const u = (asked: PracticeName, size = 0): number => {
    const name = instead[asked] ?? asked;
    if (own[asked] === undefined && practice[name].plusMinus > 0) used.add(name);
    return quietU(asked, size);
  };
  const assumed = (): readonly string[] => [
    ...(Object.keys(practice) as PracticeName[])
      .filter((name) => used.has(name))
      .map((name) => `${practice[name].words} (common practice)`),
    ...further,
  ];
  return { u, quietU, assume: (words) => void further.add(words), assumed };
}
