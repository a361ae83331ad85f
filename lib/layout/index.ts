export * from "./types";
export * from "./footprint";
export * from "./schema";
