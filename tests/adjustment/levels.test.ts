import { describe, expect, it } from "vitest";
import { adjustBook, lineOfSight, readingId } from "../../src/adjustment/book-adjustment.ts";
import { adjustHeights, adjustLevels } from "../../src/adjustment/heights.ts";
import type { AdjustedHeights } from "../../src/adjustment/heights.ts";
import { bookFaults, reduceByCollimation, reduceByRiseAndFall } from "../../src/adjustment/level-book.ts";
import type { BookRow } from "../../src/adjustment/level-book.ts";
import { arithmeticAsBooked, arithmeticOf, bookingSlips, closeBook } from "../../src/adjustment/level-check.ts";
import type { Refused } from "../../src/adjustment/network.ts";
import { twoPegTest } from "../../src/adjustment/two-peg-test.ts";

/** Half of the last place of a staff reading, metres. */
const rounding = 0.0005;

/** A closed run with intermediate sights; field data invented, reduction COMPUTED by hand and by program. */
const closedRun: BookRow[] = [
  { point: "TBM", backsight: 1.245 },
  { point: "A", intermediate: 1.87 },
  { point: "B", intermediate: 2.405 },
  { point: "CP1", foresight: 2.91, backsight: 0.655 },
  { point: "C", intermediate: 1.335 },
  { point: "CP2", foresight: 1.96, backsight: 2.78 },
  { point: "D", intermediate: 1.115 },
  { point: "CP3", foresight: 0.94, backsight: 1.905 },
  { point: "TBM", foresight: 0.778 },
];
const closedLevels = [50, 49.375, 48.84, 48.335, 47.655, 47.03, 48.695, 48.87, 49.997];

/** A published run by height of collimation: thesurveyschool.com, levelling page, READ. */
const publishedRun: BookRow[] = [
  { point: "BM-A", backsight: 4.32 },
  { point: "TP1", foresight: 6.42, backsight: 5.18 },
  { point: "TP2", foresight: 4.85, backsight: 3.07 },
  { point: "TP3", foresight: 5.16, backsight: 2.94 },
  { point: "BM-B", foresight: 3.21 },
];

/** A published run whose last leg is booked as a fall: civinnovate.com, levelling explanation, READ (faulty). */
const faultyRun: BookRow[] = [
  { point: "1", backsight: 1.855, booked: { level: 100 } },
  { point: "2", intermediate: 2.41, booked: { fall: 0.555, level: 99.445 } },
  { point: "3", intermediate: 1.28, booked: { rise: 1.13, level: 100.575 } },
  { point: "4", foresight: 0.995, backsight: 2.165, booked: { rise: 0.285, level: 100.86 } },
  { point: "5", foresight: 1.72, booked: { fall: 0.445, level: 100.415 } },
];

function near(found: number, wanted: number, tolerance: number): void {
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(tolerance);
}

function solved(result: AdjustedHeights | Refused): AdjustedHeights {
  if (result.refused !== undefined) throw new Error(JSON.stringify(result));
  return result;
}

describe("a level book", () => {
  it.each([
    ["rise and fall", reduceByRiseAndFall],
    ["height of collimation", reduceByCollimation],
  ])("of a closed run is reduced by %s", (_, reduce) => {
    const book = reduce(closedRun, 50)!;
    book.rows.forEach(({ level }, k) => near(level, closedLevels[k]!, 1e-9));
    near(book.backsights, 6.585, 1e-9);
    near(book.foresights, 6.588, 1e-9);
    near(book.rises, 2.967, 1e-9);
    near(book.falls, 2.97, 1e-9);
    const { sights, rises, levels } = arithmeticOf(book);
    for (const difference of [sights, rises, levels]) near(difference, -0.003, 1e-9);
    expect(book.setUps).toBe(4);
  });

  it("of a published run agrees with the page", () => {
    const book = reduceByCollimation(publishedRun, 100)!;
    [100, 97.9, 98.23, 96.14, 95.87].forEach((level, k) => near(book.rows[k]!.level, level, 1e-9));
    [104.32, 104.32, 103.08, 101.3, 99.08].forEach((line, k) => near(book.rows[k]!.collimation, line, 1e-9));
    near(book.backsights, 15.51, 1e-9);
    near(book.foresights, 19.64, 1e-9);
    for (const difference of Object.values(arithmeticOf(book))) near(difference, -4.13, 1e-9);
    expect(reduceByRiseAndFall(publishedRun, 100)!.rows.map(({ setUp }) => setUp)).toEqual([1, 1, 2, 3, 4]);
  });

  it("with a leg booked the wrong way round is caught, and the slip is named", () => {
    const slips = bookingSlips(faultyRun, 100, rounding);
    expect(slips).toHaveLength(1);
    expect(slips[0]).toMatchObject({ row: 4, point: "5", figure: "fall", booked: 0.445 });
    near(slips[0]!.worked, -0.445, 1e-9);
    const booked = arithmeticAsBooked(faultyRun, 100)!;
    near(booked.sights, 1.305, 1e-9);
    near(booked.rises, 0.415, 1e-9);
    near(booked.levels, 0.415, 1e-9);
    near(reduceByRiseAndFall(faultyRun, 100)!.rows.at(-1)!.level, 101.305, 1e-9);
  });

  it("booked rightly has no slips, and a level that was mis-added is named once", () => {
    const right = closedRun.map((row, k) => ({ ...row, booked: { level: closedLevels[k]! } }));
    expect(bookingSlips(right, 50, rounding)).toEqual([]);
    const wrong = right.with(3, { ...right[3]!, booked: { level: 48.353 } });
    expect(bookingSlips(wrong, 50, rounding).map(({ row, figure }) => `${row} ${figure}`)).toEqual([
      "3 level",
      "4 level",
    ]);
    const carried = closedRun.map((row, k) => ({ ...row, booked: { level: closedLevels[k]! + (k >= 3 ? 0.018 : 0) } }));
    expect(bookingSlips(carried, 50, rounding).map(({ row }) => row)).toEqual([3]);
  });

  it("is refused where a row cannot stand", () => {
    const faults = (rows: BookRow[]) => bookFaults(rows).map(({ row, fault }) => `${row} ${fault}`);
    expect(faults(closedRun)).toEqual([]);
    expect(
      faults([
        { point: "a", foresight: 1 },
        { point: "b", foresight: 1 },
      ]),
    ).toEqual(["0 starts-without-backsight"]);
    expect(
      faults([
        { point: "a", backsight: 1 },
        { point: "b", intermediate: 1 },
      ]),
    ).toEqual(["1 ends-without-foresight"]);
    const middle = (row: BookRow) => faults([{ point: "a", backsight: 1 }, row, { point: "c", foresight: 1 }]);
    expect(middle({ point: "b" })).toEqual(["1 no-reading"]);
    expect(middle({ point: "b", backsight: 1 })).toEqual(["1 backsight-alone"]);
    expect(middle({ point: "b", foresight: 1 })).toEqual(["1 foresight-alone"]);
    expect(middle({ point: "b", intermediate: 1, foresight: 1 })).toEqual(["1 intermediate-beside-another"]);
    expect(middle({ point: "b", intermediate: Number.NaN })).toEqual(["1 not-a-number"]);
    expect(reduceByRiseAndFall([{ point: "a", backsight: 1 }], 0)).toBeNull();
  });
});

describe("closing", () => {
  it("shares 3 mm out over four set-ups, and holds it against the allowance the caller brings", () => {
    const book = reduceByRiseAndFall(closedRun, 50)!;
    const closing = closeBook(book, 50, 0.005);
    near(closing.misclosure, -0.003, 1e-9);
    near(closing.allowed, 0.01, 1e-12);
    expect(closing.within).toBe(true);
    expect(closeBook(book, 50, 0.001).within).toBe(false);
    // 0.75 mm for each set-up, cumulatively: COMPUTED.
    const corrections = [0, 0.75, 0.75, 0.75, 1.5, 1.5, 2.25, 2.25, 3];
    closing.corrected.forEach((level, k) => near(level, closedLevels[k]! + corrections[k]! / 1000, 1e-9));
  });

  it("agrees at change points with least squares of every reading", () => {
    const known = new Map([["TBM", { level: 50, u: 0 }]]);
    const { heights, chiSquare, degreesOfFreedom } = solved(adjustBook({ rows: closedRun, known, u: 0.001 }));
    near(heights.get("CP1")!, 48.335 + 0.00075, 1e-9);
    near(heights.get("CP2")!, 47.03 + 0.0015, 1e-9);
    near(heights.get("CP3")!, 48.87 + 0.00225, 1e-9);
    // An intermediate sight hangs on the line of sight, half way through its set-up.
    near(heights.get("C")!, 47.655 + 0.001125, 1e-9);
    near(heights.get(lineOfSight(1))!, 51.245 + 0.000375, 1e-9);
    // Eight readings share 3 mm: chi-square = 8 (0.375/1)^2, one degree. COMPUTED.
    near(chiSquare, 8 * 0.375 ** 2, 1e-9);
    expect(degreesOfFreedom).toBe(1);
  });

  it("gives the share of each reading in a level", () => {
    const known = new Map([["TBM", { level: 50, u: 0 }]]);
    const result = solved(adjustBook({ rows: closedRun, known, u: 0.001 }));
    const row = result.sensitivities("A");
    const share = (id: string) => row[result.observations.findIndex((o) => o.id === id)]!;
    near(share(readingId(1, "intermediate")), -1, 1e-12);
    // Level of A = line of sight 1 - reading; of eight readings in the loop the first backsight carries 7/8.
    near(share(readingId(0, "backsight")), 7 / 8, 1e-12);
    const variance = row.reduce((sum, g, k) => sum + (g * result.observations[k]!.u) ** 2, 0);
    near(variance, result.covariance(["A"])[0]![0]!, 1e-18);
  });
});

describe("a net of levels", () => {
  const points = ["X", "Y", "A", "B", "C"];
  const fixed = new Map([
    ["X", 100],
    ["Y", 107.5],
  ]);
  const runs: [string, string, number, number][] = [
    ["X", "A", 5.1, 4],
    ["A", "Y", 2.34, 3],
    ["Y", "C", -1.25, 2],
    ["C", "X", -6.13, 3],
    ["A", "B", -0.68, 2],
    ["B", "Y", 3, 2],
    ["B", "C", 1.7, 2],
  ];
  const net = (u: (miles: number) => number) =>
    solved(
      adjustLevels({ points, fixed, differences: runs.map(([from, to, rise, m]) => ({ from, to, rise, u: u(m) })) }),
    );
  const deviation = (result: AdjustedHeights) => Math.sqrt(result.chiSquare / result.degreesOfFreedom);

  // Level net of the textbook Adjustment Computations, chapter 12, MEMORY; solution re-COMPUTED; half a last digit.
  it("without weights", () => {
    const result = net(() => 1);
    near(result.heights.get("A")!, 105.141, 5.1e-5);
    near(result.heights.get("B")!, 104.4829, 5.1e-5);
    near(result.heights.get("C")!, 106.1876, 5.1e-5);
    near(deviation(result), 0.0501, 5.1e-5);
    expect(result.degreesOfFreedom).toBe(4);
  });

  it("with weights 12 over the length in miles", () => {
    const result = net((miles) => Math.sqrt(miles / 12));
    near(result.heights.get("A")!, 105.1504, 5.1e-5);
    near(result.heights.get("B")!, 104.4892, 5.1e-5);
    near(result.heights.get("C")!, 106.1972, 5.1e-5);
    near(deviation(result), 0.1072, 5.1e-5);
    const covariance = result.covariance(["A", "B", "C"]);
    [0.0328, 0.0298, 0.029].forEach((sd, k) => near(Math.sqrt(covariance[k]![k]!) * deviation(result), sd, 5.1e-5));
  });

  it("gives dh/dl, fixed levels included", () => {
    const result = net((miles) => miles);
    for (const point of ["A", "B", "C"]) {
      const row = result.sensitivities(point);
      expect(row).toHaveLength(9);
      near(row[7]! + row[8]!, 1, 1e-12);
      const sum = runs.reduce((total, [, , rise], k) => total + row[k]! * rise, row[7]! * 100 + row[8]! * 107.5);
      near(sum, result.heights.get(point)!, 1e-10);
    }
  });

  // Level circuit of an open survey text (XV, least squares), READ: residuals and their squares; s0 COMPUTED.
  it("averages repeated runs as the published circuit does", () => {
    const q = [-0.015, 0.015, -0.035, 0.035];
    const r = [0.007, -0.033, 0.027];
    const levels = [...q.map((v) => ({ of: "Q", v })), ...r.map((v) => ({ of: "R", v }))];
    const observations = levels.map(({ of, v }, k) => ({
      kind: "level" as const,
      id: `${k}`,
      of,
      value: 900 - v,
      u: 1,
    }));
    const result = solved(adjustHeights({ points: ["Q", "R"], observations }));
    near(result.chiSquare, 0.0029 + 0.001867, 1e-6);
    expect(result.degreesOfFreedom).toBe(5);
    near(deviation(result), 0.0309, 5.1e-5);
  });

  it("refuses points that hang on nothing, exact levels that disagree, and names it does not know", () => {
    const difference = { from: "A", to: "B", rise: 1, u: 0.01 };
    expect(adjustLevels({ points: ["A", "B"], differences: [difference], fixed: new Map() })).toMatchObject({
      refused: "not-connected",
      stations: ["A", "B"],
    });
    const both = new Map([
      ["A", 1],
      ["B", 3],
    ]);
    const exact = { ...difference, u: 0 };
    expect(adjustLevels({ points: ["A", "B"], differences: [exact], fixed: both })).toMatchObject({
      refused: "contradicting",
    });
    expect(adjustLevels({ points: ["A"], differences: [difference], fixed: both })).toMatchObject({
      refused: "unreadable",
      observations: ["A to B", "B"],
    });
  });
});

describe("the two-peg test", () => {
  // 1.455/1.120 midway, then 1.502/1.179 with sights that differ by 40 m: 12 mm, 0.30 mm in a metre. COMPUTED.
  it("finds the tilt of the line of sight", () => {
    const midway = { onA: 1.455, onB: 1.12 };
    const result = twoPegTest({ midway, moved: { onA: 1.502, onB: 1.179 }, sightDifference: -40 });
    near(result.trueDifference, 0.335, 1e-12);
    near(result.error, -0.012, 1e-12);
    near(result.perMetre!, 0.0003, 1e-12);
  });

  it("finds a tilt that was put in, and none with equal sights", () => {
    const tilt = -0.0002;
    const onA = (sight: number) => 1.6 + tilt * sight;
    const onB = (sight: number) => 1.3 + tilt * sight;
    const midway = { onA: onA(25), onB: onB(25) };
    const moved = { onA: onA(47), onB: onB(3) };
    near(twoPegTest({ midway, moved, sightDifference: 44 }).perMetre!, tilt, 1e-12);
    expect(twoPegTest({ midway, moved: midway, sightDifference: 0 }).perMetre).toBeNull();
  });
});
