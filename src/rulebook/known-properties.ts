// Whether a card names roles and properties that there are: a slip there would leave a rule silent for ever.

import type { Bound, Card, Limit, RoleChoice } from "../model/card.ts";
import { keyOfKind } from "../model/kinds.ts";
import { roleAndProperty } from "../model/plan.ts";
import type { Path } from "../model/path.ts";
import type { Problem } from "../model/problem.ts";
import { nearestWord } from "../reading/nearest-word.ts";
import type { RuleFile } from "./load-rulebook.ts";

/** Dotted names of the properties that a plan may give to a kind, by the plan's key (`walls`); none for a key that is no kind's. */
export type PropertiesOfKind = (key: string) => readonly string[];

/** Properties by kind word, and all of them. */
export interface KnownProperties {
  readonly of: (kind: string) => ReadonlySet<string> | null;
  readonly all: ReadonlySet<string>;
}

/** What plans may give, and what the built-in cards ask of each kind besides: parts and things that are worked out have properties of their own. */
export function knownProperties(cards: readonly Card[], propertiesOf: PropertiesOfKind): KnownProperties {
  const byKind = new Map<string, Set<string>>();
  const all = new Set<string>(["kind", "name", "existing"]);
  for (const card of cards) {
    for (const { of } of namedIn(card)) {
      const [role, property] = roleAndProperty(of);
      all.add(property);
      for (const kind of roleOf(card, role)?.kinds ?? [])
        byKind.set(kind, (byKind.get(kind) ?? new Set()).add(property));
    }
  }
  const whole = new Map<string, ReadonlySet<string> | null>();
  const of = (kind: string): ReadonlySet<string> | null => {
    const known = whole.get(kind);
    if (known !== undefined) return known;
    const key = keyOfKind(kind);
    const made =
      key === undefined
        ? null
        : new Set(["kind", "name", "existing", ...propertiesOf(key), ...(byKind.get(kind) ?? [])]);
    whole.set(kind, made);
    return made;
  };
  return { of, all };
}

interface Named {
  readonly of: string;
  readonly path: Path;
}

/** Every `role.property` of a card, with its path. */
function namedIn(card: Card): readonly Named[] {
  return [
    ...card.limits.flatMap((limit, at) => namedInRow(limit, ["limits", at])),
    ...card.remedies.flatMap((remedy, at) =>
      "change" in remedy ? [{ of: remedy.change, path: ["remedies", at, "change"] }] : [],
    ),
    ...(card.narrowed ? [{ of: card.narrowed.of, path: ["narrowed", "of"] }] : []),
  ];
}

function namedInRow(limit: Limit, path: Path): readonly Named[] {
  const grades = (["must", "should"] as const).flatMap((grade) => {
    const wanted = limit[grade];
    if (!wanted) return [];
    const bounds = wanted.sense === "between" ? [wanted.low, wanted.high] : [wanted.bound];
    return bounds.flatMap((bound) => namedInBound(bound).map((of) => ({ of, path: [...path, grade, wanted.sense] })));
  });
  const when = limit.when.flatMap(({ of }) => (of.includes(".") ? [{ of, path: [...path, "when", of] }] : []));
  return [...grades, ...when, ...(limit.forEach ? [{ of: limit.forEach, path: [...path, "for_each"] }] : [])];
}

function namedInBound(bound: Bound): readonly string[] {
  if (bound.from === "times") return [bound.of];
  if (bound.from === "over") return [bound.over];
  return bound.from === "plan" ? [bound.property] : [];
}

const roleOf = (card: Card, role: string): RoleChoice | undefined =>
  [card.about, card.against].find((one) => one?.role === role) ?? undefined;

/** Problems of roles and properties that a card names and that there are not. */
export function unknownProperties(card: Card, file: RuleFile | undefined, known: KnownProperties): readonly Problem[] {
  const roles = [card.about, card.against].flatMap((one) => (one ? [one.role] : []));
  const words = namedIn(card).flatMap(({ of, path }) => {
    const [role, property] = roleAndProperty(of);
    const choice = roleOf(card, role);
    if (!choice) return [{ path, ...strangeRole(of, roles) }];
    const lists = choice.kinds.map((kind) => known.of(kind) ?? known.all);
    if (lists.some((list) => list.has(property))) return [];
    return [{ path, ...strangeProperty(choice, property, lists) }];
  });
  const companions = card.limits.flatMap(({ when }, at) =>
    when
      .filter(({ of }) => !of.includes(".") && of !== "each" && !Object.hasOwn(card.companions, of))
      .map(({ of }) => ({ path: ["limits", at, "when", of], ...strangeRole(of, roles) })),
  );
  const remedies = rolesOfRemedies(card)
    .filter(({ of }) => !roles.includes(of))
    .map(({ of, path }) => ({
      path,
      expected: `the role ${quotedRoles(roles)}`,
      got: shortened(of),
      hint: "write one of the roles under about and against",
    }));
  return [...words, ...companions, ...remedies].map(({ path, expected, got, hint }) => {
    const at = file?.locate(path) ?? { line: 1, column: 1 };
    return { code: "bad-card", file: card.file, ...at, expected, got, hint };
  });
}

/** Roles that a remedy moves, takes away or eases. */
function rolesOfRemedies(card: Card): readonly Named[] {
  return card.remedies.flatMap((remedy, at): readonly Named[] => {
    const path = ["remedies", at];
    if ("move" in remedy)
      return [
        { of: remedy.move, path: [...path, "move"] },
        { of: remedy.awayFrom, path: [...path, "away_from"] },
      ];
    if ("remove" in remedy) return [{ of: remedy.remove, path: [...path, "remove"] }];
    return "ease" in remedy ? [{ of: remedy.ease, path: [...path, "ease"] }] : [];
  });
}

interface Words {
  readonly expected: string;
  readonly got: string;
  readonly hint: string;
}

const quotedRoles = (roles: readonly string[]): string => roles.map((role) => `"${role}"`).join(" or ");

function strangeRole(of: string, roles: readonly string[]): Words {
  const expected = `a property of ${quotedRoles(roles)}, or a companion reading by its name`;
  const [role = "", ...rest] = of.split(".");
  const near = roles.length === 1 ? roles[0] : nearestWord(role, roles);
  const hint = near ? `write ${[near, ...rest].join(".")} if that is meant` : "its first word is a role of this card";
  return { expected, got: shortened(of), hint };
}

function strangeProperty({ role, kinds }: RoleChoice, property: string, lists: readonly ReadonlySet<string>[]): Words {
  const all = lists.flatMap((list) => [...list]);
  const near = nearestWord(property, all);
  const of = kinds.slice(0, 3).join(" or ");
  const hint = near
    ? `write ${role}.${near} if that is meant`
    : `the keys of a ${of} stand in schemas/features; a plan can give no other`;
  return { expected: `a property that a ${of} has`, got: shortened(`${role}.${property}`), hint };
}

/** Most letters of a name that are told. */
const longest = 60;
const shortened = (text: string): string => (text.length > longest ? `${text.slice(0, longest)} ...` : text);
