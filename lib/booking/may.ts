import { assertNever } from "../base";
import { isOpenToCouple, type State } from "./state";

/** Who asks, as seen from one booking. "stranger": a couple, but of another booking. */
export type Role = "nobody" | "stranger" | "couple" | "desk";
export const ROLES: readonly Role[] = ["nobody", "stranger", "couple", "desk"];

/** On one booking. */
export const BOOKING_ACTIONS = ["look", "answer", "arrange", "send", "return", "agree", "close", "invite"] as const;
export type BookingAction = (typeof BOOKING_ACTIONS)[number];
/** On no booking in particular. */
export const DESK_ACTIONS = ["add", "queue", "mailbox", "venues"] as const;
export type DeskAction = (typeof DESK_ACTIONS)[number];

/** The one place that decides who may do what, and when. */
export function may(role: Role, action: BookingAction | DeskAction, state?: State): boolean {
  if (role === "nobody" || role === "stranger") return false;
  switch (action) {
    case "look":
    case "arrange":
      return true;
    case "answer":
    case "send":
      return role === "couple" && state !== undefined && isOpenToCouple(state);
    case "return":
    case "agree":
      return role === "desk" && state === "sent";
    case "close":
    case "invite":
      return role === "desk" && state !== "closed";
    case "add":
    case "queue":
    case "mailbox":
    case "venues":
      return role === "desk";
    default:
      return assertNever(action);
  }
}
