export { movedStanding } from "./moved";
export { quote } from "./quote";
export { sums, taxOn } from "./tax";
