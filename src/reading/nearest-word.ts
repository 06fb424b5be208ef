// The known word that somebody most likely meant.

/** Words longer than this are texts, not slips of a known word. */
const longestWord = 64;
/** Of this many letters, one may be wrong: `heigth` (two swapped, counted as one), `widht`, `fense`. */
const lettersPerSlip = 3;

/**
 * The known word nearest to the one written, or null where none is near enough to be worth asking about.
 * In this order: a synonym, the same word in other case or number, the word with the fewest slips (a letter left out,
 * put in, changed, or two neighbours swapped: optimal string alignment distance, Damerau 1964; MEMORY), of which one in
 * three letters may be wrong.
 */
export function nearestWord(
  written: string,
  known: readonly string[],
  synonyms: Readonly<Record<string, string>> = {},
): string | null {
  const word = plain(written);
  if (word === "" || word.length > longestWord) return null;
  for (const [foreign, ours] of Object.entries(synonyms)) {
    if (plain(foreign) === word || singular(plain(foreign)) === singular(word)) return ours;
  }
  const alike = known.find((candidate) => plain(candidate) === word);
  if (alike !== undefined) return alike;
  const root = singular(word);
  const sameRoot = known.find((candidate) => singular(plain(candidate)) === root);
  return sameRoot ?? fewestSlips(word, known);
}

function fewestSlips(word: string, known: readonly string[]): string | null {
  let best: string | null = null;
  let fewest = Infinity;
  for (const candidate of known) {
    const other = plain(candidate);
    const allowed = Math.floor(Math.max(word.length, other.length) / lettersPerSlip);
    if (other.length > longestWord || Math.abs(other.length - word.length) > allowed) continue;
    const slips = slipsBetween(word, other);
    // A slip is seldom in the first letter, and then it is the only one.
    if (slips > allowed || slips >= fewest || (slips > 1 && other[0] !== word[0])) continue;
    best = candidate;
    fewest = slips;
  }
  return best;
}

/** Case, and the ways of joining two words, make no difference. */
function plain(word: string): string {
  return word
    .toLowerCase()
    .replace(/[\s_-]+/gu, " ")
    .trim();
}

function singular(word: string): string {
  if (word.endsWith("ies") && word.length > 4) return `${word.slice(0, -3)}y`;
  if (/(?:s|x|ch|sh)es$/u.test(word)) return word.slice(0, -2);
  return word.endsWith("s") && !word.endsWith("ss") ? word.slice(0, -1) : word;
}

/** Optimal string alignment distance of two words. */
export function slipsBetween(a: string, b: string): number {
  let twoBack: number[] = [];
  let before = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (before[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let least = Math.min(change, (before[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (isSwap) least = Math.min(least, (twoBack[j - 2] ?? 0) + 1);
      row.push(least);
    }
    twoBack = before;
    before = row;
  }
  return before[b.length] ?? 0;
}
