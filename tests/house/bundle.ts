// Bundles the program and the library: one file each with shared chunks, the validators and cards compiled in, notices beside.

import { rmSync, writeFileSync, readFileSync, existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { root } from "./rule-files.ts";

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
  banner: {
    js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);',
  },
  logLevel: "warning",
});
const program = join(root, "dist/sightrail.js");
writeFileSync(program, `#!/usr/bin/env node\n${readFileSync(program, "utf8")}`, { mode: 0o755 });
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
