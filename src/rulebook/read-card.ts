// A card: data -> Card, checked against the measure it names, without running anything.

import type { Card, Limit, Remedy, RoleChoice } from "../model/card.ts";
import type { Measure, Parameters } from "../model/reading.ts";
import { type Complain, isData, readNarrowed, readNumber, readRequirement } from "./bounds.ts";
import { canBothHold, readConditions } from "./conditions.ts";
import { type CardSurroundings, hintFor } from "./card-surroundings.ts";
import { nearMeasures } from "./near-measures.ts";

type Data = Readonly<Record<string, unknown>>;

/** A word or a number as text; nothing else is one. */
const plainText = (value: unknown): string =>
  typeof value === "string" || typeof value === "number" ? String(value) : "";
const text = (value: unknown): string => (typeof value === "string" ? value.trim() : "");

/** Reads one card. Returns null (with complaints) where it cannot be run. */
export function readCard(
  id: string,
  file: string,
  data: unknown,
  around: CardSurroundings,
  complain: Complain,
): Card | null {
  if (!isData(data)) {
    complain([], "a card: title, asks, about, measure, limits, fault ...", typeof data, "see any card under rules/");
    return null;
  }
  const measure = around.measures.get(text(data["measure"]));
  if (!measure) {
    complain(
      ["measure"],
      "a measure that there is",
      text(data["measure"]) || "nothing",
      nearMeasures(text(data["measure"]), [...around.measures.keys()]),
    );
    return null;
  }
  const about = readRole(data["about"], ["about"], complain);
  if (!about) return null;
  const against = data["against"] === undefined ? null : readRole(data["against"], ["against"], complain);
  const within = data["within"] === undefined ? null : readNumber(data["within"], "length", ["within"], complain);
  if (against && data["within"] === undefined)
    complain(
      ["against"],
      "the key within beside against",
      "nothing",
      "write within: 20 m, farther than the largest limit; pairs farther apart are not looked at",
    );
  const narrowed = readNarrowed(data["narrowed"], complain);
  checkRoles(measure, [about, against], complain);
  const limits = readLimits(data["limits"], measure, around, complain);
  checkDisjoint(limits, complain);
  return {
    id,
    area: id.split("/")[0] ?? "",
    title: text(data["title"]),
    asks: text(data["asks"]),
    about,
    against,
    within,
    narrowed,
    report: data["report"] === "each" ? "each" : "worst",
    measure: measure.name,
    parameters: readParameters(data["with"], measure, ["with"], complain),
    dimension: measure.dimension,
    stakes: data["stakes"] === "safety" || data["stakes"] === "nuisance" ? data["stakes"] : "damage",
    faultsOnly: text(data["shows"]) === "faults only",
    companions: readCompanions(data["companions"], around, complain),
    hazard: text(data["hazard"]) || null,
    limits,
    fault: text(data["fault"]),
    cautions: words(data["cautions"]),
    defersTo: text(data["defers_to"]) || null,
    remedies: readRemedies(data["remedies"]),
    file,
  };
}

function words(value: unknown): readonly string[] {
  return Array.isArray(value) ? value.filter((entry) => typeof entry === "string") : [];
}

function readRole(value: unknown, path: readonly string[], complain: Complain): RoleChoice | null {
  const entries = isData(value) ? Object.entries(value) : [];
  const [entry] = entries;
  if (!entry || entries.length !== 1) {
    complain(
      path,
      "one role with its kind, as {fence: fence}",
      JSON.stringify(value) ?? "nothing",
      "the left word is the role, the right one a kind or a list of kinds",
    );
    return null;
  }
  const [role, kinds] = entry;
  return { role, kinds: Array.isArray(kinds) ? kinds.map(String) : [String(kinds)] };
}

function checkRoles(measure: Measure, roles: readonly (RoleChoice | null)[], complain: Complain): void {
  const given = roles.flatMap((role) => (role ? [role.role] : []));
  for (const role of Object.keys(measure.roles)) {
    if (!given.includes(role))
      complain(
        ["about"],
        `a role "${role}" (${measure.roles[role] ?? ""})`,
        given.join(", "),
        `the measure ${measure.name} needs it under about or against`,
      );
  }
}

function readParameters(value: unknown, measure: Measure, path: readonly string[], complain: Complain): Parameters {
  const given = isData(value) ? value : {};
  for (const name of Object.keys(given)) {
    if (!Object.hasOwn(measure.parameters, name))
      complain(
        [...path, name],
        `one of ${Object.keys(measure.parameters).join(", ") || "no parameters"}`,
        name,
        `the measure ${measure.name} does not know this parameter`,
      );
  }
  const parameters: Record<string, string | number | boolean> = {};
  for (const [name, form] of Object.entries(measure.parameters)) {
    const raw = given[name];
    if (raw === undefined) parameters[name] = form.default;
    else if ("words" in form) parameters[name] = readWord(raw, form.words, [...path, name], complain) ?? form.default;
    else parameters[name] = readNumber(raw, form.dimension, [...path, name], complain) ?? form.default;
  }
  return parameters;
}

function readWord(raw: unknown, known: readonly string[], path: readonly string[], complain: Complain): string | null {
  const word = String(raw);
  if (known.length === 0 || known.includes(word)) return word;
  complain(path, `one of ${known.join(", ")}`, word, "use one of these words");
  return null;
}

function readCompanions(value: unknown, around: CardSurroundings, complain: Complain): Card["companions"] {
  const companions: Record<string, { measure: string; parameters: Parameters }> = {};
  for (const [name, entry] of Object.entries(isData(value) ? value : {})) {
    const measure = isData(entry) ? around.measures.get(text(entry["measure"])) : undefined;
    if (!measure || !isData(entry))
      complain(
        ["companions", name],
        "measure: a known measure",
        JSON.stringify(entry),
        "a companion reading names its measure",
      );
    else
      companions[name] = {
        measure: measure.name,
        parameters: readParameters(entry["with"], measure, ["companions", name, "with"], complain),
      };
  }
  return companions;
}

function readLimits(value: unknown, measure: Measure, around: CardSurroundings, complain: Complain): readonly Limit[] {
  if (!Array.isArray(value)) {
    complain(
      ["limits"],
      "a list of rows",
      JSON.stringify(value) ?? "nothing",
      "each row: {id, must or should, where, standing, source}",
    );
    return [];
  }
  return value.flatMap((row: unknown, index) => readLimit(row, index, measure, around, complain) ?? []);
}

function readLimit(
  row: unknown,
  index: number,
  cardMeasure: Measure,
  around: CardSurroundings,
  complain: Complain,
): Limit | null {
  const path = ["limits", index] as const;
  if (!isData(row)) return null;
  const own = rowMeasure(row, path, around, complain);
  const dimension = (own ? around.measures.get(own.name) : cardMeasure)?.dimension ?? cardMeasure.dimension;
  const must = row["must"] === undefined ? null : readRequirement(row["must"], dimension, [...path, "must"], complain);
  const should =
    row["should"] === undefined ? null : readRequirement(row["should"], dimension, [...path, "should"], complain);
  if (row["must"] === undefined && row["should"] === undefined)
    complain([...path], "must or should", "neither", "a row without a requirement decides nothing");
  const source = text(row["source"]);
  if (source && !around.knowsSource(source))
    complain([...path, "source"], "a source that is known", source, hintFor("source", source, around));
  const where = text(row["where"]) || "anywhere";
  if (!around.knowsPlace(where))
    complain([...path, "where"], "a place that is known", where, hintFor("place", where, around));
  for (const requirement of [must, should]) if (requirement) checkTables(requirement, path, around, complain);
  return {
    id: text(row["id"]) || `row-${index + 1}`,
    where,
    when: readConditions(row["when"], [...path, "when"], complain),
    ...(row["for_each"] === undefined ? {} : { forEach: text(row["for_each"]) }),
    ...(must ? { must } : {}),
    ...(should ? { should } : {}),
    ...(source ? { source } : {}),
    ...(row["clause"] === undefined ? {} : { clause: plainText(row["clause"]) }),
    standing: readStanding(row["standing"]),
    ...(own ? { measure: own } : {}),
  };
}

function readStanding(value: unknown): Limit["standing"] {
  const known = ["law", "standard", "guidance", "practice", "your own wish"] as const;
  return known.find((word) => word === value) ?? "practice";
}

function rowMeasure(
  row: Data,
  path: readonly (string | number)[],
  around: CardSurroundings,
  complain: Complain,
): Limit["measure"] | null {
  const entry = row["measure"];
  if (entry === undefined) return null;
  const name = isData(entry) ? text(entry["name"]) : text(entry);
  const measure = around.measures.get(name);
  if (!measure) {
    complain([...path, "measure"], "a known measure", name, "a row may carry its own measure by name");
    return null;
  }
  return {
    name,
    parameters: readParameters(isData(entry) ? entry["with"] : row["with"], measure, ["limits", "with"], complain),
  };
}

function checkTables(
  requirement: NonNullable<Limit["must"]>,
  path: readonly (string | number)[],
  around: CardSurroundings,
  complain: Complain,
): void {
  const bounds = requirement.sense === "between" ? [requirement.low, requirement.high] : [requirement.bound];
  for (const bound of bounds) {
    if (bound.from === "table" && !around.knowsTable(bound.table, bound.column))
      complain(
        [...path],
        "a table and column of rules/tables",
        `${bound.table}.${bound.column}`,
        hintFor("column", `${bound.table}.${bound.column}`, around),
      );
  }
}

/** Two rows of one place, grade, measure and element must not both apply. */
function checkDisjoint(limits: readonly Limit[], complain: Complain): void {
  for (const [i, a] of limits.entries()) {
    for (const [k, b] of limits.slice(i + 1).entries()) {
      if (a.id === b.id) complain(["limits", i + 1 + k, "id"], "ids that differ", a.id, "every row has its own id");
      if (a.where !== b.where || a.measure?.name !== b.measure?.name) continue;
      if (!((a.must && b.must) || (a.should && b.should))) continue;
      if (a.forEach !== b.forEach) continue;
      if (overlap(a, b))
        complain(
          ["limits", i],
          "rows that cannot both apply",
          `${a.id} and ${b.id}, both in ${a.where}`,
          "give one of them a `when` that shuts the other out",
        );
    }
  }
}

function overlap(a: Limit, b: Limit): boolean {
  for (const one of a.when) {
    const other = b.when.find((condition) => condition.of === one.of);
    if (other && !canBothHold(one, other)) return false;
  }
  return true;
}

function readRemedies(value: unknown): readonly Remedy[] {
  if (!Array.isArray(value)) return [];
  return value.flatMap((entry: unknown): Remedy[] => {
    if (typeof entry === "string") return [{ words: entry }];
    if (!isData(entry)) return [];
    if (entry["change"]) return [{ change: text(entry["change"]), ...(entry["to"] ? { to: text(entry["to"]) } : {}) }];
    if (entry["move"]) return [{ move: text(entry["move"]), awayFrom: text(entry["away_from"]) }];
    if (entry["remove"]) return [{ remove: text(entry["remove"]) }];
    if (entry["ease"]) return [{ ease: text(entry["ease"]) }];
    return entry["words"] ? [{ words: text(entry["words"]) }] : [];
  });
}
