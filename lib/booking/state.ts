import { assertNever, fail, ok, type Result } from "../base";

export const STATES = ["invited", "started", "sent", "returned", "agreed", "closed"] as const;
export type State = (typeof STATES)[number];

/** What happens to a booking. Numbers are those of revisions. */
export type BookingEvent =
  | { readonly type: "opened" }
  | { readonly type: "saved"; readonly step: string }
  | { readonly type: "chosen"; readonly layout: string }
  | { readonly type: "sent"; readonly number: number }
  /** The desk adjusted what was sent: a further revision stands for it. */
  | { readonly type: "amended"; readonly number: number }
  /** The desk changed what is agreed: a further revision waits to be agreed in its place. */
  | { readonly type: "changed"; readonly number: number }
  | { readonly type: "returned"; readonly number: number; readonly reason: string }
  | { readonly type: "agreed"; readonly number: number }
  | { readonly type: "closed"; readonly reason: string };

/** What has to be done with it, in the transaction that records it. */
export type Effect =
  | { readonly do: "mail"; readonly what: "sent-to-couple" | "sent-to-desk" | "returned" | "agreed" | "amended" | "changed" }
  | { readonly do: "withdraw-links" };

export type Standing = {
  readonly state: State;
  /** The newest revision sent; 0 before the first. */
  readonly lastNumber: number;
};
export type Step = { readonly state: State; readonly effects: readonly Effect[] };
export type Refused =
  | { readonly code: "wrong-state"; readonly state: State }
  | { readonly code: "not-the-last"; readonly lastNumber: number }
  | { readonly code: "no-reason" };

/** States in which the couple still change answers and layout. */
export const OPEN_TO_COUPLE: readonly State[] = ["invited", "started", "returned"];
export const isOpenToCouple = (state: State): boolean => OPEN_TO_COUPLE.includes(state);

/** `(state, event) → state and effects`, or why not. Pure: the caller records it and carries the effects out. */
export function step(now: Standing, event: BookingEvent): Result<Step, Refused> {
  const { state } = now;
  const wrong = fail({ code: "wrong-state", state } as const);
  switch (event.type) {
    case "opened":
      if (state === "closed") return wrong;
      return to(state === "invited" ? "started" : state);
    case "saved":
    case "chosen":
      if (!isOpenToCouple(state)) return wrong;
      // A returned booking stays returned until it is sent again: the coordinator's words still stand over it.
      return to(state === "invited" ? "started" : state);
    case "sent":
      if (!isOpenToCouple(state)) return wrong;
      if (event.number !== now.lastNumber + 1) return fail({ code: "not-the-last", lastNumber: now.lastNumber });
      return to("sent", { do: "mail", what: "sent-to-couple" }, { do: "mail", what: "sent-to-desk" });
    case "amended":
      if (state !== "sent") return wrong;
      if (event.number !== now.lastNumber + 1) return fail({ code: "not-the-last", lastNumber: now.lastNumber });
      return to("sent", { do: "mail", what: "amended" });
    case "changed":
      if (state !== "agreed") return wrong;
      if (event.number !== now.lastNumber + 1) return fail({ code: "not-the-last", lastNumber: now.lastNumber });
      return to("sent", { do: "mail", what: "changed" });
    case "returned":
      if (state !== "sent") return wrong;
      if (event.number !== now.lastNumber) return fail({ code: "not-the-last", lastNumber: now.lastNumber });
      if (event.reason.trim() === "") return fail({ code: "no-reason" });
      return to("returned", { do: "mail", what: "returned" });
    case "agreed":
      if (state !== "sent") return wrong;
      if (event.number !== now.lastNumber) return fail({ code: "not-the-last", lastNumber: now.lastNumber });
      return to("agreed", { do: "mail", what: "agreed" });
    case "closed":
      if (state === "closed") return wrong;
      return to("closed", { do: "withdraw-links" });
    default:
      return assertNever(event);
  }
}

const to = (state: State, ...effects: readonly Effect[]): Result<Step, Refused> => ok({ state, effects });
