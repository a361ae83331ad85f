export { assertNever, invariant } from "./assert";
export type { Brand } from "./brand";
export type { Clock, Ids } from "./ports";
export { seeded, type Random } from "./random";
export { fail, ok, type Result } from "./result";
export { fitTo, readAs } from "./json";
export { pathText, type Path, type Problem } from "./problem";
export { folded, foldedWords } from "./fold";
