// The page: nothing fetched, nothing run, every name harmless, and all that the text report says.

import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { numbered } from "../../src/report/grouping.ts";
import { style, styleHash } from "../../src/report/html-style.ts";
import { htmlPage } from "../../src/report/html.ts";
import { escaped } from "../../src/report/markup.ts";
import { emptyPicture, inventedPicture } from "./invented-picture.ts";
import { inventedReport, quietReport, twoPlans } from "./invented-report.ts";

const page = htmlPage([inventedPicture, emptyPicture], inventedReport);
const pages = [page, htmlPage([], quietReport), htmlPage([], twoPlans)];
const words = (markup: string) => markup.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ");

describe("the page", () => {
  it("lets only its own style through, by the hash of that style", () => {
    expect(styleHash).toBe(createHash("sha256").update(style).digest("base64"));
    for (const one of pages) {
      expect(one).toContain(
        `content="default-src &#39;none&#39;; style-src &#39;sha256-${styleHash}&#39;; base-uri &#39;none&#39;; form-action &#39;none&#39;"`,
      );
      expect(one).toContain(`<style>${style}</style>`);
    }
  });

  it("shows each sketch as large as its paper on asking, and leads back", () => {
    const figures = [...page.matchAll(/<figure [^>]*id="(figure-\d+)"/g)].map(([, id]) => id);
    expect(figures.length).toBeGreaterThan(0);
    for (const id of figures) expect(page).toContain(`href="#${id}"`);
    expect(page.split('<a class="smaller" href="#notes">')).toHaveLength(figures.length + 1);
  });

  it("says that nothing was checked where that is so, not that the rest was", () => {
    const problem = {
      code: "file-not-found",
      file: "a.yaml",
      line: 1,
      column: 1,
      expected: "a file",
      got: "none",
      hint: "look",
    } as const;
    const none = words(
      htmlPage([], { ...quietReport, plans: [], rules: [], findings: [], needs: [], problems: [problem, problem] }),
    );
    expect(none).toContain("Nothing was checked. That says nothing about the plan.");
    expect(none).not.toContain("the rest was checked");
    expect(none.split("a.yaml:")).toHaveLength(2);
  });

  it("has no script, no inline style, no event, and asks for nothing from elsewhere", () => {
    for (const one of pages) {
      expect(one).not.toMatch(/<(script|link|img|iframe|object|embed|base|form)\b/i);
      expect(one).not.toMatch(/<[^>]*\s(style|on\w+|src|srcset)=/i);
      for (const [, to] of one.matchAll(/href="([^"]*)"/g))
        expect(to).toMatch(/^#(notes|figure-\d+|finding-\d+|sketch-\d+-stone-\d+)$/);
      expect(one.replaceAll('xmlns="http://www.w3.org/2000/svg"', "")).not.toMatch(/https?:/);
    }
  });

  it("uses every id once and points at none that is missing", () => {
    const ids = [...page.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, id] of page.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(id);
    for (const [, id] of page.matchAll(/href="#([^"]*)"/g)) expect(ids).toContain(id);
    for (const [, list] of page.matchAll(/aria-labelledby="([^"]*)"/g))
      for (const id of (list ?? "").split(" ")) expect(ids).toContain(id);
  });

  it("tells every finding, every caution, every need and every problem", () => {
    const said = words(page);
    for (const { number } of numbered(inventedReport)) expect(page).toContain(`id="finding-${number}"`);
    for (const finding of inventedReport.findings.filter(({ verdict }) => verdict !== "does-not-bear"))
      for (const caution of finding.cautions)
        expect(said.split(escaped(caution).replace(/\s+/g, " ")), caution).toHaveLength(2);
    for (const need of inventedReport.needs) expect(said).toContain(escaped(need.asks));
    for (const problem of inventedReport.problems) expect(said).toContain(escaped(problem.expected));
  });

  it("says what it is sure of and what was not looked at, and promises nothing", () => {
    for (const one of pages) {
      expect(words(one)).toMatch(/never (of )?the ground/);
      expect(words(one)).toContain("anything not drawn");
      expect(words(one)).not.toMatch(/\b(safe|safely|proof|compliant|approved|certified)\b/i);
    }
  });

  it("reads in order without its style: one language, headings without gaps, mark lines hidden from the ear", () => {
    expect(page).toMatch(/^<!doctype html>\n<html lang="en">/);
    const levels = [...page.matchAll(/<h(\d)>/g)].map(([, level]) => Number(level));
    expect(levels[0]).toBe(1);
    expect(levels.every((level, index) => index === 0 || level <= (levels[index - 1] ?? 0) + 1)).toBe(true);
    expect(page.match(/<pre /g)?.length).toBe(page.match(/<pre class="mark" aria-hidden="true">/g)?.length);
    expect(page).not.toMatch(/<(div|p|ul|li|section|main|footer|header|span|dd|dt)\/>/);
  });

  it("shows hostile names as text and nothing else", () => {
    expect(page).toContain("&lt;script&gt;alert(1)&lt;/script&gt;");
    // oxlint-disable-next-line no-control-regex
    expect(page).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
  });

  it("gives the same bytes for the same input", () => {
    expect(htmlPage([inventedPicture, emptyPicture], structuredClone(inventedReport))).toBe(page);
  });
});
