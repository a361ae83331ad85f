export { netArea, peopleOf, postedFor, type People, type RoomLoad, type SceneLoad } from "./people";
export { HOUSE_RULES, PROFILE_VALUES, ruleValues, type Gaps, type RuleValues } from "./values";
export * from "./ways";
