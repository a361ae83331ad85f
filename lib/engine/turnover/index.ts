export { turnoversOfDay } from "./of-day";
export { turnoverPlans, turnovers, type TurnoverOptions, type TurnoverPlan } from "./turnovers";
export { assign, matching } from "./assignment";
export { finish } from "./schedule";
export type { Store } from "./walk";
