export * from "./schema";
export * from "./site";
export * from "./facts";
export * from "./parse";
