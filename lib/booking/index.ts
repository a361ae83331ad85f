export * from "./state";
