// Prints the pages of `room`: text for the pocket, CSV, a drawing, a page to print, JSON for programs.

import type { Sheet } from "../model/sheet.ts";
import { sheetCsv, sheetText } from "./sheet.ts";

export const roomEndings = [".txt", ".csv"] as const;
export type RoomEnding = (typeof roomEndings)[number];

/** What a page brings to be printed. */
export interface PrintablePage {
  readonly sheet: Sheet;
}

/** Pages in one of the forms; text no wider than `width`. */
export function printedRoom(pages: readonly PrintablePage[], ending: RoomEnding, width?: number): string {
  if (ending === ".csv") return sheetCsv({ ...joinedSheet(pages) });
  return pages.map(({ sheet }) => sheetText(sheet, width)).join("\n\n");
}

function joinedSheet(pages: readonly PrintablePage[]): Sheet {
  const [first] = pages;
  const empty: Sheet = { title: "", what: "", file: "", parts: [], foot: [], table: { columns: [], rows: [] } };
  const sheet = first?.sheet ?? empty;
  return { ...sheet, table: { ...sheet.table, rows: pages.flatMap((page) => page.sheet.table.rows) } };
}
