// The house: floors, packages, parity, sizes, words. Each rule is a sentence first and a test second.

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { describe, expect, it } from "vitest";
import { ruleIndex } from "./rule-index.ts";
import { root, yamlUnder } from "./rule-files.ts";

/** Floor of every folder of src. */
const floors: Readonly<Record<string, number>> = {
  model: 0,
  geometry: 1,
  reading: 1,
  motion: 2,
  hydraulics: 2,
  terrain: 2,
  adjustment: 2,
  site: 3,
  measures: 4,
  plan: 4,
  rulebook: 4,
  engine: 5,
  report: 5,
  sheets: 5,
  cli: 6,
};

/** The one folder (or two) in which each package may be imported. */
const packageFolders: Readonly<Record<string, readonly string[]>> = {
  "@noble/hashes": ["engine"],
  "@turf/turf": ["plan", "report"],
  "clipper2-ts": ["geometry"],
  "robust-predicates": ["geometry"],
  flatbush: ["geometry"],
  delaunator: ["terrain"],
  "@kninnug/constrainautor": ["terrain"],
  yaml: ["reading"],
  ajv: ["reading"],
  papaparse: ["reading"],
  saxes: ["reading"],
  commander: ["cli"],
  picocolors: ["cli"],
};

interface Import {
  readonly file: string;
  readonly folder: string;
  readonly target: string;
}

function filesUnder(folder: string, ending: string): readonly string[] {
  if (!existsSync(join(root, folder))) return [];
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)))
    .sort();
}

const sources = filesUnder("src", ".ts");
const textOf = (file: string): string => readFileSync(join(root, file), "utf8");
const folderOf = (file: string): string => file.split("/")[1] ?? "";
const withoutComments = (text: string): string =>
  text.replace(/\/\*[\s\S]*?\*\//g, (comment) => comment.replace(/[^\n]/g, " ")).replace(/(^|\s)\/\/[^\n]*/g, "$1");

/** Static imports and re-exports (the statement ends `from "x"`), bare imports, and late ones. */
const importForm =
  /^(?:import|export)\s[^"'`;=()]*?\bfrom\s+"([^"\n]+)"|^import\s+"([^"\n]+)"|\bimport\("([^"\n]+)"\)/gm;
const imports: readonly Import[] = sources.flatMap((file) =>
  [...withoutComments(textOf(file)).matchAll(importForm)].map(([, whole, bare, late]) => ({
    file,
    folder: folderOf(file),
    target: whole ?? bare ?? late ?? "",
  })),
);

describe("floors", () => {
  it("imports only from lower floors or the own folder; never up, never sideways", () => {
    const wrong = imports.filter(({ file, folder, target }) => {
      if (!target.startsWith(".") || folder === "index.ts") return false;
      const to = relative(join(root, "src"), join(root, dirname(file), target)).split("/")[0] ?? "";
      if (folder === "cli") return !(to === "cli" || to === "index.ts" || to === "model" || to === "..");
      return to !== folder && !((floors[to] ?? 99) < (floors[folder] ?? -1));
    });
    expect(wrong).toEqual([]);
  });
  it("knows the floor of every folder", () => {
    expect(sources.map(folderOf).filter((folder) => folder !== "index.ts" && !(folder in floors))).toEqual([]);
  });
  it("imports each package only where it belongs", () => {
    const wrong = imports.filter(({ folder, target }) => {
      if (target.startsWith(".") || target.startsWith("#compiled/")) return false;
      if (target.startsWith("node:")) return folder !== "cli";
      const name = target.startsWith("@") ? target.split("/").slice(0, 2).join("/") : (target.split("/")[0] ?? "");
      return !(packageFolders[name] ?? []).includes(folder);
    });
    expect(wrong).toEqual([]);
  });
  it("lets only the root of src know what was compiled", () => {
    expect(imports.filter(({ folder, target }) => target.startsWith("#compiled/") && folder !== "index.ts")).toEqual(
      [],
    );
  });
  it("keeps clock, environment, randomness and console out of everything below the command line", () => {
    const wrong = sources.filter(
      (file) =>
        folderOf(file) !== "cli" &&
        /\bDate\.now|new Date\(\)|Math\.random|process\.|console\./.test(withoutComments(textOf(file))),
    );
    expect(wrong).toEqual([]);
  });
});

describe("sizes", () => {
  it("keeps files at most 300 lines", () => {
    expect(sources.filter((file) => textOf(file).split("\n").length > 301)).toEqual([]);
  });
  it("has no drawer for what has no name", () => {
    expect(
      sources.filter((file) => /(^|\/)(utils?|helpers?|common|misc|manager|service|types)\.ts$/.test(file)),
    ).toEqual([]);
  });
  it("opens every file with what it is for", () => {
    expect(sources.filter((file) => !textOf(file).startsWith("//"))).toEqual([]);
  });
});

describe("measures", () => {
  const measureFiles = sources.filter(
    (file) => file.startsWith("src/measures/") && !file.endsWith("index.ts") && textOf(file).includes(": Measure = {"),
  );
  it("open with what, formula, source, valid, witness", () => {
    const wrong = measureFiles.filter(
      (file) =>
        !["What:", "Formula:", "Source:", "Valid:", "Witness:"].every((head) =>
          textOf(file)
            .split("\n")
            .slice(0, 12)
            .some((line) => line.startsWith(`// ${head}`)),
        ),
    );
    expect(wrong).toEqual([]);
  });
  it("stand in the list", () => {
    const list = textOf("src/measures/index.ts");
    expect(measureFiles.filter((file) => !list.includes(`./${file.split("/").at(-1) ?? ""}`))).toEqual([]);
  });
  it("hold no literal of the trade: numbers inside functions are small counts, everything else is a named constant with its reason", () => {
    const plain = new Set(["0", "1", "2", "3", "4", "0.5", "180", "1000", "100"]);
    const wrong = sources
      .filter((file) => /^src\/(measures|site|engine)\//.test(file))
      .flatMap((file) =>
        withoutComments(textOf(file))
          .split("\n")
          .filter((line) => /^\s+/.test(line) && !/^\s*(?:default|weights?):/.test(line))
          .flatMap((line) =>
            [
              ...line
                .replace(/"[^"]*"|`[^`]*`|\/[^/]+\/[gimsu]*/g, "")
                .matchAll(/(?<![\w.])\d+(?:\.\d+)?(?:e-?\d+)?(?![\w.])/g),
            ].map(([number]) => ({ file, number, line: line.trim() })),
          )
          .filter(({ number }) => !plain.has(number) && !/^1e-?\d+$/.test(number)),
      );
    expect(wrong.filter(({ file, number }) => !(literalExceptions[file] ?? []).includes(number))).toEqual([]);
  });
});

/** Constants of a cited formula, or of a number format, that read better where they stand. At most a handful. */
const literalExceptions: Readonly<Record<string, readonly string[]>> = {
  "src/measures/beyond-structural-roots.ts": ["0.15", "1.5", "0.64", "50", "0.42"],
  "src/engine/judge.ts": ["0.95", "0.999", "0.05", "1.6448536269514722", "3.090232306167813"],
  "src/engine/fingerprint.ts": ["20"],
  "src/engine/compose.ts": ["0.005"],
  "src/engine/remedies.ts": ["0.95", "24", "8"],
  "src/engine/evaluate.ts": ["2.5"],
};

describe("rules", () => {
  const cards = yamlUnder("rules").filter(
    (file) => file.split("/").length === 3 && !file.startsWith("rules/tables/") && !file.endsWith(".cases.yaml"),
  );
  it("have their cases beside them, and no cases stand alone", () => {
    expect(cards.filter((card) => !existsSync(join(root, card.replace(/\.yaml$/, ".cases.yaml"))))).toEqual([]);
    const cases = yamlUnder("rules").filter((file) => file.endsWith(".cases.yaml"));
    expect(cases.filter((file) => !cards.includes(file.replace(".cases.yaml", ".yaml")))).toEqual([]);
  });
  it("stand in the index, which is up to date", () => {
    expect(textOf("rules/README.md")).toBe(ruleIndex());
  });
});

describe("words", () => {
  const printed = [
    ...sources,
    ...yamlUnder("rules"),
    ...filesUnder("examples", ".txt"),
    ...filesUnder("examples", ".md"),
    "README.md",
  ].filter((file) => existsSync(join(root, file)));
  it("never promise", () => {
    const wrong = printed.flatMap((file) =>
      textOf(file)
        .split("\n")
        .map((line, index) => ({ file, line: index + 1, text: line.trim() }))
        .filter(
          ({ text }) =>
            /\b(?:safe|safely|proof|\w+-proof|compliant|compliance|approved|certified)\b/i.test(text) &&
            !/title:|never says|never say|Approved Document/i.test(text),
        ),
    );
    expect(wrong).toEqual([]);
  });
});

describe("tests", () => {
  it("are none of them skipped, focused or put off", () => {
    const wrong = filesUnder("tests", ".ts").filter(
      (file) =>
        /\b(?:it|test|describe)\.(?:skip|only|todo|fails)\b/.test(withoutComments(textOf(file))) &&
        !file.endsWith("house.test.ts"),
    );
    expect(wrong).toEqual([]);
  });
});

describe("top level", () => {
  it("holds only what was agreed", () => {
    const agreed = [
      "src",
      "rules",
      "schemas",
      "tests",
      "examples",
      "package.json",
      "tsconfig.json",
      "README.md",
      "DEVELOPERS.md",
      "package-lock.json",
      "LICENCE",
      "CHANGELOG.md",
      "node_modules",
      "dist",
    ];
    expect(readdirSync(root).filter((name) => !name.startsWith(".") && !agreed.includes(name))).toEqual([]);
  });
});
