import { assertNever } from "../base";
import { isOpenToCouple, type State } from "./state";

/** Who asks, as seen from one booking. "stranger": a couple, but of another booking. "look": whom the couple gave a link to look. */
export type Role = "nobody" | "stranger" | "look" | "couple" | DeskRole;
/** Whoever works at the venue: one who only looks, one who works on bookings, one who besides changes the venue and who else is let in. */
export const DESK_ROLES = ["desk-look", "desk", "manager"] as const;
export type DeskRole = (typeof DESK_ROLES)[number];
export const ROLES: readonly Role[] = ["nobody", "stranger", "look", "couple", ...DESK_ROLES];

/** On one booking. */
export const BOOKING_ACTIONS = ["glance", "look", "answer", "arrange", "send", "return", "agree", "close", "invite", "share", "ask", "erase", "take-out", "adjust", "draft", "set-standard", "change-late", "numbers"] as const;
export type BookingAction = (typeof BOOKING_ACTIONS)[number];
/** On no booking in particular. */
export const DESK_ACTIONS = ["add", "queue", "mailbox", "venues", "edit-venue", "people"] as const;
export type DeskAction = (typeof DESK_ACTIONS)[number];

/** The one place that decides who may do what, and when. */
export function may(role: Role, action: BookingAction | DeskAction, state?: State): boolean {
  if (role === "nobody" || role === "stranger") return false;
  // Plan and answers, and not a thing more.
  if (role === "look") return action === "glance" && state !== "closed";
  if (role === "desk-look") return action === "glance" || action === "look" || action === "queue" || action === "venues";
  if (action === "edit-venue" || action === "people") return role === "manager";
  // For all else a manager is of the desk.
  return mayWork(role === "manager" ? "desk" : role, action, state);
}

function mayWork(role: "couple" | "desk", action: Exclude<BookingAction | DeskAction, "edit-venue" | "people">, state: State | undefined): boolean {
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
    case "draft":
    case "set-standard":
      return role === "desk" && state !== undefined && isOpenToCouple(state);
    case "change-late":
      return role === "desk" && state === "agreed";
    case "numbers":
      return (role === "couple" || role === "desk") && (state === "sent" || state === "agreed");
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
