// Prints a report as one of the formats; a printer is loaded when it is first asked for.

import type { Report } from "../model/finding.ts";
import type { Picture } from "../model/picture.ts";
import type { EarthTie } from "./geojson.ts";
import type { PlaceNames } from "./standing-words.ts";
import { textReport, type TextOptions } from "./text.ts";

/** Endings of the files that can be written. */
export const endings = [".json", ".txt", ".sarif", ".svg", ".html", ".geojson"] as const;
export type Ending = (typeof endings)[number];

/** What is printed: a report, the pictures of its plans, and where the first of them lies on the earth. */
export interface Printable {
  readonly report: Report;
  readonly pictures: readonly Picture[];
  readonly tie: EarthTie | null;
  readonly places: PlaceNames;
}

export type PrintOptions = Pick<TextOptions, "all" | "plain" | "brief" | "width" | "more"> & {
  readonly version?: string;
};

/** The text of a file. GeoJSON without an earth tie is an empty collection: the caller tells the problem. */
export async function printed(what: Printable, ending: Ending, options: PrintOptions = {}): Promise<string> {
  const { report, pictures, places, tie } = what;
  const [picture] = pictures;
  switch (ending) {
    case ".txt":
      return textReport(report, { ...options, places });
    case ".json":
      return (await import("./json.ts")).jsonReport(report, options);
    case ".sarif":
      return (await import("./sarif.ts")).sarifReport(report, { ...options, places });
    case ".html":
      return (await import("./html.ts")).htmlPage(pictures, report, { places });
    case ".svg":
      return picture ? (await import("./svg.ts")).drawing(picture, report) : "";
    case ".geojson":
      return picture && tie ? (await import("./geojson.ts")).geoJson(picture, report, tie) : "";
  }
}
