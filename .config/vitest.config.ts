import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL("..", import.meta.url));

/** What is tried on the embedded database and, word for word the same, on a PostgreSQL server. */
const ON_BOTH = ["tests/contract/{store,service,service-matrix,adjust,edit-venue,paste,agreed-twice,people,desk-week,late-works,queue,access,mail,due-dates,backup,killed,erasure}.test.ts"];
/** What takes several processes on one database, or the server's own failing. */
const ON_SERVER = ["tests/contract/{workers,database-away}.test.ts"];

export default defineConfig({
  root,
  resolve: { alias: { "@": root } },
  test: {
    // Far above what any test takes: on a loaded machine a test is slow, not wrong.
    testTimeout: 240_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // Each worker keeps what it has read and warmed up from one file to the next, as the house keeps it from one day to the next.
    isolate: false,
    projects: [
      { extends: true, test: { name: "house", include: ["tests/{unit,properties,golden,outside,contract,house}/**/*.test.ts"], exclude: ON_SERVER } },
      { extends: true, test: { name: "postgresql", include: [...ON_BOTH, ...ON_SERVER], globalSetup: "tests/contract/support/postgres-setup.ts" } },
    ],
  },
});
