// Points of a file that has a grid of its own, brought onto the plan through points that both have.

import { distance, type Point } from "../geometry/point.ts";
import { practice } from "./practice.ts";

/** A point of the file on a plane of its own, metres. */
export interface OwnPoint {
  readonly name: string;
  readonly at: Point;
  readonly level: number | null;
}

/** Stations and checks as the plan would write them. */
export interface Fitted {
  readonly stations: Readonly<Record<string, object>>;
  readonly checks: readonly { readonly between: readonly [string, string]; readonly tape: string }[];
  /** Name in the file of the point that each check comes from. */
  readonly checkedBy: readonly string[];
}

/**
 * Stations by run and offset from the line between the two shared points that lie farthest apart, and the distance
 * between every two shared points as a check. The file's own scale is kept: where its lengths do not fit the pegs, the
 * misfit shows. With u the doubt of a coordinate and s = run / length: u(run) = u sqrt 2, u(offset) =
 * u sqrt(1 + (1 - s)^2 + s^2); that points of one file share the doubt of those two is not followed. COMPUTED.
 * Null where fewer than two shared points, apart from each other, are in the file.
 */
export function fittedThrough(
  points: readonly OwnPoint[],
  through: ReadonlyMap<string, string>,
  how: { readonly prefix: string; readonly plusMinus: number | null },
): Fitted | null {
  const half = how.plusMinus ?? practice.coordinates.plusMinus;
  const shared = points.flatMap((point) => {
    const peg = through.get(point.name);
    return peg === undefined ? [] : [{ ...point, peg }];
  });
  const pairs = shared.flatMap((a, k) => shared.slice(k + 1).map((b) => ({ a, b, length: distance(a.at, b.at) })));
  const [base] = [...pairs].sort((one, two) => two.length - one.length);
  if (base === undefined || !(base.length > 0)) return null;
  const { a, b, length } = base;
  const [e, n] = [(b.at[0] - a.at[0]) / length, (b.at[1] - a.at[1]) / length];
  const written = (value: number, doubt: number) => `${value.toFixed(4)} ± ${doubt.toFixed(4)}`;
  const stationOf = ({ at, level }: OwnPoint) => {
    const [east, north] = [at[0] - a.at[0], at[1] - a.at[1]];
    const [run, left] = [east * e + north * n, north * e - east * n];
    const share = run / length;
    return {
      along: `${a.peg} to ${b.peg}`,
      run: written(run, half * Math.SQRT2),
      left: written(left, half * Math.sqrt(1 + (1 - share) ** 2 + share ** 2)),
      ...(level === null ? {} : { level }),
    };
  };
  const fresh = points.filter(({ name }) => !through.has(name));
  return {
    stations: Object.fromEntries(fresh.map((point) => [how.prefix + point.name, stationOf(point)])),
    checks: pairs.map((pair) => ({
      between: [pair.a.peg, pair.b.peg],
      tape: written(pair.length, half * Math.SQRT2),
    })),
    checkedBy: pairs.map((pair) => pair.a.name),
  };
}
