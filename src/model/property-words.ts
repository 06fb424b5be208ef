// Words of a property for a sentence that says `its ... is` or `the ... of`.

/** Properties whose dotted names do not read as words. */
const named: Readonly<Record<string, string>> = {
  "retains.height": "height retained",
  "lean.by": "lean",
  "overhang.by": "reach of overhang",
  bottom_gap: "gap at the bottom",
  buried: "depth buried",
  clear: "clear width",
  batter: "slope of the sides",
  "base.beyond": "base beyond it",
  largest: "largest piece",
  lift: "layer",
  piece: "weight of one piece",
  plant_beside: "distance to the machine",
  spoil_beside: "distance to the spoil",
  "mesh.width": "width of opening",
  "mesh.height": "height of opening",
  heads_rebuilt: "length of wall rebuilt",
  "energiser.signs_every": "distance between signs",
  "energiser.earth_at": "earth of the energiser",
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
  into: "receiving water or ground",
  two_peg_error: "error by the two-peg test",
  step_left: "step left when it is gone",
  widest_gap: "widest gap between levels",
  runs_to: "way out for the rain",
};

/** `damp_course` -> `damp course`, `posts.depth` -> `depth of posts`, `retains.height` -> `height retained`. */
export function propertyWords(property: string): string {
  return named[property] ?? property.split(".").reverse().join(" of ").replaceAll("_", " ");
}

/** How a number is told of which `its ... is` does not read well. */
const stated: Readonly<Record<string, string>> = {
  spoil_beside: "its spoil lies {found} from the edge",
  plant_beside: "the machine works {found} from its edge",
  buried: "it is buried {found} deep",
  largest: "its largest piece is {found}",
  piece: "one piece weighs {found}",
  lift: "it is laid in layers of {found}",
  heads_rebuilt: "{found} of wall is rebuilt beside it",
  waits: "it waits {found}",
  "energiser.signs_every": "its signs stand {found} apart",
  "energiser.earth_at": "its energiser's earth lies {found} off",
  "overhang.by": "it overhangs by {found}",
  "lean.by": "it leans by {found}",
};

/** The words for a stated number of a property, with a slot for it; null where `its ... is` will do. */
export function statedPhrase(property: string): string | null {
  return stated[property] ?? null;
}

/** What is asked for where a property answers a question; `{whose}` is the thing. */
const asked: Readonly<Record<string, string>> = {
  existing: "whether {whose} is there already or new",
  keep_in: "what {whose} must keep in, or keep out",
  carries: "what runs in {whose}",
  for: "what {whose} is used for",
  made_by: "whether {whose} was cut, filled or is natural",
  mown_by: "what {whose} is mown with",
  of: "what {whose} is made of",
  toilets: "how many toilets run into {whose}",
  barbed: "whether {whose} has barbs",
  drained: "how water gets out from behind {whose}",
  designed_by: "who designed {whose}",
  dug_by: "what {whose} is dug by",
  "overhead.owner_says": "what the owner of {whose} says about it",
  "retains.surcharge": "whether a load stands on the ground behind {whose}",
  "retains.wet": "whether the ground behind {whose} is wet",
  beside_public_way: "whether {whose} runs beside a public way",
  columnar: "whether {whose} grows like a column",
  by_hand: "whether {whose} is done by hand",
  habitable: "whether somebody lives or sleeps in {whose}",
  permeable: "whether rain soaks through {whose}",
  public: "whether {whose} is public",
  somebody_goes_in: "whether somebody goes into {whose}, even to kneel",
  services_traced: "the day on which cables and pipes were traced at {whose}",
  shaken: "whether traffic or machines shake the ground beside {whose}",
  smooth: "whether {whose} is smooth",
  under_vehicles: "whether vehicles pass over {whose}",
  veteran: "whether {whose} is very old (a veteran)",
  water: "whether water stands or runs in {whose}",
  dug_before: "whether the ground of {whose} was dug before",
  end_stops: "whether {whose} has a stop at each end",
  engine_in_it: "whether an engine or gas bottle stands in {whose}",
  fenced: "whether {whose} is fenced",
  heads_rebuilt: "how far back the wall is rebuilt at {whose}",
  ladder: "whether there is a ladder in {whose}",
  largest: "how large the largest piece of {whose} is",
  left_open: "how long {whose} is left open",
  lift: "how thick the layers of {whose} are",
  "lid.child_can_open": "whether a child can open the lid of {whose}",
  "lid.load_class": "the load class of the lid of {whose}",
  "base.beyond": "how far the base reaches beyond {whose}",
  opens_uphill: "whether {whose} opens uphill",
  origin: "where {whose} comes from",
  "overhead.carried_by": "what carries the wires of {whose}",
  "overhead.voltage": "the voltage of {whose}",
  plant_beside: "how near the edge of {whose} a machine works",
  poisons_stock: "whether {whose} poisons stock",
  "powered.stops_when_touched": "whether {whose} stops when it touches somebody",
  protected: "whether {whose} is protected",
  rail: "whether there is a rail at {whose}",
  seen_in_it: "what was seen in {whose} that does not belong there",
  spoil_beside: "how near the edge of {whose} the spoil lies",
  "struts.guarded": "whether the struts of {whose} are guarded",
  supported: "how the sides of {whose} are held",
  swing: "which way {whose} swings",
  top_hinge: "how the top hinge of {whose} is fixed",
  traced_by: "how {whose} was traced",
  wind: "how exposed {whose} is to the wind",
  wind_zone: "in which wind region {whose} stands",
  "carries.mass": "what mass {whose} is known to carry",
  "driven.width": "how wide the vehicle of {whose} is",
  "driven.width_with_mirrors": "how wide the vehicle of {whose} is with its mirrors",
};

/** What to ask for where a plan lacks a property: `whether gate "lane" opens uphill`, else `the height of gate "lane"`. */
export function askWords(property: string, whose: string): string {
  return asked[property]?.replace("{whose}", whose) ?? `the ${propertyWords(property)} of ${whose}`;
}
