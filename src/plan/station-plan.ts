// One station as it is read: what it hangs on, what was observed, and where the adjustment may start.

import type { Place } from "../model/path.ts";
import type { Point } from "../model/reading.ts";
import { child, isAbsent, type Node } from "./node.ts";
import type { Written } from "./numbers.ts";
import { lengthsOf, type Observed, type StationWork } from "./station-observed.ts";
import type { StartFault } from "./station-start.ts";

/** A station as written: ready to be placed once what it hangs on has a place. */
export interface StationPlan {
  readonly name: string;
  readonly place: Place;
  readonly node: Node;
  readonly needs: readonly string[];
  readonly observed: readonly Observed[];
  readonly start: (at: (station: string) => Point) => Point | StartFault;
  /** The stations whose tapes fix it, for the angle at which they cut. */
  readonly tiedTo?: readonly string[];
}

/** What is known of the whole survey while one station is read. */
export interface StationReading extends StationWork {
  /** The station that the plan's grid hangs on, and the one whose line is east. */
  readonly datum: string | null;
  readonly firstLine: string | null;
  readonly lineOf: (text: string, node: Node) => readonly [string, string] | null;
  readonly station: (name: string, node: Node) => string | null;
  /** Turn from what a bearing is read against to the plan's north, radians; null (and a problem) where it is not known. */
  readonly turnFrom: (north: "grid" | "magnetic" | "true", node: Node) => number | null;
}

/** The lengths under a key that the form cannot do without. */
export function tapesOf(
  name: string,
  node: Node,
  { key, reading }: { readonly key: string; readonly reading: StationReading },
): readonly Written[] {
  const written = lengthsOf(child(node, key), node, reading.troubles);
  if (isAbsent(node, key)) {
    reading.troubles.report(node, {
      code: "missing-key",
      expected: `the key "${key}"${key === "left" ? ' or "right"' : ""}`,
      got: `peg ${name} without it`,
      hint: `write for instance "${key}: 2.30", in metres`,
    });
  }
  const bad = written.find((one) => key === "tape" && !(one.value > 0));
  if (bad !== undefined) {
    reading.troubles.report(bad.node, {
      code: "out-of-range",
      expected: "a length above 0",
      got: String(bad.value),
      hint: "measure it again",
    });
    return [];
  }
  return written;
}
