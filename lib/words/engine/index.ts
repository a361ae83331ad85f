export { toldText, TOLD_CODES, type ToldCode } from "./told";
export { labelIn } from "./labels";
