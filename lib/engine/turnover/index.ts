export { turnoverPlans, turnovers, turnoversOfDay, type TurnoverOptions, type TurnoverPlan } from "./turnovers";
export { assign, matching } from "./assignment";
export { finish, finishStages } from "./schedule";
export { storeFor, walkFrom, type Store } from "./walk";
export { CARRY, CREW, FLOW, HANDLING, ratesOf, WALK } from "./rates";
