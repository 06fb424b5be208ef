// The form of a feature on the ground while it is worked out, as a point, a line, or written into the book.

import type { Place } from "../model/path.ts";
import type { Shape } from "../model/plan.ts";
import type { Quantity } from "../model/quantity.ts";
import { middleOf, type LiveLine } from "./lines.ts";
import type { BookWriter, LivePoint } from "./number-book.ts";
import type { Uncertain } from "./sway.ts";

/** A shape before it is sealed. `lines` are further lines by property name: crest and toe, the two sides of a strip. */
export interface LiveShape {
  readonly main:
    | { readonly form: "point"; readonly at: LivePoint }
    | { readonly form: "line"; readonly line: LiveLine }
    | { readonly form: "outline"; readonly outline: LiveLine; readonly holes: readonly LiveLine[] }
    | { readonly form: "circle"; readonly centre: LivePoint; readonly across: Uncertain; readonly place: Place };
  readonly lines: Readonly<Record<string, readonly LivePoint[]>>;
}

/** The points of a shape that corners are counted from. */
export function cornersOf({ main }: LiveShape): readonly LivePoint[] {
  if (main.form === "outline") return main.outline.points;
  if (main.form === "line") return main.line.points;
  return [main.form === "point" ? main.at : main.centre];
}

/** A shape as one point: itself, its middle, or the mean of its corners; null for a line. */
export function pointOf(shape: LiveShape): LivePoint | null {
  const { main } = shape;
  if (main.form === "point") return main.at;
  if (main.form === "circle") return main.centre;
  if (main.form === "line") return null;
  const [first] = main.outline.points;
  return first === undefined ? null : middleOf(main.outline.points, first.place);
}

/** A shape as a line; null for a point or a circle. */
export function shapeLine({ main }: LiveShape): LiveLine | null {
  return main.form === "line" ? main.line : main.form === "outline" ? main.outline : null;
}

/** Writes a shape into the book. */
export function sealShape({ main }: LiveShape, book: BookWriter, width: Quantity<"length"> | null): Shape {
  const spots = (line: LiveLine) => line.points.map(book.sealPoint);
  switch (main.form) {
    case "point":
      return { form: "point", at: book.sealPoint(main.at) };
    case "line":
      return { form: "line", line: spots(main.line), ...(width === null ? {} : { width }) };
    case "outline":
      return { form: "outline", outline: spots(main.outline), holes: main.holes.map(spots) };
    case "circle":
      break;
  }
  return { form: "circle", centre: book.sealPoint(main.centre), across: book.seal(main.across, "length", main.place) };
}
