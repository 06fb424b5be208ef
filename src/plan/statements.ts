// Reads what the plan says in so many words: title, places, day, what is not there, departures, limits of its own, the plot.

import type { Departure, Feature, LocalLimit, Plan, Properties } from "../model/plan.ts";
import { settingFor, type FeatureWork } from "./features.ts";
import type { Names } from "./names.ts";
import { child, descend, isMapping, textOf, textsOf, type Node } from "./node.ts";
import { signsForNobody } from "./plain-answers.ts";
import { readProperties } from "./properties.ts";
import type { PropertyWork } from "./property-numbers.ts";
import { allEntries, allItems, firstAt, kindKeys, type Texts } from "./sources.ts";
import type { Version } from "./stages.ts";
import { dayNumber } from "../site/days.ts";
import { wordsOf, type Troubles } from "./troubles.ts";

type Statements = Pick<Plan, "title" | "places" | "asOf" | "none" | "departures" | "localLimits" | "notBuilt"> & {
  readonly site: Feature;
};

interface StatementWork {
  readonly names: Names;
  readonly troubles: Troubles;
  readonly work: FeatureWork;
  readonly versions: readonly Version[];
}

/** The plan's statements. */
export function readStatements(texts: Texts, work: StatementWork): Statements {
  const title = textOf(firstAt(texts, "title")) ?? "";
  const notBuilt = kindKeys
    .filter((kind) => work.work.kindTable[kind] === undefined)
    .map((kind) => ({
      kind,
      names: work.versions.filter((version) => version.kind === kind).map((version) => version.name),
    }))
    .filter(({ names }) => names.length > 0);
  return {
    title,
    places: wordsUnder(texts, "place"),
    asOf: readDay(firstAt(texts, "as_of"), work.troubles),
    none: wordsUnder(texts, "none"),
    departures: readDepartures(texts, work),
    localLimits: readLimits(texts),
    notBuilt,
    site: siteOf(texts, title, work),
  };
}

/** A day of the calendar; a problem where there is none such (31 February). What is not of its form is told of elsewhere. */
function readDay(node: Node | null, troubles: Troubles): string | null {
  const day = textOf(node);
  if (node === null || day === null || dayNumber(day) !== null) return day;
  if (!/^\d{4}-\d\d-\d\d$/.test(day)) return day;
  return troubles.report(node, {
    code: "bad-date",
    expected: "a day of the calendar, as 2026-11-25",
    got: wordsOf(day),
    hint: "the day on which it is read is taken until then",
  });
}

function wordsUnder(texts: Texts, key: string): readonly string[] {
  return textsOf(firstAt(texts, key)).map((node) => textOf(node) ?? "");
}

/** Departures that somebody answers for until a day; one that lacks either is told of and covers nothing. */
function readDepartures(texts: Texts, { names, troubles }: StatementWork): readonly Departure[] {
  return allItems(texts, "departures").flatMap((node) => {
    const features = textsOf(child(node, "features"));
    for (const feature of features) checkFeature(feature, names, troubles);
    const word = (key: string): string => (textOf(child(node, key)) ?? "").trim();
    const departure: Departure = {
      rule: word("rule"),
      features: features.map((feature) => textOf(feature) ?? ""),
      because: word("because"),
      agreedBy: word("agreed_by"),
      review: word("review"),
      place: node.place,
    };
    return isAnsweredFor(departure, node, troubles) ? [departure] : [];
  });
}

function isAnsweredFor({ because, agreedBy, review }: Departure, node: Node, troubles: Troubles): boolean {
  const tell = (key: string, expected: string, hint: string): false => {
    const inner = child(node, key);
    // What is not there, or not of its form, was told of when the text was checked against its schema.
    if (inner !== null)
      troubles.report(inner, {
        code: key === "review" ? "bad-date" : "missing-key",
        expected,
        got: wordsOf(inner.data),
        hint,
      });
    return false;
  };
  if (signsForNobody(agreedBy))
    return tell("agreed_by", "the name of somebody who agreed", "a departure that nobody signs covers nothing");
  if (because === "") return tell("because", "a reason", "a departure without a reason covers nothing");
  if (dayNumber(review) === null)
    return tell("review", "a day of the calendar, as 2027-05-01", "until then the departure covers nothing");
  return true;
}

function checkFeature(node: Node, names: Names, troubles: Troubles): void {
  const name = textOf(node) ?? "";
  if (names.find(name)?.is === "feature" || names.lost(name) !== null) return;
  troubles.report(node, {
    code: "unknown-name",
    expected: "a feature of the plan",
    got: `"${name}"`,
    hint: names.hint(name),
  });
}

function readLimits(texts: Texts): readonly LocalLimit[] {
  return allEntries(texts, "local_limits").map(([rule, node]) => ({
    rule,
    grades: isMapping(node.data) ? { must: child(node, "must")?.data, should: child(node, "should")?.data } : {},
    from: textOf(child(node, "from")) ?? "",
    standing: textOf(child(node, "standing")) ?? "",
    place: node.place,
  }));
}

/** What is said of the plot as a whole, as one feature of kind `site`. */
function siteOf(texts: Texts, title: string, { work }: StatementWork): Feature {
  const root = texts.roots[0] as Node;
  const forms = work.kindTable["site"] ?? {};
  const properties: Properties = Object.assign(
    {},
    ...Object.keys(forms).map((key): Properties => readSite(texts, key, work)),
  );
  const place = descend(root, "title")?.place ?? root.place;
  return { kind: "site", name: title, place, existing: true, from: 0, until: null, shape: null, properties };
}

function readSite(texts: Texts, key: string, work: FeatureWork): Properties {
  const root = texts.roots.find((one) => child(one, key) !== null);
  const form = work.kindTable["site"]?.[key];
  if (root === undefined || form === undefined) return {};
  const plot: Version = {
    kind: "catchments",
    name: "the plot",
    node: root,
    existing: true,
    from: 0,
    until: null,
    superseded: false,
  };
  const property: PropertyWork = {
    kind: "site",
    book: work.book,
    settingOf: (node) => ({ ...settingFor(plot, node, work), whose: "the plot" }),
    checkName: (node) => work.places().check(textOf(node) ?? "", node, null),
    turnFrom: work.turnFrom,
  };
  return readProperties(root, { [key]: form }, { work: property, path: [] });
}
