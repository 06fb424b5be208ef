// Whether data keeps to a schema, and nothing more: most files do, and for them the long checks that can tell every
// fault in words need not be loaded. Knows the keywords in `Form`; the compiler of the forms refuses any other.

/** One schema as data, of the 2020-12 drafts' words. References are places in the list of all forms. */
export interface Form {
  readonly $ref?: number;
  readonly type?: readonly string[];
  readonly enum?: readonly (string | number | boolean | null)[];
  readonly pattern?: string;
  readonly minLength?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly uniqueItems?: boolean;
  readonly items?: Form;
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, Form>>;
  readonly additionalProperties?: Form | boolean;
  readonly propertyNames?: Form;
  readonly dependentRequired?: Readonly<Record<string, readonly string[]>>;
  readonly minProperties?: number;
  readonly maxProperties?: number;
  readonly allOf?: readonly Form[];
  readonly anyOf?: readonly Form[];
  readonly oneOf?: readonly Form[];
  readonly not?: Form;
  readonly if?: Form;
  readonly then?: Form;
  readonly else?: Form;
}

type Data = Readonly<Record<string, unknown>>;

/** Whether `data` keeps to `form`, whose references point into `forms`. */
export function keepsTo(forms: readonly Form[], form: Form, data: unknown): boolean {
  if (form.type !== undefined && !form.type.some((type) => isOfType(type, data))) return false;
  if (form.enum !== undefined && !form.enum.includes(data as string)) return false;
  if (form.$ref !== undefined && !keepsTo(forms, forms[form.$ref] as Form, data)) return false;
  if (!choicesFit(forms, form, data)) return false;
  if (typeof data === "string") return textFits(form, data);
  if (typeof data === "number") return numberFits(form, data);
  if (Array.isArray(data)) return listFits(forms, form, data);
  return typeof data !== "object" || data === null || groupFits(forms, form, data as Data);
}

function isOfType(type: string, data: unknown): boolean {
  switch (type) {
    case "number":
      return typeof data === "number" && Number.isFinite(data);
    case "integer":
      return Number.isInteger(data);
    case "array":
      return Array.isArray(data);
    case "object":
      return typeof data === "object" && data !== null && !Array.isArray(data);
    case "null":
      return data === null;
    default:
      return typeof data === type;
  }
}

function choicesFit(forms: readonly Form[], form: Form, data: unknown): boolean {
  const fits = (one: Form) => keepsTo(forms, one, data);
  if (form.allOf !== undefined && !form.allOf.every(fits)) return false;
  if (form.anyOf !== undefined && !form.anyOf.some(fits)) return false;
  if (form.oneOf !== undefined && form.oneOf.filter(fits).length !== 1) return false;
  if (form.not !== undefined && fits(form.not)) return false;
  if (form.if === undefined) return true;
  const branch = fits(form.if) ? form.then : form.else;
  return branch === undefined || fits(branch);
}

const patterns = new Map<string, RegExp>();

function textFits({ minLength, pattern }: Form, text: string): boolean {
  // Letters are counted as code points; a text is never longer in those than in its own units.
  if (minLength !== undefined && (text.length < minLength || Array.from(text).length < minLength)) return false;
  if (pattern === undefined) return true;
  const known = patterns.get(pattern) ?? new RegExp(pattern, "u");
  patterns.set(pattern, known);
  return known.test(text);
}

/** Numbers that are not finite are no numbers: only a stated type refuses them. */
function numberFits({ minimum, maximum, exclusiveMinimum }: Form, number: number): boolean {
  if (!Number.isFinite(number)) return true;
  return (
    number >= (minimum ?? -Infinity) &&
    number <= (maximum ?? Infinity) &&
    (exclusiveMinimum === undefined || number > exclusiveMinimum)
  );
}

function listFits(forms: readonly Form[], form: Form, list: readonly unknown[]): boolean {
  if (list.length < (form.minItems ?? 0) || list.length > (form.maxItems ?? Infinity)) return false;
  const { items } = form;
  if (items !== undefined && !list.every((item) => keepsTo(forms, items, item))) return false;
  return form.uniqueItems !== true || eachOnce(list);
}

function eachOnce(list: readonly unknown[]): boolean {
  const groups = list.filter((item) => typeof item === "object" && item !== null);
  if (new Set(list).size !== list.length) return false;
  return groups.every((item, i) => !groups.slice(0, i).some((other) => isSame(item, other)));
}

function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => Object.hasOwn(b, key) && isSame((a as Data)[key], (b as Data)[key]));
}

function groupFits(forms: readonly Form[], form: Form, group: Data): boolean {
  if (!keysFit(form, group)) return false;
  const { properties, additionalProperties, propertyNames } = form;
  for (const [key, value] of Object.entries(group)) {
    if (propertyNames !== undefined && !keepsTo(forms, propertyNames, key)) return false;
    const isNamed = properties !== undefined && Object.hasOwn(properties, key);
    const own = isNamed ? properties[key] : additionalProperties;
    // A named key that holds nothing at all counts as absent.
    if (own === undefined || own === true || (isNamed && value === undefined)) continue;
    if (own === false || !keepsTo(forms, own, value)) return false;
  }
  return true;
}

function keysFit({ required, dependentRequired, minProperties, maxProperties }: Form, group: Data): boolean {
  const has = (key: string) => group[key] !== undefined;
  if (required !== undefined && !required.every(has)) return false;
  for (const [key, needed] of Object.entries(dependentRequired ?? {})) if (has(key) && !needed.every(has)) return false;
  if (minProperties === undefined && maxProperties === undefined) return true;
  const count = Object.keys(group).length;
  return count >= (minProperties ?? 0) && count <= (maxProperties ?? Infinity);
}
