import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/long/**", "tests/outside/**", "node_modules/**", "dist/**"],
    isolate: false,
    pool: "threads",
    testTimeout: 60_000,
  },
});
