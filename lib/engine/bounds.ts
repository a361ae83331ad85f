/** What no layout can pass. Nothing else in the engine may say "impossible". */
export { proofs } from "./bounds/proofs";
export { ceilingOf, kindOf, type Ceiling, type CeilingOptions } from "./bounds/ceiling";
export { convexHull, olerPoints, olerRounds, type RoundAsk } from "./bounds/oler";
export { drapesOf, exitsFrom, roomBound, widestBound, type Bound } from "./bounds/limits";
export { chairs, chairsNeeded, tablePlaces, tablesOf } from "./bounds/stock";
