// Words of a property for a sentence that says `its ... is` or `the ... of`.

/** Properties whose dotted names do not read as words. */
const named: Readonly<Record<string, string>> = {
  "retains.height": "height retained",
  "lean.by": "lean",
  "overhang.by": "reach of overhang",
  bottom_gap: "gap at the bottom",
  buried: "depth buried",
  clear: "clear width",
  "energiser.signs_every": "distance between signs",
  "energiser.earth_at": "earth of the energiser",
  "lid.child_can_open": "lid, whether a child can open it,",
  swing: "way it swings",
  of: "material",
  "finished.fall": "finished fall",
  "finished.crossfall": "finished crossfall",
  "formation.fall": "fall of the formation",
  made_of: "material",
  for: "use",
  carries: "sort of water",
  toilets: "number of toilets",
  made_by: "making (cut, fill or natural)",
  mown_by: "way of mowing",
  into: "place where it runs out",
  runs_to: "place where the rain goes",
};

/** `damp_course` -> `damp course`, `posts.depth` -> `depth of posts`, `retains.height` -> `height retained`. */
export function propertyWords(property: string): string {
  return named[property] ?? property.split(".").reverse().join(" of ").replaceAll("_", " ");
}
