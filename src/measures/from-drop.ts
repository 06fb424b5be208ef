// What: how far do wheels, or the ground they may use, keep from an edge that they can go over?
// Formula: least distance on plan from the wheel tracks of the found path, those of a trailer among them, or from the surface, to the edge, where it lies above the drop.
// Source: plane geometry; the search of the manoeuvre (COMPUTED).
// Valid: crests of banks, rims of water, tops of walls that hold ground back; a surface counts with all of it, driven on or not.
// Witness: the nearest two points, and the wheel track.

import { sweptOutline } from "../motion/swept-outline.ts";
import { tyrePatchWidth } from "../motion/vehicle.ts";
import { type Feature, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Found, Measure, Point, Scene, Witness } from "../model/reading.ts";
import { dropEdge } from "../site/drop-edges.ts";
import { foundPath } from "../site/found-path.ts";
import { groundFigure, type LiveFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { trailerWheelTracks } from "../site/trailer-outlines.ts";
import { stretchNear } from "../site/stretch-near.ts";
import { widerFigures } from "../site/wider-stretches.ts";

/** Edges farther off than this are not looked at, m. */
const reach = 12;

/** Water that a bridge, culvert or ford leads over is met by the rules of crossings. */
const isCrossed = (edge: Feature, scene: Scene): boolean =>
  scene.standing("crossings").some((crossing) => propertyOf(crossing, "over") === edge.name);

interface Near {
  readonly figure: LiveFigure;
  readonly shown: (at: Point) => readonly Witness[];
}

function placesBeside(nears: readonly Near[], edge: Feature, scene: Scene): Found {
  const drop = dropEdge(edge, scene);
  if (!drop || isCrossed(edge, scene)) return { is: "does-not-bear" };
  const places = nears.flatMap(({ figure, shown }, index) =>
    nearPlaces(figure, drop.figure, reach, scene.read)
      .filter((near) => drop.isAbove(near.ends(scene.read)[0]))
      .map((near): CandidatePlace => ({
        key: `${index} ${near.key}`,
        value: near.distance,
        witness: (read) => [...shown(near.ends(read)[0]), { part: "found", form: "line", points: near.ends(read) }],
      })),
  );
  return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
}

export const wheelsFromDrop: Measure = {
  name: "wheels-from-drop",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre", edge: "a bank, a water or a wall that holds ground back" },
  parameters: { clear: { dimension: "length", default: 0 } },
  phrase: "its wheels keep {found} from the edge of {edge}",
  below: { phrase: "its wheels go {found} over the edge of {edge}", wanted: "clear" },
  shortName: "wheels to edge",
  find: ({ manoeuvre, edge }, scene, parameters) => {
    if (!manoeuvre || !edge || !dropEdge(edge, scene) || isCrossed(edge, scene)) return { is: "does-not-bear" };
    const found = foundPath(manoeuvre, scene, Number(parameters["clear"]));
    if ("not" in found) return found.not;
    const { drive, arcs } = found.path;
    const towing = sweptOutline(drive.plain, drive.start, arcs).wheelTracks;
    const towed = drive.trailer ? trailerWheelTracks(drive.trailer.plain, drive.start, arcs) : [];
    const tracks = [...towing, ...towed].map((track): Near => ({
      figure: {
        chains: [{ points: track.map((point) => (read: Read) => drive.carried(read).to(point)), ends: "open" }],
        solid: false,
        // The track is that of the tyre's outer face, which bulges; the middle of the tyre would be half its width in.
        grow: () => tyrePatchWidth / 2,
      },
      shown: (at) => [{ part: "thing", form: "line", points: stretchNear(track, at) }],
    }));
    return placesBeside(tracks, edge, scene);
  },
};

export const wayFromDrop: Measure = {
  name: "way-from-drop",
  dimension: "length",
  roles: { way: "a surface", edge: "a bank, a water or a wall that holds ground back" },
  parameters: {},
  phrase: "it comes within {found} of the edge of {edge}",
  below: { phrase: "it reaches {found} over the edge of {edge}", wanted: "clear" },
  shortName: "from the edge",
  find: ({ way, edge }, scene) => {
    const figure = way && groundFigure(way);
    if (!figure || !edge) return { is: "does-not-bear" };
    const all = [figure, ...widerFigures(way, scene.read)];
    return placesBeside(
      all.map((one) => ({ figure: one, shown: () => [] })),
      edge,
      scene,
    );
  },
};
