// Words that say nothing, where the plan should name somebody or a paper: `designed_by: nobody yet` is no designer.

/** Properties whose words name who answers for a thing, or the paper that says so. */
const namesSomebody: ReadonlySet<string> = new Set([
  "designed_by",
  "judged_by",
  "who_says",
  "said_by",
  "owner_says",
  "seen_by",
  "seen_how",
  "fitted_by",
  "permit",
  "consent",
  "access_permit",
  "origin",
  "tested",
]);

const later = String.raw`(?:[ ,]+(?:yet|so far|at all|at the moment|for now))*`;
const no = new RegExp(String.raw`^(?:nobody|no[ -]?one|none|no|nil|not|never|nothing)${later}$`);
const notKnown = new RegExp(
  String.raw`^(?:unknown|not known|not sure|not stated|not given|not asked|unclear|don'?t know|do not know|no idea|n/?a|\?+|-+|\.+|x+` +
    String.raw`|t\.?b\.?[acd]\.?|pending|later|to (?:be )?(?:ask|asked|decide|decided|confirm|confirmed|find|found|agreed|designed|done|come|follow)(?: out)?)${later}$`,
);
/** Who draws up his own wall is no designer of it. */
const self = /^(?:me|myself|self|i|us|we|ourselves|own design|(?:the )?owner|diy)$/;

/**
 * What the words of a property come to: false where they say that there is nobody and nothing, undefined where they
 * say that it is not known, else the words themselves.
 */
export function plainAnswer(property: string, words: string): string | false | undefined {
  if (!namesSomebody.has(property)) return words;
  const plain = words
    .trim()
    .toLowerCase()
    .replace(/[.!]+$/, "");
  if (no.test(plain) || (property === "designed_by" && self.test(plain))) return false;
  return plain === "" || notKnown.test(words.trim().toLowerCase()) || notKnown.test(plain) ? undefined : words;
}

/** Whether words sign for nobody. */
export const signsForNobody = (words: string): boolean => typeof plainAnswer("seen_by", words) !== "string";
