export * from "./schema";
export * from "./parse";
export { LAYOUTS, questionOf, SEED } from "./question";
