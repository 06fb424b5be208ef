// Expected numbers: by hand (COMPUTED).
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convexHull } from "../../src/geometry/convex-hull.ts";
import { sideOfCircle } from "../../src/geometry/orientation.ts";
import type { Point } from "../../src/geometry/point.ts";
import { ringArea, signedArea } from "../../src/geometry/ring.ts";
import { breakEdges } from "../../src/terrain/breaklines.ts";
import { delaunay, nextEdge, previousEdge } from "../../src/terrain/delaunay.ts";
import { distinctPoints } from "../../src/terrain/distinct-points.ts";
import { forceEdges, type Edge } from "../../src/terrain/forced-edges.ts";
import { longEdges } from "../../src/terrain/long-edges.ts";
import { buildNet, trianglesOf, withPoints, type Net } from "../../src/terrain/net.ts";
import { triangleAt } from "../../src/terrain/triangle-at.ts";
import { netOver, scattered, seeded } from "./ground.ts";

const corners: readonly Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];

function hasEdge(net: Net, [a, b]: Edge): boolean {
  return Array.from(net.corners).some((from, e) => {
    const to = net.corners[nextEdge(e)];
    return (from === a && to === b) || (from === b && to === a);
  });
}

/** Everything a sound triangulation of all its points must be. */
function expectSound(net: Net): void {
  let area = 0;
  for (const triangle of trianglesOf(net)) {
    expect(signedArea(triangle)).toBeGreaterThan(0);
    area += ringArea(triangle);
  }
  expect(area).toBeCloseTo(ringArea(convexHull(net.points)), 6);
  for (let e = 0; e < net.corners.length; e++) {
    const twin = net.twins[e] as number;
    if (twin === -1) continue;
    expect(net.twins[twin]).toBe(e);
    expect(net.corners[twin]).toBe(net.corners[nextEdge(e)]);
    expect(net.corners[nextEdge(twin)]).toBe(net.corners[e]);
  }
  expect(new Set(Array.from(net.corners)).size).toBe(net.points.length);
}

describe("half-edges", () => {
  it("go round in threes", () => {
    expect([0, 1, 2, 3, 4, 5].map(nextEdge)).toEqual([1, 2, 0, 4, 5, 3]);
    expect([0, 1, 2, 3, 4, 5].map(previousEdge)).toEqual([2, 0, 1, 5, 3, 4]);
  });

  it("come counter-clockwise, y to the north", () => {
    const { corners: numbers, twins } = delaunay(corners);
    expect(numbers).toHaveLength(6);
    expect(Array.from(twins).filter((twin) => twin === -1)).toHaveLength(4);
    const first = [0, 1, 2].map((k) => corners[numbers[k] as number] as Point);
    expect(signedArea(first)).toBe(50);
  });
});

describe("net", () => {
  it("forces the diagonal that a breakline asks for, either one", () => {
    for (const [from, to] of [
      [0, 2],
      [1, 3],
    ] as const) {
      const { net, troubles } = buildNet(corners, [[from, to]]);
      expect(troubles).toEqual([]);
      expect(hasEdge(net as Net, [from, to])).toBe(true);
      expect(net?.breaks).toEqual([[from, to]]);
      expectSound(net as Net);
    }
  });

  it("splits a breakline at points that lie on it, be it within a rounding", () => {
    const points: readonly Point[] = [...corners, [5, 5 + 1e-9], [2.5, 2.5]];
    const { net, troubles } = buildNet(points, [[0, 2]]);
    expect(troubles).toEqual([]);
    expect(net?.breaks).toEqual([
      [0, 5],
      [5, 4],
      [4, 2],
    ]);
    for (const edge of net?.breaks ?? []) expect(hasEdge(net as Net, edge)).toBe(true);
  });

  it("tells of breaklines that cross, and keeps the first", () => {
    const { net, troubles } = buildNet(corners, [
      [0, 2],
      [1, 3],
    ]);
    expect(troubles).toEqual([{ is: "breaklines-cross", breaklines: [0, 1], at: [5, 5] }]);
    expect(hasEdge(net as Net, [0, 2])).toBe(true);
  });

  it("tells of two points in one place, and lets breaklines run through either", () => {
    const points: readonly Point[] = [...corners, [10, 10 + 1e-7]];
    const { net, troubles } = buildNet(points, [[0, 4]]);
    expect(troubles).toEqual([{ is: "same-place", points: [2, 4], at: [10, 10 + 1e-7] }]);
    expect(hasEdge(net as Net, [0, 2])).toBe(true);
    expect(Array.from(net?.corners ?? [])).not.toContain(4);
    expect(buildNet(points, [[2, 4]]).net?.breaks).toEqual([]);
  });

  it("makes none of two points, of points on one line, of no numbers", () => {
    expect(
      buildNet(
        [
          [0, 0],
          [1, 1],
        ],
        [],
      ),
    ).toEqual({ net: null, troubles: [{ is: "too-few-points", points: 2 }] });
    expect(
      buildNet(
        [
          [0, 0],
          [1, 1],
          [3, 3],
        ],
        [],
      ),
    ).toEqual({ net: null, troubles: [{ is: "on-one-line" }] });
    const { net, troubles } = buildNet(
      [...corners, [Number.NaN, 1]],
      [
        [0, 4, 2],
        [1, 9],
      ],
    );
    expect(net?.corners).toHaveLength(6);
    expect(troubles).toEqual([
      { is: "not-a-number", point: 4 },
      { is: "no-such-point", breakline: 0, point: 4 },
      { is: "no-such-point", breakline: 1, point: 9 },
    ]);
  });

  it("keeps its triangles when points move a little", () => {
    const net = netOver(corners, [[0, 2]]);
    const there = withPoints(
      net,
      corners.map(([x, y]): Point => [x + 0.01, y - 0.02]),
    ) as Net;
    expect(there.corners).toEqual(net.corners);
    expect(triangleAt(there, [10.005, 5])).not.toBeNull();
    expect(triangleAt(net, [10.005, 5])).toBeNull();
    expect(withPoints(net, [])).toBeNull();
  });

  it("is sound over any points", () => {
    let made = 0;
    fc.assert(
      fc.property(scattered, (points) => {
        const { net } = buildNet(points, []);
        if (net === null) return;
        expectSound(net);
        made++;
      }),
      seeded,
    );
    expect(made).toBeGreaterThan(100);
  });

  it("is sound with any breaklines that do not cross, holds each, and is Delaunay for the rest", () => {
    let forced = 0;
    fc.assert(
      fc.property(scattered, fc.array(fc.tuple(fc.nat(39), fc.nat(39)), { maxLength: 8 }), (points, lines) => {
        const breaklines = lines.map(([a, b]) => [a % points.length, b % points.length]);
        const { net, troubles } = buildNet(points, breaklines);
        if (net === null) return;
        expectSound(net);
        expect(troubles.every(({ is }) => is === "breaklines-cross")).toBe(true);
        for (const edge of net.breaks) expect(hasEdge(net, edge)).toBe(true);
        forced += net.breaks.length;
        for (let e = 0; e < net.corners.length; e++) {
          const twin = net.twins[e] as number;
          const [a, b] = [net.corners[e] as number, net.corners[nextEdge(e)] as number];
          if (twin === -1 || net.breaks.some((edge) => edge.includes(a) && edge.includes(b))) continue;
          const [p, q, r] = [a, b, net.corners[previousEdge(e)] as number].map((i) => net.points[i] as Point);
          const beyond = net.points[net.corners[previousEdge(twin)] as number] as Point;
          expect(sideOfCircle(p as Point, q as Point, r as Point, beyond)).not.toBe(1);
        }
      }),
      seeded,
    );
    expect(forced).toBeGreaterThan(200);
  });
});

describe("parts of the making", () => {
  it("sorts out points", () => {
    const { kept, standsFor } = distinctPoints([
      [0, 0],
      [0, 1e-7],
      [1, 1],
      [Number.NaN, 0],
    ]);
    expect(kept).toEqual([0, 2]);
    expect(standsFor).toEqual([0, 0, 2, undefined]);
  });

  it("takes breaklines apart", () => {
    const sorted = { kept: [0, 1, 2, 3], standsFor: [0, 1, 2, 3] };
    expect(breakEdges(corners, [[0, 1, 2]], sorted)).toEqual({
      edges: [
        [0, 1],
        [1, 2],
      ],
      troubles: [],
    });
  });

  it("gives back an edge that cannot be forced because another is fixed across it", () => {
    const made = delaunay(corners);
    expect(
      forceEdges(made, corners, [
        [0, 2],
        [1, 3],
      ]),
    ).toEqual([[1, 3]]);
  });

  it("finds the edges that are much longer than the rest", () => {
    const net = netOver([
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
      [2, 0],
      [2, 1],
      [30, 0.9],
    ]);
    const found = longEdges(net, 3);
    expect(found.length).toBeGreaterThan(1);
    expect(found.every(({ edge }) => edge.includes(6))).toBe(true);
    expect(found.every(({ length }, i) => i === 0 || length <= (found[i - 1]?.length ?? 0))).toBe(true);
    expect(found[0]?.length).toBeGreaterThan(found.at(-1)?.length ?? 99);
    expect(longEdges(netOver(corners), 3)).toEqual([]);
  });

  it("finds the triangle under a point, the first of two on a common edge, none outside", () => {
    const net = netOver(corners, [[0, 2]]);
    expect(triangleAt(net, [7, 2])).not.toBe(triangleAt(net, [2, 7]));
    expect(triangleAt(net, [5, 5])).toBe(0);
    expect(triangleAt(net, [10.0001, 5])).toBeNull();
    expect(triangleAt(net, [Number.NaN, 5])).toBeNull();
  });
});
