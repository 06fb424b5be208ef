// Bundles the program and the library: one file each with shared chunks, the validators and cards compiled in, notices beside.

import { copyFileSync, rmSync, writeFileSync, readFileSync, existsSync, readdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { build, type Plugin } from "esbuild";
import { faultChecks } from "./compile-validators.ts";
import { root } from "./rule-files.ts";

/** Data as one text that is parsed when it is loaded: V8 reads that in half the time of the same written as code. */
const dataAsText: Plugin = {
  name: "data-as-text",
  setup: (building) =>
    building.onLoad({ filter: /dist[\\/]compiled[\\/]\w+\.json$/ }, ({ path }) => {
      const text = JSON.stringify(JSON.parse(readFileSync(path, "utf8")));
      return { contents: `export default JSON.parse(${JSON.stringify(text)});`, loader: "js" };
    }),
};

for (const old of ["sightrail.js", "index.js", "chunks"])
  rmSync(join(root, "dist", old), { recursive: true, force: true });
const result = await build({
  absWorkingDir: root,
  entryPoints: { sightrail: "src/cli/sightrail.ts", index: "src/index.ts" },
  outdir: "dist",
  chunkNames: "chunks/[name]-[hash]",
  bundle: true,
  splitting: true,
  format: "esm",
  platform: "node",
  target: "node20",
  minify: true,
  legalComments: "none",
  metafile: true,
  plugins: [dataAsText],
  banner: {
    js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);',
  },
  logLevel: "warning",
});
const program = join(root, "dist/sightrail.js");
writeFileSync(program, `#!/usr/bin/env node\n${readFileSync(program, "utf8")}`, { mode: 0o755 });
// The checks that tell faults are loaded from beside the file that the quick ones went into.
for (const [file, { inputs }] of Object.entries(result.metafile.outputs))
  if ("dist/compiled/validators.js" in inputs)
    copyFileSync(join(root, "dist/compiled", faultChecks), join(root, dirname(file), faultChecks));
writeFileSync(join(root, "dist/NOTICES.txt"), notices(Object.keys(result.metafile.inputs)));

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
