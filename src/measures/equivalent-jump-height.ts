// What: how high must an animal be able to jump to clear this fence from what stands beside it?
// Formula: Heq = (D + sqrt(D^2 + d^2)) / 2, D = F - h0 (m), F height of the fence top, h0 of the stand, d the clear gap on plan (m).
// Source: parabola of reach y = H - x^2/(4H) of a point mass (COMPUTED; a search over launch angles agrees); tables `jump.own-calculation`.
// Valid: standing leap, level ground between; no run-up, no scramble (0.3 to 0.6 m more where the top can be gripped), no climbing.
// Witness: the gap from the stand's edge to the fence.

import { featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Measure, Scene, Subject } from "../model/reading.ts";
import { centreFigure } from "../site/live-figure.ts";
import { type NearPlace, nearPlaces } from "../site/near-places.ts";
import { keptSide, otherSide, type Side, sideOfLine } from "../site/sides.ts";
import { type Stand, standOf } from "../site/stands.ts";

/** Farther gaps ask for more than any table's animal: at 20 m Heq is over 9 m with the stand level with the top. */
const reach = 20;

/** Heq of a gap d and a height difference D, metres. A gap that is overlapped counts as none. */
export function jumpAskedFor(gap: number, rise: number): number {
  const clear = Math.max(0, gap);
  return (rise + Math.sqrt(rise * rise + clear * clear)) / 2;
}

export const equivalentJumpHeight: Measure = {
  name: "equivalent-jump-height",
  dimension: "length",
  roles: { fence: "a fence with its height", stand: "a wall, bank, heap, building, tree, obstacle or tank" },
  parameters: { from: { words: ["either side", "outside", "inside"], default: "either side" } },
  phrase: "from {stand} a rise of {found} clears it",
  below: { phrase: "{stand} stands {found} above its top" },
  shortName: "rise asked for",
  find: (subject, scene, parameters) => {
    const { fence, stand: feature } = subject;
    const line = fence && centreFigure(fence);
    const stand = feature && standOf(feature);
    if (!fence || !line || !stand) return { is: "does-not-bear" };
    const top = propertyOf(fence, "height");
    const missing = "missing" in stand ? [...stand.missing] : [];
    if (!isQuantity(top))
      missing.push({
        feature: fence,
        property: "height",
        asks: `the height of ${featureWords(fence)}`,
        dimension: "length",
        why: "missing",
      });
    const side = wantedSide(subject, scene, String(parameters["from"]));
    if (side === "unknown")
      missing.push({
        feature: fence,
        property: "keep_in_side",
        asks: `on which side of ${featureWords(fence)} the stock is`,
        why: "missing",
      });
    const near =
      "missing" in stand
        ? []
        : nearPlaces(line, stand.edge, reach, scene.read).filter((place) => onSide(place, subject, scene.read, side));
    if (!("missing" in stand) && near.length === 0) return { is: "does-not-bear" };
    if (missing.length > 0 || "missing" in stand || !isQuantity(top)) return { is: "missing", missing };
    return { is: "found", places: near.map((place) => candidate(place, stand, (read) => read(top))) };
  },
};

/** The side that stands are looked for on; `unknown` where the plan does not tell. */
function wantedSide(subject: Subject, scene: Scene, from: string): Side | "either" | "unknown" {
  if (from === "either side" || !subject["fence"]) return "either";
  const kept = keptSide(subject["fence"], scene);
  if (!kept) return "unknown";
  return from === "inside" ? kept : otherSide(kept);
}

/** Whether the stand's end of a place lies on the wanted side; places that touch or cross the fence always count. */
function onSide(place: NearPlace, subject: Subject, read: Read, side: Side | "either" | "unknown"): boolean {
  if (side === "either" || side === "unknown" || !subject["fence"]) return true;
  const at = sideOfLine(subject["fence"], place.bareEnds(read)[1], read);
  return at === null || at === side;
}

function candidate(near: NearPlace, stand: Stand, top: (read: Read) => number): CandidatePlace {
  return {
    key: near.key,
    value: (read) => jumpAskedFor(near.distance(read), top(read) - read(stand.height)),
    witness: (read) => [{ part: "found", form: "line", points: near.ends(read), label: "leap" }],
  };
}
