export * from "./types";
export * from "./footprint";
export * from "./pieces";
export * from "./schema";
