// Trees and hedges whose kind is known to poison stock: what the table knows is not asked for.

import type { Table } from "../model/card.ts";
import type { Properties } from "../model/plan.ts";
import type { Version } from "./stages.ts";

const grows: ReadonlySet<string> = new Set(["trees", "hedges"]);

/** `poison_known: true` for a tree or hedge of a species that stands in the table; whatever the plan says of it stays. */
export function knownPoison(
  { kind }: Pick<Version, "kind">,
  own: Properties,
  { poisons }: { readonly poisons: Table | null },
): Properties {
  if (!poisons || !grows.has(kind)) return {};
  const species = [own["species"]].flat();
  return species.some((word) => typeof word === "string" && poisons.rows.has(word)) ? { poison_known: true } : {};
}
