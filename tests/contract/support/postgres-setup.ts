import type { TestProject } from "vitest/node";
import { postgresServer } from "./postgres";

declare module "vitest" {
  // An interface, since that is what vitest lets be added to.
  // eslint-disable-next-line @typescript-eslint/consistent-type-definitions
  export interface ProvidedContext { readonly postgres: string | undefined }
}

/** One PostgreSQL server for all tests of this project; each test makes databases of its own on it. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await postgresServer();
  project.provide("postgres", server.url);
  return server.remove;
}
