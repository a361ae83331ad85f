import { assertNever } from "../base";
import { isOpenToCouple, type State } from "./state";

/** Who asks, as seen from one booking. "stranger": a couple, but of another booking. "look": whom the couple gave a link to look. */
export type Role = "nobody" | "stranger" | "look" | "couple" | "desk";
export const ROLES: readonly Role[] = ["nobody", "stranger", "look", "couple", "desk"];

/** On one booking. */
export const BOOKING_ACTIONS = ["glance", "look", "answer", "arrange", "send", "return", "agree", "close", "invite", "share", "ask", "erase", "take-out", "adjust"] as const;
export type BookingAction = (typeof BOOKING_ACTIONS)[number];
/** On no booking in particular. */
export const DESK_ACTIONS = ["add", "queue", "mailbox", "venues", "edit-venue"] as const;
export type DeskAction = (typeof DESK_ACTIONS)[number];

/** The one place that decides who may do what, and when. */
export function may(role: Role, action: BookingAction | DeskAction, state?: State): boolean {
  if (role === "nobody" || role === "stranger") return false;
  // Plan and answers, and not a thing more.
  if (role === "look") return action === "glance" && state !== "closed";
  switch (action) {
    case "glance":
    case "look":
    case "arrange":
      return true;
    case "answer":
    case "send":
      return role === "couple" && state !== undefined && isOpenToCouple(state);
    case "adjust":
      // What was sent is the desk's to adjust until it is answered; it then becomes a revision of its own.
      return state !== undefined && (isOpenToCouple(state) || (role === "desk" && state === "sent"));
    case "take-out":
      return role === "couple" || role === "desk";
    case "erase":
      return role === "desk" && state === "closed";
    case "return":
    case "agree":
      return role === "desk" && state === "sent";
    case "share":
      return role === "couple" && state !== "closed";
    case "ask":
      return role === "couple" && (state === "agreed" || (state !== undefined && isOpenToCouple(state)));
    case "close":
    case "invite":
      return role === "desk" && state !== "closed";
    case "add":
    case "queue":
    case "mailbox":
    case "venues":
    case "edit-venue":
      return role === "desk";
    default:
      return assertNever(action);
  }
}
