// Which sort of doubt a number of a feature carries. By the name of the property; the first row that fits decides.

/** `exact`: a product size, a count, a wish or a figure from papers: as written. */
export type DoubtClass =
  | "exact"
  | "level"
  | "plan"
  | "height"
  | "crown"
  | "girth"
  | "treeHeight"
  | "wireHeight"
  | "slope"
  | "layer";

/** Kinds whose numbers come from papers, catalogues or wishes; nobody tapes or builds them. */
const paperKinds: ReadonlySet<string> = new Set([
  "vehicles",
  "trailers",
  "manoeuvres",
  "jobs",
  "stock",
  "carriers",
  "crew",
  "animals",
  "approach",
]);

const rows: readonly (readonly [fits: RegExp, sort: DoubtClass])[] = [
  [/^(?:trees|hedges)\.(?:crown|spread)\b/, "crown"],
  [/^(?:trees|hedges)\.(?:girth|stems?|stem_.*)\b(?!.*height)/, "girth"],
  [/^trees\.height$/, "treeHeight"],
  [/^services\.overhead\.height$/, "wireHeight"],
  [/\blayers\b.*\bthickness$/, "layer"],
  [
    /\b(?:bore|mesh|diameter|layers|voids|spacing|stone|largest|size|class|wires?|keep_clear|chicken|roughness)\b/,
    "exact",
  ],
  [
    /\b(?:width|across|radius|length|clear|span|reach|spread|setback|apart|aisle|apron|outermost|line_good_to|verge|footway)$/,
    "plan",
  ],
];

/** The class of a length at `kind.property.path`; levels are told by their form. */
export function lengthClass(kind: string, path: string, isLevel: boolean): DoubtClass {
  if (paperKinds.has(kind)) return "exact";
  if (isLevel) return "level";
  const dotted = `${kind}.${path}`;
  return rows.find(([fits]) => fits.test(dotted))?.[1] ?? "height";
}

/** The class of any number of a feature. Only lengths and slopes are taped, levelled or built. */
export function doubtClass(number: {
  readonly kind: string;
  readonly path: string;
  readonly dimension: string;
  readonly level: boolean;
}): DoubtClass {
  if (number.dimension === "length") return lengthClass(number.kind, number.path, number.level);
  if (number.dimension === "slope" && !paperKinds.has(number.kind)) return "slope";
  return "exact";
}
