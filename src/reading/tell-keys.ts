// Tells unknown and missing keys of a group, one problem for one cause.

import type { Path } from "../model/path.ts";
import {
  dependentWords,
  keyChoice,
  keyChoiceWords,
  lackingKeys,
  meantKey,
  missingKeyWords,
  unknownKeyWords,
} from "./key-faults.ts";
import type { KeyWords } from "./key-faults.ts";
import type { SchemaFault } from "./schema-faults.ts";
import type { SourceText } from "./source-text.ts";

/** A fault in words, at a key or value of the data. */
export interface Told extends KeyWords {
  readonly path: Path;
  readonly what: "key" | "value";
}

const unknownKeywords: ReadonlySet<string> = new Set(["additionalProperties", "unevaluatedProperties"]);
const keyKeywords: ReadonlySet<string> = new Set([...unknownKeywords, "required", "dependentRequired"]);

/** Whether a fault is about which keys there are. */
export function isKeyFault(fault: SchemaFault): boolean {
  return keyKeywords.has(fault.error.keyword) || keyChoice(fault) !== null;
}

/**
 * Tells unknown and missing keys, group by group; a key that is unknown and one that is missing are told as one where
 * the one is a slip of the other.
 */
export function tellKeys(faults: readonly SchemaFault[], document: SourceText): readonly Told[] {
  const groups = new Map<string, SchemaFault[]>();
  for (const fault of faults.filter(isKeyFault)) {
    const group = groups.get(fault.error.instancePath) ?? [];
    group.push(fault);
    groups.set(fault.error.instancePath, group);
  }
  return [...groups.values()].flatMap((group) => tellGroup(group, document));
}

function tellGroup(group: readonly SchemaFault[], document: SourceText): readonly Told[] {
  const missing = new Set(group.flatMap(missingKeys));
  const unknown = new Map(group.flatMap((fault) => unknownKeys(fault).map((key) => [key, fault] as const)));
  const met = new Set<string>();
  const told: Told[] = [];
  for (const [key, fault] of unknown) {
    const absent = [...missing].filter((word) => !met.has(word));
    const meant = meantKey(key, { absent, synonyms: fault.schema["x-synonyms"] });
    if (meant !== null) met.add(meant);
    const words = unknownKeyWords(key, fault, new Set(absent));
    told.push({ path: [...fault.path, key], what: "key", ...words });
  }
  const isTold = (key: string, path: Path) => met.has(key) || document.isSpoiled?.([...path, key]) === true;
  return [...told, ...group.flatMap((fault) => tellMissing(fault, isTold))];
}

function tellMissing(fault: SchemaFault, isTold: (key: string, path: Path) => boolean): readonly Told[] {
  const { error, path } = fault;
  const choice = keyChoice(fault);
  const keys = missingKeys(fault);
  if (keys.some((key) => isTold(key, path))) return [];
  if (choice !== null) return [{ path, what: "key", ...keyChoiceWords(fault, choice) }];
  if (error.keyword === "dependentRequired") return [{ path, what: "key", ...dependentWords(fault) }];
  return keys.map((key): Told => ({ path, what: "key", ...missingKeyWords(key, fault) }));
}

/** The keys a fault finds missing. */
function missingKeys(fault: SchemaFault): readonly string[] {
  const { keyword, params } = fault.error;
  if (keyword === "required" || keyword === "dependentRequired") return [String(params["missingProperty"])];
  const choice = keyChoice(fault);
  return choice === null ? [] : lackingKeys(fault, choice).flat();
}

function unknownKeys({ error }: SchemaFault): readonly string[] {
  if (!unknownKeywords.has(error.keyword)) return [];
  return [String(error.params["additionalProperty"] ?? error.params["unevaluatedProperty"])];
}
