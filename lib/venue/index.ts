export * from "./schema";
export * from "./site";
