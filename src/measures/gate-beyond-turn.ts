// What: how much wider is a gateway than what a vehicle needs that turns into it off the road on one arc?
// Formula: clear width less sqrt(Rw^2 - (D - r)^2) - ri, D from the middle of the road to the gate; see the gate formula.
// Source: closed form of the swept ring (COMPUTED; a brute-force sweep agreed within 2 mm).
// Valid: a right-angle turn at full lock from the middle of the road; a driver who swings out, or shunts, needs less.
// Witness: the gateway.

import { gateOpeningBehindTurn } from "../motion/gate-opening.ts";
import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Found, Measure, Missing, Scene } from "../model/reading.ts";
import { centreFigure, liveSpot } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { goesThrough, vehicleOf } from "../site/used-by.ts";
import { type LiveVehicle, liveVehicle } from "../site/vehicle.ts";

/** A gate farther from every road than this is not turned into off the road, m. */
const reach = 30;

export const gateBeyondTurn: Measure = {
  name: "gate-beyond-turn",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre", gate: "a gate that it turns into off a road" },
  parameters: {},
  phrase: "{gate} leaves {found} beside the vehicle as it turns in",
  below: { phrase: "the vehicle needs {found} more than {gate} gives as it turns in", wanted: "to spare" },
  shortName: "beside the vehicle",
  find: ({ manoeuvre, gate }, scene) => {
    if (!manoeuvre || !gate || !goesThrough(manoeuvre, gate, scene)) return { is: "does-not-bear" };
    const vehicle = vehicleOf(manoeuvre, scene);
    const off = setbackOf(gate, scene);
    if (!vehicle || !off) return { is: "does-not-bear" };
    const clear = propertyOf(gate, "clear");
    const live = liveVehicle(vehicle);
    const missing = [
      ...("missing" in live ? live.missing : []),
      ...(isQuantity(clear) ? [] : [lack(gate, "clear", "clear width")]),
      ...("missing" in off ? off.missing : []),
    ];
    if ("missing" in live || "missing" in off || !isQuantity(clear)) return { is: "missing", missing };
    return spareAt({ gate, live, setback: off.setback, clear: (read) => read(clear) });
  },
};

function lack(feature: Feature, property: string, words: string): Missing {
  return { feature, property, asks: `the ${words} of ${featureWords(feature)}`, dimension: "length", why: "missing" };
}

type Live = (read: Read) => number;

function spareAt(at: { gate: Feature; live: LiveVehicle; setback: Live; clear: Live }): Found {
  const { gate, live, setback, clear } = at;
  const value: Live = (read) => {
    const vehicle = live(read);
    return vehicle ? clear(read) - gateOpeningBehindTurn(vehicle, setback(read)) : Number.NaN;
  };
  const posts = gate.shape?.form === "line" ? gate.shape.line.map(liveSpot) : [];
  return {
    is: "found",
    places: [
      {
        key: "gateway",
        value,
        witness: (read) => [{ part: "found", form: "line", points: posts.map((post) => post(read)) }],
      },
    ],
  };
}

/** Distance from the middle of the nearest road to the gate; null where no road is near. */
function setbackOf(gate: Feature, scene: Scene): { setback: Live } | { missing: readonly Missing[] } | null {
  const line = centreFigure(gate);
  if (!line) return null;
  const near = scene.standing("roads").flatMap((road) => {
    const edge = centreFigure(road);
    return edge ? nearPlaces(line, edge, reach, scene.read).map((place) => ({ road, place })) : [];
  });
  const [nearest] = near.sort((a, b) => a.place.distance(scene.read) - b.place.distance(scene.read));
  if (!nearest) return null;
  const width = propertyOf(nearest.road, "width");
  if (!isQuantity(width)) return { missing: [lack(nearest.road, "width", "width")] };
  return { setback: (read) => nearest.place.distance(read) + read(width) / 2 };
}
