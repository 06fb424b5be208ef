// What: what part of the stone that the layers need is there?
// Formula: rolled volume in stock over sum of area x rolled thickness x (1 + waste); loose volume / b and mass / density give the rolled volume, b loose over rolled.
// Source: volumes are plane geometry; b and the density are the card's (tables of weights), with their doubt.
// Valid: layers of surfaces named under `for` whose `of` is the stock's word for word; one material, no sorting.
// Witness: none.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Measure, Missing, Parameters } from "../model/reading.ts";
import { namesIn } from "../site/days.ts";
import { groundArea, type Layer, layersOf } from "../site/layer-volumes.ts";

export const stockShare: Measure = {
  name: "stock-share",
  dimension: "share",
  roles: { stock: "a stock of material with what it is for" },
  parameters: {
    /** Loose volume for one rolled. */
    loose_for_rolled: { dimension: "count", default: 1 },
    rolled_density: { dimension: "density", default: 0 },
    /** Standard doubt of those two, as a share. */
    doubt: { dimension: "share", default: 0 },
  },
  phrase: "it holds {found} of what is needed",
  shortName: "part of the need in stock",
  find: (subject, scene, parameters) => {
    const { stock } = subject;
    if (!stock) return { is: "does-not-bear" };
    const surfaces = scene.standing("surfaces").filter((surface) => namesIn(stock, "for").includes(surface.name));
    const needed = surfaces.flatMap((surface) => ownLayers(surface, stock).map((layer) => ({ surface, layer })));
    if (needed.length === 0) return { is: "does-not-bear" };
    const have = rolledVolume(stock, parameters);
    const missing = [
      ...("missing" in have ? have.missing : []),
      ...needed.flatMap(({ surface, layer }) => (layer.thickness ? [] : [thicknessOf(surface)])),
    ];
    if (missing.length > 0 || "missing" in have) return { is: "missing", missing };
    const waste = propertyOf(stock, "waste");
    const need = (read: Read) =>
      needed.reduce((sum, { surface, layer }) => sum + volumeOf(surface, layer, read, parameters), 0) *
      (1 + (isQuantity(waste) ? read(waste) : 0));
    const value = (read: Read) => have.volume(read) / need(read);
    const methodU = have.converted ? value(scene.read) * Number(parameters["doubt"]) : 0;
    return { is: "found", places: [{ key: "stock", value, methodU, witness: () => [] }] };
  },
};

function ownLayers(surface: Feature, stock: Feature): readonly Layer[] {
  return layersOf(surface).filter((layer) => layer.of === propertyOf(stock, "of"));
}

function volumeOf(surface: Feature, layer: Layer, read: Read, parameters: Parameters): number {
  const thick = layer.thickness ? read(layer.thickness) : 0;
  const volume = groundArea(surface, read) * thick;
  return layer.state === "loose" ? volume / Number(parameters["loose_for_rolled"]) : volume;
}

type Have =
  | { readonly volume: (read: Read) => number; readonly converted: boolean }
  | { readonly missing: readonly Missing[] };

/** Rolled volume of a stock, from its volume in a named state or from its mass. */
function rolledVolume(stock: Feature, parameters: Parameters): Have {
  const mass = propertyOf(stock, "mass");
  if (isQuantity(mass)) {
    const density = Number(parameters["rolled_density"]);
    return { volume: (read) => read(mass) / density, converted: true };
  }
  const volume = propertyOf(stock, "volume");
  const state = propertyOf(stock, "state");
  const ask = (property: string, asks: string): Missing => ({ feature: stock, property, asks, why: "missing" });
  if (!isQuantity(volume)) return { missing: [ask("volume", `how much of ${featureWords(stock)} there is`)] };
  if (state === "compacted") return { volume: (read) => read(volume), converted: false };
  if (state !== "loose")
    return { missing: [ask("state", `whether the volume of ${featureWords(stock)} is loose or as rolled`)] };
  const ratio = Number(parameters["loose_for_rolled"]);
  return { volume: (read) => read(volume) / ratio, converted: true };
}

function thicknessOf(surface: Feature): Missing {
  return {
    feature: surface,
    property: "layers",
    asks: `how thick the layers of ${featureWords(surface)} are`,
    dimension: "length",
    why: "missing",
  };
}
