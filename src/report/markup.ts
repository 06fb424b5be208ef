// Markup by hand: every text escaped, every number rounded, no style attribute anywhere.

import { clean, columns } from "./clean.ts";

/** Markup that is known to be escaped already. */
export interface Markup {
  readonly markup: string;
}

type Attributes = Readonly<Record<string, string | number | undefined>>;

const escapes: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** One line of plain text, made harmless inside an element or a quoted attribute. */
export function escaped(text: string): string {
  return guarded(clean(text));
}

/** Our own values (paths, lists of numbers) may be long; they are only kept from ending an attribute. */
function guarded(text: string): string {
  return text.replace(/[&<>"']/g, (letter) => escapes[letter] ?? "");
}

/** Text as markup. */
export function plain(text: string): Markup {
  return { markup: escaped(text) };
}

/** A number for a drawing: two decimals at most, never minus nought, nothing that is not finite. */
export function figure(value: number): string {
  if (!Number.isFinite(value)) return "0";
  const text = value.toFixed(2).replace(/\.?0+$/, "");
  return text === "-0" || text === "" ? "0" : text;
}

/** An element with its attributes in the order given; undefined ones are left out. No name of a plan may stand in one. */
export function element(name: string, attributes: Attributes, ...children: readonly Markup[]): Markup {
  const written = Object.entries(attributes)
    .filter((entry): entry is [string, string | number] => entry[1] !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === "number" ? figure(value) : guarded(value)}"`)
    .join("");
  const inside = children.map(({ markup }) => markup).join("");
  return { markup: inside === "" ? `<${name}${written}/>` : `<${name}${written}>${inside}</${name}>` };
}

/** Pieces of markup one after another. */
export function joined(parts: readonly Markup[], between = ""): Markup {
  return { markup: parts.map(({ markup }) => markup).join(between) };
}

/** Widths of letters in parts of the letter height, for the usual sans-serif letters (MEMORY of common font metrics). */
const narrow = new Set("iljtfrI.,:;'|!()[] \"-/".split(""));
const broad = new Set("mwMW@%".split(""));

/** Estimated width of a text on paper, in the unit of `size`. Meant to be a little too wide rather than too narrow. */
export function textWidth(text: string, size: number): number {
  let sum = 0;
  for (const letter of text) {
    const wide = columns(letter);
    if (wide !== 1) sum += wide * 0.5;
    else if (narrow.has(letter)) sum += 0.33;
    else if (broad.has(letter)) sum += 0.88;
    else sum += letter >= "A" && letter <= "Z" ? 0.7 : 0.56;
  }
  return sum * size;
}

/** Words in lines no wider than `width` on paper, at most `most` of them; what is cut ends in dots. */
export function paperLines(
  text: string,
  fit: { readonly width: number; readonly size: number; readonly most: number },
): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of clean(text).split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line === "" || textWidth(longer, fit.size) <= fit.width) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  lines.push(line);
  const shown = lines.slice(0, fit.most);
  return shown.map((one, index) => shortened(one, lines.length > fit.most && index === fit.most - 1, fit));
}

function shortened(line: string, cut: boolean, fit: { readonly width: number; readonly size: number }): string {
  if (!cut && textWidth(line, fit.size) <= fit.width) return line;
  const dots = "...";
  let used = textWidth(dots, fit.size);
  let kept = "";
  for (const letter of line) {
    used += textWidth(letter, fit.size);
    if (used > fit.width) break;
    kept += letter;
  }
  return kept.trimEnd() + dots;
}
