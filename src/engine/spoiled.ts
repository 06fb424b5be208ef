// What a remedy would spoil elsewhere, as it is told behind it.

/** A rule that would newly fail: its title, and which thing it is about with what it would be and what is wanted. */
export interface Spoiled {
  readonly title: string;
  readonly words: string;
}

/** ` But that would bring a new fault: a drainage field lies too near a tree (2.10 m clear of tree "oak"; ...).` */
export function spoiledSentence(spoiled: readonly Spoiled[]): string {
  if (spoiled.length === 0) return "";
  const told = spoiled.map(({ title, words }) => (words === "" ? title : `${title} (${words})`));
  return ` But that would bring ${told.length === 1 ? "a new fault" : "new faults"}: ${told.join("; and ")}.`;
}

/** Titles alone, for other programs. */
export function titlesOf(spoiled: readonly Spoiled[]): readonly string[] {
  return spoiled.map(({ title }) => title);
}
