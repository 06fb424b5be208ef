// Bundles the program and the library: one file each, the validators and cards compiled in, notices beside.

import { createHash } from "node:crypto";
import { chmodSync, copyFileSync, rmSync, writeFileSync, readFileSync, existsSync, readdirSync } from "node:fs";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { build, type Plugin } from "esbuild";
import { loadProgram } from "../../src/cli/load-program.ts";
import type { main } from "../../src/cli/main.ts";
import { faultChecks } from "./compile-validators.ts";
import { root } from "./rule-files.ts";

const output = join(root, "dist");
const compiledData = /dist[\\/]compiled[\\/]\w+\.json$/;

/** Data as one text that is parsed when it is loaded: V8 reads that in half the time of the same written as code. */
const dataAsText: Plugin = {
  name: "data-as-text",
  setup: (building) =>
    building.onLoad({ filter: compiledData }, ({ path }) => ({
      contents: `export default JSON.parse(${JSON.stringify(plainText(path))});`,
      loader: "js",
    })),
};

/** Data in files beside the program, read when wanted: kept out of what V8 takes over at each start. */
const dataBeside: Plugin = {
  name: "data-beside",
  setup: (building) =>
    building.onLoad({ filter: compiledData }, ({ path }) => {
      writeFileSync(join(output, basename(path)), plainText(path));
      return {
        contents: `export default JSON.parse(require("node:fs").readFileSync(__dirname + "/${basename(path)}", "latin1"));`,
        loader: "js",
      };
    }),
};

/** The reader of YAML looks up a setting for those who mend it, once for each of its tokens: here it finds none without asking the system. */
const quietReader: Plugin = {
  name: "quiet-reader",
  setup: (building) => {
    building.onResolve({ filter: /^process$/ }, ({ importer }) =>
      /[\\/]yaml[\\/]dist[\\/]parse[\\/]/.test(importer) ? { path: "no-settings", namespace: "quiet" } : null,
    );
    building.onLoad({ filter: /.*/, namespace: "quiet" }, () => ({ contents: "module.exports = { env: {} };" }));
  },
};

/** JSON on one line in plain ASCII. */
const plainText = (path: string): string => inAscii(JSON.stringify(JSON.parse(readFileSync(path, "utf8"))));

/** Letters beyond ASCII as `\u` escapes: texts and regular expressions read them the same, and files of one byte a letter load faster. */
function inAscii(text: string): string {
  return text.replace(/[\u0080-\uffff]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, "0")}`);
}

for (const old of readdirSync(output).filter((name) => name === "chunks" || /\.(js|json|cjs|code)$/.test(name)))
  rmSync(join(output, old), { recursive: true, force: true });
const shared = {
  absWorkingDir: root,
  bundle: true,
  platform: "node",
  target: "node20",
  minify: true,
  legalComments: "none",
  metafile: true,
  logLevel: "warning",
} as const;

/** What stands for `import.meta.url` in CommonJS, which node starts some 15 ms sooner than a module. */
const ownAddress = 'require("node:url").pathToFileURL(__filename).href';

// The program: one file, named by its text, so that what V8 made of another text is never found beside it.
const whole = await build({
  ...shared,
  entryPoints: ["src/cli/main.ts"],
  outdir: output,
  format: "cjs",
  write: false,
  plugins: [dataBeside, quietReader],
  define: { "import.meta.url": "thisFile" },
  banner: { js: `const thisFile = ${ownAddress};` },
});
const text = inAscii(whole.outputFiles[0]?.text ?? "");
const name = `program-${createHash("sha256").update(text).digest("hex").slice(0, 10)}.cjs`;
writeFileSync(join(output, name), text);

/** Puts the bundled program where the starter would import its source. */
const programByName: Plugin = {
  name: "program-by-name",
  setup: (building) => {
    building.onResolve({ filter: /^\.\/main\.ts$/ }, () => ({ path: name, namespace: "program" }));
    building.onLoad({ filter: /.*/, namespace: "program" }, () => ({
      contents: `import { loadProgram } from "./load-program.ts"; export const { main } = loadProgram(new URL("./${name}", import.meta.url)).exports;`,
      resolveDir: join(root, "src/cli"),
    }));
  },
};
await build({
  ...shared,
  entryPoints: ["src/cli/sightrail.ts"],
  outfile: join(output, "sightrail.cjs"),
  format: "cjs",
  plugins: [programByName],
  define: { "import.meta.url": "thisFile" },
  banner: { js: `#!/usr/bin/env node\nconst thisFile = ${ownAddress};` },
});
chmodSync(join(output, "sightrail.cjs"), 0o755);

// The library: the same code for those who call it from their own.
const library = await build({
  ...shared,
  entryPoints: ["src/index.ts"],
  outfile: join(output, "index.js"),
  format: "esm",
  plugins: [dataAsText, quietReader],
  banner: {
    js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);',
  },
});
copyFileSync(join(output, "compiled", faultChecks), join(output, faultChecks));
const inputs = [...Object.keys(whole.metafile.inputs), ...Object.keys(library.metafile.inputs)];
writeFileSync(join(output, "NOTICES.txt"), notices(inputs));
await keepCompiled(join(output, name));

/** Runs the program over an example and keeps what V8 compiled of it, for this node's next start. */
async function keepCompiled(file: string): Promise<void> {
  const { exports, script } = loadProgram<{ main: typeof main }>(pathToFileURL(file));
  const quiet = { out: () => undefined, err: () => undefined, readInput: () => "", today: "2026-01-01", columns: 80 };
  for (const example of ["sallow-yard", "gate-and-lorry"])
    await exports.main(["check", join(root, "examples", example, "plan.yaml")], { ...quiet, colour: false });
  writeFileSync(`${file}.code`, script.createCachedData());
}

/** Licence texts of every package that went into the bundle. */
function notices(inputs: readonly string[]): string {
  const packages = new Set(inputs.flatMap((input) => /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(input)?.[1] ?? []));
  const texts = [...packages].sort().map((name) => {
    const folder = join(root, "node_modules", name);
    const about = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as {
      version: string;
      license?: string;
    };
    const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
    const text =
      file && existsSync(join(folder, file))
        ? readFileSync(join(folder, file), "utf8")
        : `Licence: ${about.license ?? "see the package"}`;
    return `${name} ${about.version}\n\n${text.trim()}\n`;
  });
  return `sightrail carries these packages.\n\n${texts.join("\n----\n\n")}`;
}
