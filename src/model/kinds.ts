// The kinds of feature: the plan's key (plural) and the word in a sentence (singular).

export const kinds = {
  boundaries: "boundary",
  roads: "road",
  buildings: "building",
  surfaces: "surface",
  walls: "wall",
  banks: "bank",
  ramps: "ramp",
  steps: "steps",
  fences: "fence",
  gates: "gate",
  strips: "strip",
  trees: "tree",
  hedges: "hedge",
  drains: "drain",
  chambers: "chamber",
  outfalls: "outfall",
  soakaways: "soakaway",
  drainage_fields: "drainage field",
  septic_tanks: "septic tank",
  catchments: "catchment",
  water: "water",
  tanks: "tank",
  heaps: "heap",
  services: "service",
  excavations: "excavation",
  animals: "animals",
  crossings: "crossing",
  approach: "approach",
  routes: "route",
  spoil_places: "spoil place",
  obstacles: "obstacle",
  thresholds: "threshold",
  vehicles: "vehicle",
  trailers: "trailer",
  manoeuvres: "manoeuvre",
  jobs: "job",
  stock: "stock",
  carriers: "carrier",
  crew: "crew",
} as const;

/** Kinds whose things are of different sorts, which the plan tells under `kind`. */
export const hasSorts: ReadonlySet<string> = new Set([
  "approach",
  "carrier",
  "chamber",
  "crossing",
  "obstacle",
  "septic tank",
  "service",
  "soakaway",
  "water",
]);

/** A key of the plan under which features stand. */
export type KindKey = keyof typeof kinds;

/** The plan's key of a kind word, or undefined. */
export function keyOfKind(word: string): KindKey | undefined {
  return (Object.keys(kinds) as KindKey[]).find((key) => kinds[key] === word);
}
