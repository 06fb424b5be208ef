// Prints a sheet: as lines for the pocket, or as CSV (RFC 4180).

import type { Sheet } from "../model/sheet.ts";
import { clean } from "./clean.ts";
import { spread, wrap } from "./wrap.ts";

const defaultWidth = 100;

/** A sheet as text no wider than `width`; entries are numbered through all its parts. */
export function sheetText(sheet: Sheet, width = defaultWidth): string {
  const lines = [...spread([clean(sheet.title).toUpperCase(), sheet.what, `plan: ${clean(sheet.file)}`], width)];
  let number = 0;
  for (const part of sheet.parts) {
    lines.push("", ...wrap(part.heading, width));
    for (const { words, notes } of part.entries) {
      number += 1;
      lines.push(...wrap(clean(words), width, { first: `${String(number).padStart(2)}. `, rest: "    " }));
      for (const note of notes) lines.push(...wrap(clean(note), width, { first: "      ", rest: "        " }));
    }
  }
  for (const sentence of sheet.foot) lines.push("", ...wrap(clean(sentence), width));
  return `${lines.join("\n")}\n`;
}

/** The sheet's table. A text that a spreadsheet would take for a formula is kept a text by a quote before it. */
export function sheetCsv({ table }: Sheet): string {
  return [table.columns, ...table.rows].map((row) => row.map(cell).join(",")).join("\r\n") + "\r\n";
}

function cell(value: string | number): string {
  if (typeof value === "number") return String(value);
  const plain = clean(value);
  const text = /^[=+\-@\t]/.test(plain) ? `'${plain}` : plain;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
