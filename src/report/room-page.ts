// The pages of `room` as one HTML page: drawing and notes of every vehicle, nothing fetched, nothing run.

import { capital } from "./clean.ts";
import { style, styleHash } from "./html-style.ts";
import { element, joined, plain, type Markup } from "./markup.ts";
import { type RoomDrawn, roomMarkup } from "./room-drawing.ts";

const policy = `default-src 'none'; style-src 'sha256-${styleHash}'; base-uri 'none'; form-action 'none'`;

/** One page to print or to hand on. The same input gives the same bytes. */
export function roomHtml(pages: readonly RoomDrawn[]): string {
  const title = pages.map(({ sheet }) => capital(sheet.title)).join("; ");
  const head = element(
    "head",
    {},
    element("meta", { charset: "utf-8" }),
    element("meta", { "http-equiv": "Content-Security-Policy", content: policy }),
    element("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
    element("title", {}, plain(title)),
    element("style", {}, { markup: style }),
  );
  const body = element("body", {}, ...pages.map(pageMarkup));
  return `<!doctype html>\n${element("html", { lang: "en" }, head, body).markup}\n`;
}

function pageMarkup(drawn: RoomDrawn, index: number): Markup {
  const { sheet } = drawn;
  const drawing = roomMarkup(drawn, `room-${index + 1}`);
  let number = 0;
  const parts = sheet.parts.map(({ heading, entries }) => {
    const start = number + 1;
    number += entries.length;
    const items = entries.map(({ words }) => element("li", {}, plain(words)));
    return joined([element("h2", {}, plain(heading)), element("ol", { start }, ...items)]);
  });
  const notes = element(
    "div",
    { class: "notes" },
    ...parts,
    ...sheet.foot.map((text) => element("p", {}, plain(text))),
  );
  return joined([
    element(
      "header",
      {},
      element("h1", {}, plain(capital(sheet.title))),
      element("p", {}, plain(`${capital(sheet.what)}. Plan: ${sheet.file}.`)),
    ),
    element("main", {}, ...(drawing ? [element("figure", { class: "sketch" }, drawing)] : []), notes),
  ]);
}
