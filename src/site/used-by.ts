// Which gates and surfaces a manoeuvre uses.

import { type Feature, propertyOf } from "../model/plan.ts";
import type { Scene } from "../model/reading.ts";
import { names } from "./drive-ends.ts";
import { centreFigure, groundFigure } from "./live-figure.ts";
import { nearPlaces } from "./near-places.ts";

/** Names of the ground that a manoeuvre uses, as the plan writes them. */
export function groundNames(manoeuvre: Feature): readonly string[] {
  return [...new Set(names(manoeuvre, "comes_in_by", "goes_out_by", "on", "to", "start.on", "end.on"))];
}

/** Whether a manoeuvre goes through a gate: it names it, or the gate lies across a surface that it uses. */
export function goesThrough(manoeuvre: Feature, gate: Feature, scene: Scene): boolean {
  const used = groundNames(manoeuvre);
  if (used.includes(gate.name)) return true;
  const line = centreFigure(gate);
  if (!line) return false;
  return scene.standing("surfaces").some((surface) => {
    const figure = used.includes(surface.name) ? groundFigure(surface) : null;
    return figure !== null && nearPlaces(line, figure, 0, scene.read).length > 0;
  });
}

/** Whether a manoeuvre uses a surface or crossing: it names it or what it is on, or the crossing lies across ground that it uses. */
export function usesWay(manoeuvre: Feature, way: Feature, scene: Scene): boolean {
  const used = groundNames(manoeuvre);
  const on = propertyOf(way, "on");
  if (used.includes(way.name) || (typeof on === "string" && used.includes(on))) return true;
  const figure = way.kind === "crossing" ? groundFigure(way) : null;
  if (!figure) return false;
  return scene.standing("surfaces").some((surface) => {
    const ground = used.includes(surface.name) ? groundFigure(surface) : null;
    return ground !== null && nearPlaces(figure, ground, 0, scene.read).length > 0;
  });
}

/** A manoeuvre's vehicle, where it stands in the plan at this stage. */
export function vehicleOf(manoeuvre: Feature, scene: Scene): Feature | null {
  const [name] = names(manoeuvre, "vehicle");
  return scene.standing("vehicles").find((vehicle) => vehicle.name === name) ?? null;
}
