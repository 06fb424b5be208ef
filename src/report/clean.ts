// Names in a plan may be hostile. What goes on a page is one line of plain characters, nothing that steers a terminal.

/** Escape sequences that a terminal would obey: CSI (`ESC [ ... m`) and OSC (`ESC ] ... BEL`). */
// oxlint-disable-next-line no-control-regex
const terminalSequences = /(?:\u001b\[|\u009b)[0-9;?]*[ -/]*[@-~]|\u001b\][^\u0007\u001b]*(?:\u0007|\u001b\\)?/g;
/** Format characters that reorder or hide text: direction marks, zero widths, tags, variation of joins. */
const hidden = /[\p{Cf}\u{E0000}-\u{E0FFF}]/gu;
/** Control characters and every sort of space, line breaks with them. */
// oxlint-disable-next-line no-control-regex
const breaks = /[\u0000-\u0020\u007f-\u00a0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]+/g;
const loneSurrogate = /[\ud800-\udfff]/gu;

/** Letters of which none is touched: printable ones up to the phonetic letters, but the soft hyphen and the hard space. */
const harmless = /^[ -~\u00a1-\u00ac\u00ae-\u02af]*$/;

/** The longest piece of text that a page carries unbroken; beyond it the rest is cut and marked. */
const longest = 2000;

/** One line of plain characters: no controls, no hidden or reordering characters, single spaces. */
export function clean(text: string): string {
  const plain = harmless.test(text) && !text.includes("  ") ? text.trim() : plainOf(text);
  return plain.length > longest ? `${plain.slice(0, longest)}...` : plain;
}

function plainOf(text: string): string {
  return text
    .replace(terminalSequences, "")
    .replace(hidden, "")
    .replace(loneSurrogate, "\ufffd")
    .replace(breaks, " ")
    .trim();
}

/** Columns a text takes on a terminal: combining marks none, wide letters two, the rest one. */
export function columns(text: string): number {
  let sum = 0;
  for (const letter of text) sum += letterColumns(letter);
  return sum;
}

/** Dashes, quotes, arrows, signs and lines: none combines and none is wide, and most texts hold no other letter. */
function isPlainSign(code: number): boolean {
  return (code >= 0x2010 && code <= 0x2027) || (code >= 0x2100 && code <= 0x2bff);
}

/** Columns of one letter (wide ranges after Unicode Standard Annex 11, shortened to the common scripts; MEMORY). */
export function letterColumns(letter: string): number {
  const code = letter.codePointAt(0) ?? 0;
  if (code < 0x300 || isPlainSign(code)) return 1;
  if (/\p{M}/u.test(letter)) return 0;
  const wide =
    (code >= 0x1100 && code <= 0x115f) ||
    (code >= 0x2e80 && code <= 0xa4cf) ||
    (code >= 0xac00 && code <= 0xd7a3) ||
    (code >= 0xf900 && code <= 0xfaff) ||
    (code >= 0xfe30 && code <= 0xfe6f) ||
    (code >= 0xff00 && code <= 0xff60) ||
    (code >= 0x1f300 && code <= 0x1faff) ||
    (code >= 0x20000 && code <= 0x3fffd);
  return wide ? 2 : 1;
}

/** First letter as a capital; the rest untouched. */
export function capital(text: string): string {
  const [first = ""] = text;
  return first.toUpperCase() + text.slice(first.length);
}

/** Ends a sentence with a full stop unless it ends with one of `. ! ? :` already (a closing quote or bracket may follow). */
export function sentence(text: string): string {
  const plain = capital(clean(text));
  return plain === "" || /[.!?:]["')\]]?$/.test(plain) ? plain : `${plain}.`;
}
