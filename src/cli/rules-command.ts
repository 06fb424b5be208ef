// `rules`: the list of rules.

import { rulebookWith, type Text } from "../index.ts";
import { problemLines } from "./check-command.ts";
import { readCards } from "./files.ts";
import type { Streams } from "./streams.ts";

/** Columns in which a name and a title have room beside each other. */
const wideEnough = 120;

/** Prints one line a rule, grouped by area, the titles under each other. */
export function rulesCommand(flags: { readonly rules?: string }, streams: Streams): number {
  const { book, problems } = bookWith(flags.rules);
  streams.err(problemLines(problems));
  const longest = Math.max(...book.cards.map(({ id }) => id.length));
  // Where a title would run over the edge they all stand on lines of their own.
  const isNarrow = streams.columns !== undefined && streams.columns < wideEnough;
  let area = "";
  for (const card of book.cards) {
    if (card.area !== area) streams.out(`${area ? "\n" : ""}${card.area.toUpperCase()}\n`);
    area = card.area;
    const id = isNarrow ? `${card.id}\n     ` : card.id.padEnd(longest);
    streams.out(`  ${id} ${card.title}${card.faultsOnly ? " (a screen: shows faults only)" : ""}\n`);
  }
  return problems.length > 0 ? 2 : 0;
}

/** The rulebook with a folder of the owner's cards. */
export function bookWith(folder: string | undefined) {
  const files = folder ? readCards(folder) : [];
  const texts: Text[] = files.flatMap((file) => ("text" in file ? [file.text] : []));
  const unread = files.flatMap((file) => ("problem" in file ? [file.problem] : []));
  const { value, problems } = rulebookWith(texts);
  return { book: value, problems: [...unread, ...problems] };
}
