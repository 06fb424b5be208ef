// Files of points beside the plan, as stations: on the plan's own plane, or brought to it from the earth.

import { toPlane } from "../geometry/tangent-plane.ts";
import type { Path } from "../model/path.ts";
import type { Problem } from "../model/problem.ts";
import { parseQuantity } from "../model/units.ts";
import { type CsvColumns, csvPoints } from "../reading/csv-points.ts";
import type { FilePoint, FilePoints } from "../reading/file-points.ts";
import { geojsonPoints } from "../reading/geojson-points.ts";
import { gpxPoints } from "../reading/gpx-points.ts";
import type { SourceText } from "../reading/source-text.ts";
import type { CheckedText } from "./resolve-plan.ts";
import { fittedThrough } from "./file-fit.ts";
import { descend, entries, items, rootNode, textOf, child, type Node } from "./node.ts";

/** The files of points that a plan names, as its nodes. */
export function pointFileNodes(document: SourceText): readonly Node[] {
  return items(descend(rootNode(document, []), "survey", "coordinates", "files"));
}

/** Whether a plan names a file as one of points. */
export function isPointFile(name: string, document: SourceText): boolean {
  return pointFileNodes(document).some((node) => textOf(child(node, "file")) === name);
}

/**
 * One file of points as a text that holds stations; problems name its lines. Points on the earth need a stated ±: then
 * they carry it into everything that hangs on them; without it they are left out.
 */
export function pointFileText(
  text: { readonly file: string; readonly text: string },
  document: SourceText,
): { readonly checked: CheckedText; readonly problems: readonly Problem[] } {
  const entry = pointFileNodes(document).find((node) => textOf(child(node, "file")) === text.file) ?? null;
  const columns = Object.fromEntries(
    ["name", "east", "north", "level"].flatMap((key) => {
      const word = textOf(child(entry, key));
      return word === null ? [] : [[key, word]];
    }),
  ) as CsvColumns;
  const { points, problems } = readPoints(text, columns);
  const earth = earthAt(document);
  const prefix = textOf(child(entry, "prefix")) ?? "";
  const half = metresIn(child(entry, "plus_minus"));
  const through = child(entry, "through");
  if (through !== null) return fittedText(text.file, { points, problems, through, prefix, half });
  const known = points.filter(({ on }) => on === "plane" || (earth !== null && half !== null));
  const lines = new Map(known.map((point) => [prefix + point.name, point.line]));
  const written = (value: number) => (half === null ? value : `${value.toFixed(4)} ± ${half}`);
  const stations = Object.fromEntries(
    known.map((point) => {
      const [east, north] = point.on === "plane" || earth === null ? point.at : earth(point.at);
      const level = point.level === null ? {} : { level: point.level };
      return [prefix + point.name, { at: [written(east), written(north)], ...level }];
    }),
  );
  const locate = (path: Path) => ({ line: lines.get(String(path[2] ?? "")) ?? 1, column: 1 });
  const source: SourceText = { file: text.file, data: { survey: { stations } }, locate };
  const lost = known.length === points.length ? [] : [earth === null ? noTie(text.file) : noDoubt(text.file)];
  return { checked: { source, broken: [] }, problems: [...problems, ...lost] };
}

interface ToFit extends FilePoints {
  readonly through: Node;
  readonly prefix: string;
  readonly half: number | null;
}

/** A file with a grid of its own, fitted through the pegs that it shares with the plan. */
function fittedText(file: string, { points, problems, through, prefix, half }: ToFit) {
  const pegs = new Map(
    entries(through).flatMap(([name, peg]) => {
      const word = textOf(peg);
      return word === null ? [] : [[name, word] as const];
    }),
  );
  const onEarth = points.some(({ on }) => on === "earth");
  const [first] = points;
  const plane = onEarth && first ? planeAt(first.at) : (at: FilePoint["at"]) => at;
  const own = points.map(({ name, at, level }) => ({ name, at: plane(at), level }));
  const fitted = onEarth && half === null ? null : fittedThrough(own, pegs, { prefix, plusMinus: half });
  const lines = new Map(points.map(({ name, line }) => [name, line]));
  const locate = (path: Path) => {
    const name = path[1] === "checks" ? fitted?.checkedBy[Number(path[2])] : String(path[2] ?? "").slice(prefix.length);
    return { line: lines.get(name ?? "") ?? 1, column: 1 };
  };
  const survey = fitted === null ? {} : { stations: fitted.stations, checks: fitted.checks };
  const source: SourceText = { file, data: { survey }, locate };
  const lost = fitted !== null ? [] : [onEarth && half === null ? noDoubt(file) : nothingShared(file)];
  return { checked: { source, broken: [] }, problems: [...problems, ...lost] };
}

/** Metres east and north of a place on the earth, on the plane that touches it there. */
function planeAt([longitude, latitude]: FilePoint["at"]): (at: FilePoint["at"]) => readonly [number, number] {
  const origin = { latitude, longitude, height: 0 };
  return ([lon, lat]) => {
    const [east, north] = toPlane(origin, { latitude: lat, longitude: lon, height: 0 });
    return [east, north];
  };
}

function nothingShared(file: string): Problem {
  return {
    code: "bad-geometry",
    file,
    line: 1,
    column: 1,
    expected: "two points or more, apart from each other, that this file and the plan both have",
    got: "fewer of those that stand under through",
    hint: "write through: {T1: P1, T2: P2}: the name in the file, then the peg that it is",
  };
}

function readPoints({ file, text }: { readonly file: string; readonly text: string }, columns: CsvColumns): FilePoints {
  if (file.endsWith(".csv")) return csvPoints(file, text, columns);
  return file.endsWith(".gpx") ? gpxPoints(file, text) : geojsonPoints(file, text);
}

/** A phone's position never decides a clearance: whoever brings positions says how good they are. */
function noDoubt(file: string): Problem {
  return {
    code: "missing-key",
    file,
    line: 1,
    column: 1,
    expected: "how well positions on the earth are known: plus_minus beside the file's name",
    got: "none; a phone is good to about 10 m and must not decide a distance",
    hint: "tape these pegs in; or, where a surveyor's receiver was used, write plus_minus: 30 mm",
  };
}

function noTie(file: string): Problem {
  return {
    code: "no-earth-tie",
    file,
    line: 1,
    column: 1,
    expected: "a plan that says where on the earth it lies, from a peg written with its coordinates",
    got: "none",
    hint: "add earth: {station: P1, latitude: 52.0831, longitude: -3.1162, north: 4 deg}, where P1 has at: [0, 0]",
  };
}

/**
 * From longitude and latitude to the plan's plane: metres true east and north of the tied station (tangent plane there),
 * turned by n, the bearing of the plan's north: east = E cos n - N sin n, north = N cos n + E sin n, and moved to where
 * the station stands. Null without a tie, or where that station is not written by its coordinates.
 */
function earthAt(document: SourceText): ((at: FilePoint["at"]) => readonly [number, number]) | null {
  const root = rootNode(document, []);
  const station = textOf(descend(root, "earth", "station")) ?? "";
  const [latitude, longitude] = ["latitude", "longitude"].map((key) => descend(root, "earth", key)?.data);
  const [east, north] = items(descend(root, "survey", "stations", station, "at")).map(({ data }) => data);
  if (typeof latitude !== "number" || typeof longitude !== "number") return null;
  if (typeof east !== "number" || typeof north !== "number") return null;
  const turned = parseQuantity(descend(root, "earth", "north")?.data ?? 0, "angle");
  const n = turned.ok ? turned.value : 0;
  const origin = { latitude, longitude, height: 0 };
  return ([lon, lat]) => {
    const [e, nn] = toPlane(origin, { latitude: lat, longitude: lon, height: 0 });
    return [east + e * Math.cos(n) - nn * Math.sin(n), north + nn * Math.cos(n) + e * Math.sin(n)];
  };
}

function metresIn(node: Node | null): number | null {
  const parsed = node === null ? null : parseQuantity(node.data, "length");
  return parsed?.ok === true ? Math.abs(parsed.value) : null;
}
