export { arrange, type ArrangeOptions } from "./arrange";
export { ENGINE_VERSION } from "./version";
