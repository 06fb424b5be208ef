// `reason`: a rule whole, in words.

import { nearestRule, reasonText } from "../index.ts";
import { problemLines } from "./check-command.ts";
import { bookWith } from "./rules-command.ts";
import type { Streams } from "./streams.ts";

/** Prints a card in words; 2 where there is no such rule. */
export function reasonCommand(rule: string, flags: { readonly rules?: string }, streams: Streams): number {
  const { book, problems } = bookWith(flags.rules);
  streams.err(problemLines(problems));
  const card = book.cards.find((known) => known.id === rule);
  if (!card) {
    const near = nearestRule(rule, book);
    streams.err(`There is no rule ${rule}.${near ? ` Was ${near} meant?` : ""} The list: sightrail rules\n`);
    return 2;
  }
  streams.out(reasonText(card, book));
  return problems.length > 0 ? 2 : 0;
}
