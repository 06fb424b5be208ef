// Waypoints from GPX 1.1 (schema of Topografix, MEMORY): wpt with lat and lon in degrees (WGS 84), name and ele within.

import { SaxesParser } from "saxes";
import { deepest, type FileFault, type FilePoint, type FilePoints, gathered, mostPoints } from "./file-points.ts";

interface Open {
  readonly line: number;
  readonly at: readonly [number, number];
  name: string;
}

/** Reads the waypoints. A document type is refused (nothing is ever fetched or expanded), and so is deep nesting. */
export function gpxPoints(file: string, text: string): FilePoints {
  const points: FilePoint[] = [];
  const faults: FileFault[] = [];
  const path: string[] = [];
  let open: Open | null = null;
  const parser = new SaxesParser({});
  const fail = (code: FileFault["code"], got: string): void => {
    if (faults.length > 0) return;
    const hint = "export it again as plain GPX 1.1";
    faults.push({ code, line: parser.line, expected: "a GPX file of waypoints", got, hint });
  };
  parser.on("doctype", () => fail("wrong-type", "a document type, which is not read"));
  parser.on("error", (error) => fail("wrong-type", error.message.slice(0, 120)));
  parser.on("opentag", ({ name, attributes }) => {
    path.push(name);
    if (path.length > deepest) fail("nested-too-deep", `elements ${path.length} deep`);
    if (name === "wpt" && points.length <= mostPoints)
      open = { line: parser.line, at: [Number(attributes["lon"] ?? "x"), Number(attributes["lat"] ?? "x")], name: "" };
  });
  parser.on("text", (words) => {
    if (open !== null && path.at(-1) === "name" && path.at(-2) === "wpt") open.name += words;
  });
  parser.on("closetag", ({ name }) => {
    path.pop();
    if (name !== "wpt" || open === null) return;
    points.push({ name: open.name.trim(), line: open.line, at: open.at, on: "earth", level: null });
    open = null;
  });
  for (let from = 0; from < text.length && faults.length === 0; from += pieceSize)
    parser.write(text.slice(from, from + pieceSize));
  if (faults.length === 0) parser.close();
  return faults.length > 0 ? gathered(file, [], faults) : gathered(file, points, []);
}

/** Text is handed over in pieces, so that reading ends soon after the first fault. */
const pieceSize = 65_536;
