// A thread does not take over the loader of its parent: it registers its own before the first TypeScript file.
import { register } from "tsx/esm/api";

register();
await import("./works-thread.ts");
