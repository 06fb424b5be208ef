// Files of points: what is read of them, and what is refused.

import { describe, expect, it } from "vitest";
import { csvPoints } from "../../src/reading/csv-points.ts";
import { geojsonPoints } from "../../src/reading/geojson-points.ts";
import { gpxPoints } from "../../src/reading/gpx-points.ts";

const codes = ({ problems }: { readonly problems: readonly { readonly code: string; readonly line: number }[] }) =>
  problems.map(({ code, line }) => `${code} ${line}`);
const short = ({ points }: ReturnType<typeof csvPoints>) => points.map(({ name, at, level }) => [name, ...at, level]);

describe("CSV", () => {
  it("reads columns by their usual heads, with comma or semicolon, quotes and a byte order mark", () => {
    const read = csvPoints("p.csv", '\uFEFFPeg;Easting;Northing;RL\r\nP1;0;0;100\r\n"P 2";12.30;-4.5;\r\n', {});
    expect(short(read)).toEqual([
      ["P1", 0, 0, 100],
      ["P 2", 12.3, -4.5, null],
    ]);
    expect(codes(read)).toEqual([]);
  });
  it("reads columns as the plan names them", () => {
    const read = csvPoints("p.csv", "who,x,y\nP1,1,2\n", { name: "who", east: "x", north: "y" });
    expect(short(read)).toEqual([["P1", 1, 2, null]]);
  });
  it("takes no decimal comma for a number, and tells the line", () => {
    const read = csvPoints("p.csv", "name;east;north\nP1;1,5;2\nP2;1;2\n", {});
    expect(codes(read)).toEqual(["not-a-number 2"]);
    expect(read.points.length).toBe(1);
  });
  it.each([
    ["no head", "P1,1,2\n", "missing-key 1"],
    ["an empty file", "", "missing-key 1"],
    ["a name that is a formula", "name,east,north\n=1+1,1,2\n", "bad-name 2"],
    ["a name that is a number", "name,east,north\n7,1,2\n", "bad-name 2"],
    ["a name twice", "name,east,north\nP1,1,2\nP1,3,4\n", "name-taken 3"],
    ["an open quote", 'name,east,north\n"P1,1,2\n', "wrong-type 2"],
  ])("tells of %s", (_, text, code) => {
    expect(codes(csvPoints("p.csv", text, {}))).toContain(code);
  });
});

const gpx = (inside: string, head = "") =>
  `<?xml version="1.0"?>${head}\n<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1">\n${inside}\n</gpx>`;

describe("GPX 1.1", () => {
  it("reads waypoints with their names, and no track", () => {
    const read = gpxPoints(
      "p.gpx",
      gpx(
        '<wpt lat="52.1" lon="-3.2"><ele>120</ele><name>gate &amp; <![CDATA[]]>post</name></wpt>\n<trk><name>walk</name></trk>\n<wpt lat="52.2" lon="-3.1"><name>P2</name></wpt>',
      ),
    );
    expect(codes(read)).toEqual(["bad-name 3"]);
    expect(read.points).toEqual([{ name: "P2", line: 5, at: [-3.1, 52.2], on: "earth", level: null }]);
  });
  it.each([
    ["a document type", gpx("", '<!DOCTYPE gpx [<!ENTITY a "aaaaaaaa">]>'), "wrong-type"],
    ["an unknown entity", gpx('<wpt lat="1" lon="1"><name>&a;</name></wpt>'), "wrong-type"],
    ["broken XML", gpx("<wpt>"), "wrong-type"],
    ["deep nesting", gpx("<a>".repeat(100_000)), "nested-too-deep"],
    ["no place", gpx("<wpt><name>P1</name></wpt>"), "not-a-number"],
    ["a latitude beyond the pole", gpx('<wpt lat="91" lon="0"><name>P1</name></wpt>'), "not-a-number"],
  ])("tells of %s, and reads nothing from it", (_, text, code) => {
    const read = gpxPoints("p.gpx", text);
    expect(read.problems[0]?.code).toBe(code);
    expect(read.points).toEqual([]);
  });
});

describe("GeoJSON", () => {
  const collection = (...features: unknown[]) => JSON.stringify({ type: "FeatureCollection", features });
  const point = (coordinates: unknown, name: unknown) => ({
    type: "Feature",
    geometry: { type: "Point", coordinates },
    properties: { name },
  });
  it("reads points, longitude first, and passes over lines", () => {
    const line = { type: "Feature", geometry: { type: "LineString", coordinates: [] }, properties: null };
    const read = geojsonPoints("p.geojson", collection(point([-3.2, 52.1, 120], "P1"), line));
    expect(read.points.map(({ name, at }) => [name, ...at])).toEqual([["P1", -3.2, 52.1]]);
  });
  it.each([
    ["other JSON", "[1]", "wrong-type"],
    ["no JSON", "{", "wrong-type"],
    ["a crs", JSON.stringify({ type: "FeatureCollection", features: [], crs: {} }), "wrong-type"],
    ["deep nesting", "[".repeat(200_000), "nested-too-deep"],
    ["text for numbers", collection(point(["1", "2"], "P1")), "not-a-number"],
    ["no name", collection(point([1, 2], undefined)), "bad-name"],
  ])("tells of %s", (_, text, code) => {
    const read = geojsonPoints("p.geojson", text);
    expect(read.problems[0]?.code).toBe(code);
    expect(read.points).toEqual([]);
  });
});
