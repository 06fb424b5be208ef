// Tells what is wrong with a drawn outline or line before anything is measured on it.

import type { Point } from "../model/reading.ts";
import { lineFaults, mostMeetings, polygonFaults, type ShapeFault } from "../geometry/ring-check.ts";
import type { LiveLine } from "./lines.ts";
import type { LiveShape } from "./live-shape.ts";
import type { Node } from "./node.ts";
import type { Troubles } from "./troubles.ts";

const valuesOf = (line: LiveLine): readonly Point[] =>
  line.points.map((point) => [point.east.value, point.north.value]);

/** Faults after which nothing can be measured on the shape. A line may cross itself on the ground; an area may not. */
function isFatal(fault: ShapeFault, form: "line" | "outline"): boolean {
  if (fault.is === "sides-touch" || fault.is === "spike") return false;
  return form === "outline" || fault.is !== "sides-cross";
}

/** The shape itself where it can be measured on; else a problem in words, and null. */
export function faultless(
  shape: LiveShape,
  of: { readonly node: Node; readonly whose: string; readonly troubles: Troubles },
): LiveShape | null {
  const { main } = shape;
  if (main.form === "point") return shape;
  if (main.form === "circle") {
    if (main.across.value > 0) return shape;
    return report(of, { got: "a circle that is nothing across", hint: "write how wide it is: across: 4.0" });
  }
  const faults =
    main.form === "line"
      ? lineFaults(valuesOf(main.line))
      : polygonFaults({ outline: valuesOf(main.outline), holes: main.holes.map(valuesOf) });
  if (faults.length >= mostMeetings && main.form === "line") return report(of, scribble);
  const [worst] = faults.filter((fault) => isFatal(fault, main.form));
  return worst === undefined ? shape : report(of, wordsFor(worst, main.form));
}

/** No way on the ground crosses itself so often; what it covers could not be worked out in any useful time. */
const scribble = {
  got: `a line that meets itself ${mostMeetings} times and more`,
  hint: "write the points in the order you walk past them",
};

function report(
  { node, whose, troubles }: { readonly node: Node; readonly whose: string; readonly troubles: Troubles },
  { got, hint }: { readonly got: string; readonly hint: string },
): null {
  return troubles.report(node, {
    code: "bad-geometry",
    expected: `a shape for ${whose} that can be walked round`,
    got,
    hint,
  });
}

const at = ([east, north]: Point): string => `[${east.toFixed(2)}, ${north.toFixed(2)}]`;

function wordsFor(fault: ShapeFault, form: "line" | "outline"): { readonly got: string; readonly hint: string } {
  const word = form === "line" ? "point" : "corner";
  switch (fault.is) {
    case "sides-cross": {
      const [one, two] = fault.sides.map((side) => side + 1);
      return {
        got: `sides that cross at ${at(fault.at)}: those after ${word} ${one} and after ${word} ${two}`,
        hint: "write the corners in the order you walk past them",
      };
    }
    case "too-few-points":
      return {
        got: `only ${fault.points} ${word}${fault.points === 1 ? "" : "s"} that lie apart`,
        hint: form === "line" ? "a line needs two points that lie apart" : "an outline needs three corners or more",
      };
    case "repeated-point":
      return {
        got: `the same ${word} twice running at ${at(fault.at)}`,
        hint: "leave one of them out; an outline closes by itself",
      };
    case "no-area":
      return {
        got: "corners that all lie on one line",
        hint: "look at the corners again, or write a line and a width",
      };
    case "hole-outside":
      return { got: `a hole that lies outside at ${at(fault.at)}`, hint: "look at the corners of the hole" };
    case "hole-in-hole":
    case "rings-cross":
      return {
        got: `holes or outline that cross at ${at(fault.at)}`,
        hint: "holes lie inside the outline and apart from each other",
      };
    case "not-a-number":
    case "sides-touch":
    case "spike":
      break;
  }
  return { got: "a shape that cannot be measured", hint: "look at its points again" };
}
