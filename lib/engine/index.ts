export { arrange, type ArrangeOptions } from "./arrange";
export { capacity } from "./capacity";
export { ENGINE_VERSION } from "./version";
