// How the soil that the plan names rolls down, as a number of the plot: its doubt is that of the table's row.

import type { Table } from "../model/card.ts";
import type { Feature } from "../model/plan.ts";
import { earthFactors } from "../site/earth-states.ts";
import type { BookWriter } from "./number-book.ts";

/** What the soil of a plan is looked up with. */
export interface SoilWork {
  readonly soil: string | null;
  readonly densities: Table | undefined;
  readonly book: BookWriter;
}

/** The plot with `rolled_for_dug`, the rolled volume for one as it lies; without, where no soil is named that the table knows. */
export function withSoilFactors(site: Feature, { soil, densities, book }: SoilWork): Feature {
  const factors = soil === null ? null : earthFactors(soil, densities);
  if (!factors || !` ${soil ?? ""} `.includes(` ${factors.words} `)) return site;
  const { value, u } = factors.rolled;
  const words = `how far ${factors.words} rolls down`;
  const cause = { sort: "table", words, place: site.place, dimension: "count", u, part: "rolled_for_dug" } as const;
  const rolled = book.seal(book.doubted(value, cause), "count", site.place);
  return { ...site, properties: { ...site.properties, rolled_for_dug: rolled } };
}
