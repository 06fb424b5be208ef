// Prints the pages of `room`: text for the pocket, CSV, a drawing, a page to print, JSON for programs.

import type { Sheet } from "../model/sheet.ts";
import { roomSvg } from "./room-drawing.ts";
import { roomJson, type RoomWritten } from "./room-json.ts";
import { roomHtml } from "./room-page.ts";
import { sheetCsv, sheetText } from "./sheet.ts";

export const roomEndings = [".txt", ".csv", ".svg", ".html", ".json"] as const;
export type RoomEnding = (typeof roomEndings)[number];

/** Pages in one of the forms; text no wider than `width`. */
export function printedRoom(pages: readonly RoomWritten[], ending: RoomEnding, width?: number): string {
  if (ending === ".csv") return sheetCsv(joinedSheet(pages));
  if (ending === ".json") return roomJson(pages);
  if (ending === ".html") return roomHtml(pages);
  if (ending === ".svg") return drawingsOf(pages)[0] ?? "";
  return pages.map(({ sheet }) => sheetText(sheet, width)).join("\n\n");
}

/** The drawings there are; a file holds one, a page holds them all. */
export function drawingsOf(pages: readonly RoomWritten[]): readonly string[] {
  return pages.map(roomSvg).filter((drawing) => drawing !== "");
}

function joinedSheet(pages: readonly RoomWritten[]): Sheet {
  const [first] = pages;
  const empty: Sheet = { title: "", what: "", file: "", parts: [], foot: [], table: { columns: [], rows: [] } };
  const sheet = first?.sheet ?? empty;
  return { ...sheet, table: { ...sheet.table, rows: pages.flatMap((page) => page.sheet.table.rows) } };
}
