export { arrange, type ArrangeOptions } from "./arrange";
export { change, type ChangeOptions } from "./change";
export { repair, type RepairOptions } from "./repair";
export { settle } from "./settle";
export { ENGINE_VERSION } from "./version";
