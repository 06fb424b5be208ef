// Reads the form of a feature on the ground from whichever way it is written.

import type { LiveShape } from "./live-shape.ts";
import { child, items, type Node } from "./node.ts";
import { readPoint, readPoints } from "./points.ts";
import { bare, lineOf, ring, type ShapeWork } from "./shape-work.ts";
import { lineThrough, readBeside, readBetween, readOn, readOnLine } from "./shapes-by-others.ts";

type ShapeReader = (node: Node, written: Node, work: ShapeWork) => LiveShape | null;

const readers: readonly (readonly [key: string, read: ShapeReader])[] = [
  ["outline", readOutline],
  ["circle", readCircle],
  ["centre_line", readLine],
  ["line", readLine],
  ["offsets", readLine],
  ["crest", readBank],
  ["beside", readBeside],
  ["between", readBetween],
  ["on_wall", readOnLine],
  ["on", readOn],
  ["at", readAt],
];

/** Keys that say where a feature lies; they are no properties. */
export const shapeKeys: ReadonlySet<string> = new Set([
  "at",
  "outline",
  "holes",
  "circle",
  "centre_line",
  "line",
  "offsets",
  "crest",
  "toe",
  "along",
  "beside",
]);

/** The shape of a feature, or null where it has none or where it cannot be read. */
export function readShape(node: Node, work: ShapeWork): LiveShape | null {
  for (const [key, read] of readers) {
    const written = child(node, key);
    if (written !== null) {
      const shape = read(node, written, work);
      if (shape !== null || key !== "on") return shape;
    }
  }
  return null;
}

function readAt(_: Node, written: Node, work: ShapeWork): LiveShape | null {
  const at = readPoint(written, work.settingOf(written), "the place");
  return at === null ? null : bare({ form: "point", at });
}

function readOutline(node: Node, written: Node, work: ShapeWork): LiveShape | null {
  const points = readPoints(written, work.settingOf(written), { least: 3, word: "corner" });
  if (points === null) return null;
  const holes = items(child(node, "holes")).flatMap((hole, i) => {
    const corners = readPoints(hole, work.settingOf(hole), { least: 3, word: `hole ${i + 1} corner` });
    return corners === null ? [] : [lineOf(corners, true, work)];
  });
  return bare({ form: "outline", outline: lineOf(points, true, work), holes });
}

function readLine(_: Node, written: Node, work: ShapeWork): LiveShape | null {
  return lineThrough(written, work);
}

function readCircle(_: Node, written: Node, work: ShapeWork): LiveShape | null {
  const acrossNode = child(written, "across");
  const across = acrossNode === null ? null : work.size(acrossNode, "circle.across");
  const centre = readPoint(written, work.settingOf(written), "the middle");
  if (across === null || acrossNode === null || centre === null) return null;
  return bare({ form: "circle", centre, across, place: acrossNode.place });
}

/** A bank lies between its crest and its toe. */
function readBank(node: Node, written: Node, work: ShapeWork): LiveShape | null {
  const toeNode = child(node, "toe");
  const crest = readPoints(written, work.settingOf(written), { least: 2, word: "crest point" });
  const toe = toeNode === null ? null : readPoints(toeNode, work.settingOf(toeNode), { least: 2, word: "toe point" });
  if (crest === null) return null;
  const line = lineOf(crest, false, work);
  if (toe === null) return { main: { form: "line", line }, lines: { crest } };
  return { main: ring(line, lineOf(toe, false, work), work), lines: { crest, toe } };
}
