// The resolved plan: features with sealed numbers, stages, and what the owner said. Words only.

import type { Place } from "./path.ts";
import type { NumberBook, Quantity, Spot } from "./quantity.ts";

/** The forms that a feature can take on the ground. Plane metres. */
export type Shape =
  | { readonly form: "point"; readonly at: Spot }
  | { readonly form: "line"; readonly line: readonly Spot[]; readonly width?: Quantity<"length"> }
  | { readonly form: "outline"; readonly outline: readonly Spot[]; readonly holes: readonly (readonly Spot[])[] }
  | { readonly form: "circle"; readonly centre: Spot; readonly across: Quantity<"length"> };

/** A property of a feature: a sealed number, a word, a flag, a point, a list, or a group of properties. */
export type Property = Quantity | Spot | string | boolean | readonly Property[] | Properties;
export interface Properties {
  readonly [name: string]: Property | undefined;
}

/** One thing in the plan. `from` is the stage at whose end it stands; `until` the stage at whose start it goes. */
export interface Feature {
  readonly kind: string;
  readonly name: string;
  readonly place: Place;
  readonly existing: boolean;
  /** True where the plan gives neither `from` nor `existing`: it is taken to stand, and asked about where that matters. */
  readonly standingUnsaid?: boolean;
  /** True where it stands already and `changes` make it take more ground or go deeper: works like what is new. */
  readonly reworked?: boolean;
  readonly from: number;
  readonly until: number | null;
  /** True where `until` is not the end of the thing but of this version of it (plan key `changes`). */
  readonly superseded?: boolean;
  readonly shape: Shape | null;
  readonly properties: Properties;
  /** Set on a part of a feature that is a subject by itself (a drain run, an opening): the whole it belongs to. */
  readonly partOf?: Feature;
}

/** An agreed departure from a rule, as the plan states it. */
export interface Departure {
  readonly rule: string;
  readonly features: readonly string[];
  readonly because: string;
  readonly agreedBy: string;
  readonly review: string;
  readonly place: Place;
}

/** A limit the owner brings to the plan (a permit, a letter). It stands before every published row. */
export interface LocalLimit {
  readonly rule: string;
  readonly grades: unknown;
  readonly from: string;
  readonly standing: string;
  readonly place: Place;
}

/** The part of a feature that a level was taken on. */
export type LevelledPart =
  | "foot left"
  | "foot right"
  | "foot"
  | "top"
  | "invert"
  | "cover"
  | "floor"
  | "damp course"
  | "sill"
  | "bed"
  | "water"
  | "crest"
  | "toe"
  | "kerb"
  | "underside";

/** A levelled place: ground where `of` is absent, else a named spot of a feature (foot, top, invert). */
export interface LevelledPlace {
  readonly spot: Spot | null;
  readonly level: Quantity<"length">;
  readonly of?: { readonly feature: string; readonly at?: number; readonly part: LevelledPart };
  /** Breaklines of the ground that it lies on, and where among the places on each. */
  readonly along?: readonly { readonly line: string; readonly order: number }[];
}

/** One measurement of the survey after the adjustment. Metres, or radians for a bearing. */
export interface SurveyMeasurement {
  /** In the words of the field: `tape P1 to P3`. */
  readonly words: string;
  readonly place: Place;
  readonly stations: readonly string[];
  readonly measured: number;
  /** Standard uncertainty by itself, without what it shares with others (the reel). */
  readonly u: number;
  /** Adjusted less measured. */
  readonly residual: number;
  /** 0: nothing checks it; 1: wholly checked by the others. */
  readonly redundancy: number;
  /** Residual over its own standard uncertainty; null where nothing checks it. */
  readonly standardised: number | null;
  /** True for a spare tape written under `checks`. */
  readonly check: boolean;
}

/** One run of levels from a known point to a known point. */
export interface LevelRun {
  readonly from: string;
  readonly to: string;
  readonly place: Place;
  readonly setUps: number;
  /** Level come home with less the level known, metres, before it was spread. */
  readonly misclosure: number;
  /** Standard uncertainty of that by the staff readings alone, metres. */
  readonly u: number;
}

/** What the survey says of itself; rules of the survey area read it. */
export interface SurveyFacts {
  /** v'Wv and its degrees of freedom; probability that honest measurements miss by as much or more. */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  readonly probability: number | null;
  readonly measurements: readonly SurveyMeasurement[];
  /** The angle at which two ties meet at a peg, radians, the best of its ties. */
  readonly cutAngles: readonly {
    readonly station: string;
    readonly ties: readonly [string, string];
    readonly angle: number;
    readonly place: Place;
  }[];
  readonly levelRuns: readonly LevelRun[];
}

/** What one more taped length would be good for, with the plan's own tape and hands. */
export interface PlanTape {
  /** Standard uncertainty by itself: handling + perMetre x length, metres. */
  readonly handling: number;
  readonly perMetre: number;
  /** Whole length of the reel, metres. */
  readonly reach: number;
  /** Class of the reel and the cause that all its lengths share; null where the plan does not give its class. */
  readonly reel: { readonly class: "I" | "II" | "III"; readonly cause: number } | null;
  /** What this tape reads too little by over a metre, since it is long or was warm, metres; below 0 where it reads too much. */
  readonly shortPerMetre: number;
}

/** The whole plan, resolved. */
export interface Plan {
  readonly file: string;
  readonly title: string;
  readonly places: readonly string[];
  readonly asOf: string | null;
  readonly stages: readonly string[];
  readonly none: readonly string[];
  readonly features: readonly Feature[];
  readonly pegs: ReadonlyMap<string, Spot>;
  readonly levels: readonly LevelledPlace[];
  /** What the plan says of the plot as a whole (`ground`, `rain`, `earth`), as properties of one feature of kind `site`. */
  readonly site?: Feature;
  /** Absent where the plan has no survey. */
  readonly surveyFacts?: SurveyFacts;
  /** The survey, its pegs and its runs of levels, as things that rules can be about; not among `features`. */
  readonly surveyed?: readonly Feature[];
  readonly tape?: PlanTape;
  /** The soil of the plot in the plan's words, where it names it. */
  readonly soil?: string;
  /** The two pegs of the plan's first line, where it has one. */
  readonly baseline?: readonly [string, string];
  readonly departures: readonly Departure[];
  readonly localLimits: readonly LocalLimit[];
  readonly numbers: NumberBook;
  /** Angle from the plan's north to true north, radians clockwise, where the plan is tied to the earth. */
  readonly trueNorth?: number | null;
  /** Kinds that were read but that this version builds nothing from; named in `not_checked`. */
  readonly notBuilt: readonly { readonly kind: string; readonly names: readonly string[] }[];
  /** What was assumed where the plan is silent (building tolerance, tape handling), for the foot of the report. */
  readonly assumed: readonly string[];
}

/** `fence "goat paddock"`: how a feature is called in a sentence. */
export function featureWords(feature: Feature): string {
  return `${feature.kind === "route" ? routeWords(feature) : feature.kind} "${feature.name}"`;
}

/** Where people go on foot is a way, or a place; where children play it is called so. */
function routeWords(feature: Feature): string {
  if (propertyOf(feature, "for") === "play") return "play place";
  return feature.shape?.form === "outline" ? "place for people" : "way on foot";
}

const steps = new Map<string, readonly string[]>();

/** Steps of a dotted path; paths come from cards and measures, so there are few of them. */
function stepsOf(dotted: string): readonly string[] {
  const known = steps.get(dotted) ?? dotted.split(".");
  steps.set(dotted, known);
  return known;
}

type RoleAndProperty = readonly [role: string, property: string];
const roles = new Map<string, RoleAndProperty>();

/** `wall.height` as role and property. */
export function roleAndProperty(dotted: string): RoleAndProperty {
  const known = roles.get(dotted);
  if (known) return known;
  const [role = "", ...property] = dotted.split(".");
  const made: RoleAndProperty = [role, property.join(".")];
  roles.set(dotted, made);
  return made;
}

/** A property by its dotted name (`retains.height`), or undefined where any step is missing. */
export function propertyOf(feature: Feature, dotted: string): Property | undefined {
  let at: Property | undefined = feature.properties;
  for (const step of stepsOf(dotted)) {
    if (at === undefined || typeof at !== "object" || Array.isArray(at)) return undefined;
    at = (at as Properties)[step];
  }
  return at;
}

/** Whether a property is a sealed number. */
export function isQuantity(property: Property | undefined): property is Quantity {
  return typeof property === "object" && property !== null && "dimension" in property && "id" in property;
}

/** Whether a property is a point. */
export function isSpot(property: Property | undefined): property is Spot {
  return typeof property === "object" && property !== null && "east" in property && "north" in property;
}
