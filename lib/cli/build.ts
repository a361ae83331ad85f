import { fileURLToPath } from "node:url";
import { build } from "../server/build";

/** `npm run build`: builds the pages, and tells nobody. */
process.exitCode = build(fileURLToPath(new URL("../..", import.meta.url))) ? 0 : 1;
