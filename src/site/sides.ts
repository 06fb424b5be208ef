// Which side of a line something is on, and on which side of a fence the stock is kept.

import { runAndLeft } from "../geometry/line.ts";
import { type Feature, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Point, Scene } from "../model/reading.ts";
import { liveSpot } from "./live-figure.ts";

export type Side = "left" | "right";

export function otherSide(side: Side): Side {
  return side === "left" ? "right" : "left";
}

/** Side of a fence on which animals are kept in: its own `keep_in_side`, the stock drawn `on` it, or what `keep_out_side` leaves. */
export function keptSide(fence: Feature, scene: Scene): Side | null {
  const own = sideWord(propertyOf(fence, "keep_in_side"));
  if (own) return own;
  for (const animals of scene.standing("animals")) {
    const on = propertyOf(animals, "on");
    const match = typeof on === "string" ? /^(left|right) of (.+)$/.exec(on) : null;
    if (match?.[2] === fence.name) return match[1] as Side;
  }
  const outside = sideWord(propertyOf(fence, "keep_out_side"));
  return outside ? otherSide(outside) : null;
}

function sideWord(value: unknown): Side | null {
  return value === "left" || value === "right" ? value : null;
}

/** Side of a line feature on which a point lies, at the plan's own values; null for a point on the line or past its ends' extension. */
export function sideOfLine(line: Feature, point: Point, read: Read): Side | null {
  if (line.shape?.form !== "line") return null;
  const place = runAndLeft(
    line.shape.line.map((spot) => liveSpot(spot)(read)),
    point,
  );
  if (!place || Math.abs(place.left) < 1e-9) return null;
  return place.left > 0 ? "left" : "right";
}
