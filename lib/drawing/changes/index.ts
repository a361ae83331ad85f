export { drawChanges } from "./draw";
export { changesOf, type Change, type ChangeKind } from "./say";
