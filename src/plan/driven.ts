// The vehicle of a manoeuvre beside the manoeuvre's own properties, so that a rule can ask for both.

import type { Feature } from "../model/plan.ts";

/** What `driven.like` says of a vehicle that is taken for no published one. */
const itself = "itself";

/** Every manoeuvre gets `driven`: the properties of the vehicle that it names, in the version that stands then. */
export function withDriven(features: readonly Feature[]): readonly Feature[] {
  return features.map((feature) => {
    const vehicle = feature.kind === "manoeuvre" ? vehicleOf(feature, features) : null;
    return vehicle
      ? { ...feature, properties: { ...feature.properties, driven: { like: itself, ...vehicle.properties } } }
      : feature;
  });
}

function vehicleOf(manoeuvre: Feature, features: readonly Feature[]): Feature | null {
  const name = manoeuvre.properties["vehicle"];
  const versions = features.filter((feature) => feature.kind === "vehicle" && feature.name === name);
  return versions.findLast((version) => version.from <= manoeuvre.from) ?? versions[0] ?? null;
}
