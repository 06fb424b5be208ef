import { describe, expect, it } from "vitest";
import {
  endAreaVolume,
  gridVolume,
  prismoidVolume,
  trapezoidArea,
  volumeByEndAreas,
  volumeBySimpson,
} from "../../src/terrain/volumes.ts";

describe("volumes from sections", () => {
  it("frustum of a pyramid, 10 m to 6 m square over 12 m: prismoid 784 (exact), end areas 816 (COMPUTED)", () => {
    expect(prismoidVolume(12, [100, 64, 36])).toBeCloseTo(784, 9);
    expect(endAreaVolume(12, [100, 36])).toBeCloseTo(816, 9);
  });

  it("pyramid, 10 m square over 12 m: prismoid 400 (exact), end areas 600 (COMPUTED)", () => {
    expect(prismoidVolume(12, [100, 25, 0])).toBeCloseTo(400, 9);
    expect(endAreaVolume(12, [100, 0])).toBeCloseTo(600, 9);
  });

  it("sections 4.2, 7.8, 11.1, 9.6, 5.4 m2 at 10 m: end areas 333.0, Simpson 338.0 m3 (COMPUTED)", () => {
    const areas = [4.2, 7.8, 11.1, 9.6, 5.4];
    expect(volumeByEndAreas(10, areas)).toBeCloseTo(333, 9);
    expect(volumeBySimpson(10, areas)).toBeCloseTo(338, 9);
  });

  it("Simpson's rule wants an odd number of sections, three or more", () => {
    expect(volumeBySimpson(10, [1, 2])).toBeNull();
    expect(volumeBySimpson(10, [1, 2, 3, 4])).toBeNull();
    expect(volumeBySimpson(10, [5])).toBeNull();
    expect(volumeByEndAreas(10, [5])).toBe(0);
  });

  it("trapezoid of 1.0 m bottom, 1.2 m deep, sides 1.5 to 1: 3.36 m2 (COMPUTED)", () => {
    expect(trapezoidArea(1, 1.2, 1.5)).toBeCloseTo(3.36, 12);
  });
});

describe("volume from a grid", () => {
  const depths = [
    [0.8, 1.0, 1.2],
    [0.9, 1.1, 1.4],
    [1.0, 1.3, 1.6],
  ];

  it("5 m grid of nine depths: 113.75 m3, mean 1.1375 m (COMPUTED)", () => {
    expect(gridVolume(5, depths)).toBeCloseTo(113.75, 9);
    expect(gridVolume(5, depths) / 100).toBeCloseTo(1.1375, 9);
  });

  it("leaves out cells that lack a corner", () => {
    // by hand: without the last corner three cells stay: 25/4 x (3.8 + 4.7 + 4.3)
    expect(gridVolume(5, [depths[0] as number[], depths[1] as number[], [1.0, 1.3, null]])).toBeCloseTo(80, 9);
    expect(gridVolume(5, [])).toBe(0);
    expect(gridVolume(5, [[1, 2, 3]])).toBe(0);
  });
});
