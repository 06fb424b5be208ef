import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/long/**/*.long.ts"],
    isolate: false,
    pool: "threads",
    testTimeout: 1_800_000,
  },
});
