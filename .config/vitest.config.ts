import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL("..", import.meta.url));

export default defineConfig({
  root,
  resolve: { alias: { "@ringtrue/sdk": `${root}sdk/src/index.ts` } },
  test: {
    include: ["tests/**/*.test.ts"],
    environment: "node",
    setupFiles: [`${root}tests/support/seed.ts`],
    testTimeout: 30_000,
  },
});
