import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { polygonOf } from "../../src/geometry/polygon.ts";
import { cutAndFill, cutAndFillWithin, triangleCutAndFill } from "../../src/terrain/cut-and-fill.ts";
import { groundAt, levelPlane, planeOf, slopeOf } from "../../src/terrain/surface.ts";
import { prismoidVolume } from "../../src/terrain/volumes.ts";
import { gridSurface, seeded, surfaceOver } from "./ground.ts";

describe("cut and fill over a triangle", () => {
  it("50 m2 with 0.6, -0.3 and 0.3 m: cut 10.8333, fill 0.8333, net 10.000 m3 (COMPUTED, pyramid at the odd corner)", () => {
    const { cut, fill } = triangleCutAndFill(50, [0.6, -0.3, 0.3]);
    expect(Math.abs(cut - 10.8333)).toBeLessThan(1e-4);
    expect(Math.abs(fill - 0.8333)).toBeLessThan(1e-4);
    expect(cut - fill).toBeCloseTo(10, 12);
  });

  it.each([
    ["all above", [1, 2, 3], 100, 0],
    ["all below", [-1, -2, -3], 0, 100],
    ["all at 0", [0, 0, 0], 0, 0],
    ["one above, others at 0", [3, 0, 0], 50, 0],
    ["one at 0", [0, 3, -3], 25, 25],
    ["two below", [2, -2, -2], 50 * 2 * (8 / (3 * 2 * 16)), 50 * 2 * (8 / (3 * 2 * 16)) + 100 / 3],
  ] as const)("%s (by hand, COMPUTED)", (_, heights, cut, fill) => {
    const found = triangleCutAndFill(50, heights);
    expect(found.cut).toBeCloseTo(cut, 9);
    expect(found.fill).toBeCloseTo(fill, 9);
  });

  it("does not depend on the order of the corners; turning ground over swaps cut and fill", () => {
    const height = fc.integer({ min: -100, max: 100 }).map((cm) => cm / 100);
    fc.assert(
      fc.property(height, height, height, (a, b, c) => {
        const here = triangleCutAndFill(12, [a, b, c]);
        const round = triangleCutAndFill(12, [c, a, b]);
        const over = triangleCutAndFill(12, [-a, -b, -c]);
        expect(round.cut).toBeCloseTo(here.cut, 9);
        expect(over.fill).toBeCloseTo(here.cut, 9);
        expect(here.cut).toBeGreaterThanOrEqual(0);
        expect(here.fill).toBeGreaterThanOrEqual(-1e-12);
      }),
      seeded,
    );
  });
});

describe("cut and fill over a net", () => {
  it("depends on the diagonal: corners 0, 0, 0, 2 over 10 x 10 m hold 33.3 or 66.7 m3 (COMPUTED)", () => {
    const spots = [
      [0, 0, 0],
      [10, 0, 0],
      [10, 10, 2],
      [0, 10, 0],
    ] as const;
    expect(cutAndFill(surfaceOver(spots, [[1, 3]]), levelPlane(0)).cut).toBeCloseTo(100 / 3, 9);
    expect(cutAndFill(surfaceOver(spots, [[0, 2]]), levelPlane(0)).cut).toBeCloseTo(200 / 3, 9);
  });

  // A frustum of a pyramid, 10 m square below, 6 m square above, 12 m high: h (A1 + A2 + sqrt(A1 A2)) / 3 = 784 (exact).
  const frustum = surfaceOver(
    [
      [0, 0, 0],
      [10, 0, 0],
      [10, 10, 0],
      [0, 10, 0],
      [2, 2, 12],
      [8, 2, 12],
      [8, 8, 12],
      [2, 8, 12],
    ],
    [
      [4, 5, 6, 7, 4],
      [0, 4],
      [1, 5],
      [2, 6],
      [3, 7],
    ],
  );

  it("finds the frustum of 784 m3, and 400 m3 for the pyramid of 10 m", () => {
    expect(cutAndFill(frustum, levelPlane(0)).cut).toBeCloseTo(784, 9);
    const pyramid = surfaceOver([
      [0, 0, 0],
      [10, 0, 0],
      [10, 10, 0],
      [0, 10, 0],
      [5, 5, 12],
    ]);
    expect(cutAndFill(pyramid, levelPlane(0))).toMatchObject({ cut: 400, fill: 0 });
  });

  it("cuts the frustum half way: above 6 m it is one of 8 m and 6 m squares", () => {
    const found = cutAndFill(frustum, levelPlane(6));
    expect(found.cut).toBeCloseTo((6 * (64 + 36 + 48)) / 3, 9);
    expect(found.cutArea).toBeCloseTo(64, 9);
    expect(found.fillArea).toBeCloseTo(36, 9);
    expect(found.cut - found.fill).toBeCloseTo(784 - 600, 9);
  });

  it("works against a sloping plane", () => {
    const formation = { origin: [0, 0], atOrigin: 1, east: 0.05, north: -0.02 } as const;
    const ground = gridSurface(4, (x, y) => 1.5 + 0.05 * x - 0.02 * y);
    expect(cutAndFill(ground, formation).cut).toBeCloseTo(225 * 0.5, 9);
    expect(cutAndFill(ground, { ...formation, atOrigin: 2 }).fill).toBeCloseTo(225 * 0.5, 9);
  });
});

describe("cut and fill within an outline", () => {
  const ground = gridSurface(4, (x) => 0.1 * x - 0.5);

  it("is that of the whole where the outline holds the net, and tells what is not known", () => {
    const whole = cutAndFill(ground, levelPlane(0));
    const within = cutAndFillWithin(
      ground,
      levelPlane(0),
      polygonOf([
        [-5, -5],
        [20, -5],
        [20, 20],
        [-5, 20],
      ]),
    );
    expect(within?.cut).toBeCloseTo(whole.cut, 5);
    expect(within?.fill).toBeCloseTo(whole.fill, 5);
    expect(within?.cutArea).toBeCloseTo(whole.cutArea, 5);
    expect(within?.fillArea).toBeCloseTo(whole.fillArea, 5);
    expect(within?.notKnown).toBeCloseTo(625 - 225, 5);
  });

  it("counts a pad of 4 x 6 m across the line of no cut: two wedges (by hand)", () => {
    const pad = cutAndFillWithin(
      ground,
      levelPlane(0),
      polygonOf([
        [3, 3],
        [7, 3],
        [7, 9],
        [3, 9],
      ]),
    );
    expect(pad?.cut).toBeCloseTo(0.5 * 2 * 0.2 * 6, 5);
    expect(pad?.fill).toBeCloseTo(0.5 * 2 * 0.2 * 6, 5);
    expect(pad?.notKnown).toBeCloseTo(0, 5);
  });

  it("leaves holes out, and is nothing off the net", () => {
    const frame = polygonOf(
      [
        [6, 6],
        [12, 6],
        [12, 12],
        [6, 12],
      ],
      [
        [
          [8, 8],
          [10, 8],
          [10, 10],
          [8, 10],
        ],
      ],
    );
    expect(cutAndFillWithin(ground, levelPlane(-0.5), frame)?.cut).toBeCloseTo(0.1 * 9 * 32, 5);
    expect(
      cutAndFillWithin(
        ground,
        levelPlane(0),
        polygonOf([
          [40, 40],
          [41, 40],
          [40, 41],
        ]),
      ),
    ).toMatchObject({ cut: 0, notKnown: 0.5 });
    expect(cutAndFillWithin(ground, levelPlane(0), polygonOf([]))).toMatchObject({ cut: 0, fill: 0, notKnown: 0 });
    expect(
      cutAndFillWithin(
        ground,
        levelPlane(0),
        polygonOf([
          [0, 0],
          [5, 0],
          [1e9, 9],
        ]),
      ),
    ).toBeNull();
  });

  it("agrees with a fine grid of columns on rough ground", () => {
    const rough = gridSurface(5, (x, y) => Math.sin(x) + Math.cos(2 * y));
    const found = cutAndFillWithin(
      rough,
      levelPlane(0.2),
      polygonOf([
        [2, 3],
        [17, 3],
        [17, 15],
        [2, 15],
      ]),
    );
    let [cut, fill] = [0, 0];
    for (let x = 2.05; x < 17; x += 0.1) {
      for (let y = 3.05; y < 15; y += 0.1) {
        const height = (groundAt(rough, [x, y])?.level ?? Number.NaN) - 0.2;
        if (height > 0) cut += height * 0.01;
        else fill -= height * 0.01;
      }
    }
    // Columns of 10 cm miss the line of no cut by a little of each column that it crosses.
    expect(Math.abs((found?.cut ?? 0) - cut)).toBeLessThan(0.05);
    expect(Math.abs((found?.fill ?? 0) - fill)).toBeLessThan(0.05);
    expect(cut).toBeGreaterThan(10);
  });
});

describe("a cone and a prismoid over a net", () => {
  it("holds the pyramid over its polygon: n/6 r^2 sin(2 pi/n) h, which goes to the cone pi r^2 h / 3", () => {
    for (const sides of [6, 24, 96]) {
      const rim = Array.from({ length: sides }, (_, k): readonly [number, number, number] => {
        const turn = (2 * Math.PI * k) / sides;
        return [5 * Math.cos(turn), 5 * Math.sin(turn), 0];
      });
      const { cut } = cutAndFill(surfaceOver([...rim, [0, 0, 3]]), levelPlane(0));
      expect(cut).toBeCloseTo((sides / 6) * 25 * Math.sin((2 * Math.PI) / sides) * 3, 8);
      // The polygon is short of the circle by (2 pi / n)^2 / 6.
      expect(1 - cut / (25 * Math.PI)).toBeLessThan(((2 * Math.PI) / sides) ** 2 / 6);
    }
  });
  it("has the slope of the cone's face at the middle of each side: h / (r cos(pi/n))", () => {
    const rim = Array.from({ length: 24 }, (_, k): readonly [number, number, number] => [
      5 * Math.cos((Math.PI * k) / 12),
      5 * Math.sin((Math.PI * k) / 12),
      0,
    ]);
    const cone = surfaceOver([...rim, [0, 0, 3]]);
    for (let t = 0; t < cone.net.corners.length / 3; t += 1)
      expect(slopeOf(planeOf(cone, t) as never)).toBeCloseTo(3 / (5 * Math.cos(Math.PI / 24)), 9);
  });
  // A wedge-topped heap: 12 by 8 m at the foot, a ridge of 4 m at 3 m: (h/6)(b)(2a + c) = 3/6 x 8 x (24 + 4) = 112 m3, and
  // by the prismoidal formula 3/6 x (96 + 4 x 8 x 4 + 0) = 112 (COMPUTED).
  it("holds the heap with a ridge: 112 m3, as the prismoidal formula has it", () => {
    const heap = surfaceOver(
      [
        [0, 0, 0],
        [12, 0, 0],
        [12, 8, 0],
        [0, 8, 0],
        [4, 4, 3],
        [8, 4, 3],
      ],
      [
        [4, 5],
        [0, 4],
        [3, 4],
        [1, 5],
        [2, 5],
      ],
    );
    expect(cutAndFill(heap, levelPlane(0)).cut).toBeCloseTo(112, 9);
    expect(prismoidVolume(3, [96, 32, 0])).toBeCloseTo(112, 9);
  });
});
