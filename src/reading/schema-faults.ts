// The errors of a compiled schema check, sorted: what is one cause becomes one entry, and noise goes.

import type { Path } from "../model/path.ts";
import type { SchemaPart } from "./schema-words.ts";

/** One error of a compiled check (made with `allErrors` and `verbose`). */
export interface SchemaError {
  readonly instancePath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly message?: string;
  readonly schema?: unknown;
  readonly parentSchema?: object;
  readonly data?: unknown;
}

/** An error with what belongs to it: the errors of the branches of a choice, or of a key as a name. */
export interface SchemaFault {
  readonly error: SchemaError;
  readonly path: Path;
  readonly schema: SchemaPart;
  readonly within: readonly SchemaFault[];
}

const choices: ReadonlySet<string> = new Set(["oneOf", "anyOf"]);
/** These only repeat that a branch failed, whose own errors are there. */
const repeats: ReadonlySet<string> = new Set(["if", "allOf", "discriminator"]);

/**
 * Sorts the errors of one check. A check writes the errors of a choice's branches right before the error of the choice
 * itself, and those of a key's name right before that of the name; so they are taken from the end of what was gathered.
 */
export function sortFaults(errors: readonly SchemaError[], data: unknown): readonly SchemaFault[] {
  const gathered: SchemaFault[] = [];
  for (const error of errors) {
    if (repeats.has(error.keyword) || isVoid(error)) continue;
    const within: SchemaFault[] = [];
    while (belongs(gathered.at(-1)?.error, error)) {
      const last = gathered.pop();
      if (last !== undefined) within.unshift(last);
    }
    const path = pathOf(error.instancePath, data);
    gathered.push({ error, path, schema: error.parentSchema ?? {}, within });
  }
  return gathered;
}

/** Wishes about keys say nothing about a value that has none: another error tells that it should be a group. */
function isVoid({ keyword, schema, data }: SchemaError): boolean {
  const isGroup = typeof data === "object" && data !== null && !Array.isArray(data);
  if (isGroup || !(choices.has(keyword) || keyword === "not")) return false;
  const branches: readonly unknown[] = Array.isArray(schema) ? schema : [schema];
  return branches.every((branch) => typeof branch === "object" && branch !== null && "required" in branch);
}

/** Whether `earlier` is only the reason for `later`. */
function belongs(earlier: SchemaError | undefined, later: SchemaError): boolean {
  if (earlier === undefined) return false;
  if (later.keyword === "propertyNames") {
    return earlier.instancePath === later.instancePath && earlier.data === later.params["propertyName"];
  }
  if (!choices.has(later.keyword)) return false;
  const isInside =
    earlier.instancePath === later.instancePath || earlier.instancePath.startsWith(`${later.instancePath}/`);
  if (!isInside || earlier.parentSchema === undefined || !Array.isArray(later.schema)) return isInside;
  const branches = branchParts(later.schema);
  return branches.refers || branches.parts.has(earlier.parentSchema);
}

interface BranchParts {
  readonly parts: ReadonlySet<object>;
  /** Whether a branch points elsewhere, so that its parts are not all here. */
  readonly refers: boolean;
}

const knownParts = new WeakMap<object, BranchParts>();

function branchParts(branches: readonly unknown[]): BranchParts {
  const known = knownParts.get(branches);
  if (known !== undefined) return known;
  const parts = new Set<object>();
  let refers = false;
  const waiting: unknown[] = [...branches];
  while (waiting.length > 0) {
    const part = waiting.pop();
    if (typeof part !== "object" || part === null || parts.has(part)) continue;
    parts.add(part);
    if ("$ref" in part) refers = true;
    waiting.push(...Object.values(part));
  }
  const found = { parts, refers };
  knownParts.set(branches, found);
  return found;
}

/** Keys and indexes from a JSON pointer (RFC 6901); a step is an index where the data has a list. */
function pathOf(pointer: string, data: unknown): Path {
  if (pointer === "") return [];
  const path: (string | number)[] = [];
  let at = data;
  for (const raw of pointer.slice(1).split("/")) {
    const step = raw.replaceAll("~1", "/").replaceAll("~0", "~");
    path.push(Array.isArray(at) ? Number(step) : step);
    at = typeof at === "object" && at !== null ? (at as Record<string, unknown>)[step] : undefined;
  }
  return path;
}
