export const STATES = ["invited", "started", "sent", "returned", "agreed", "closed"] as const;
export type State = (typeof STATES)[number];
