/** What no layout can pass. Nothing else in the engine may say "impossible". */
export { proofs } from "./bounds/proofs";
export { ceilingOf, type Ceiling, type CeilingOptions } from "./bounds/ceiling";
export { olerPoints, olerRounds, type RoundAsk } from "./bounds/oler";
export type { Bound } from "./bounds/limits";
export { tablesOf } from "./bounds/stock";
