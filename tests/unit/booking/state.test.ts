import { describe, expect, it } from "vitest";
import { isOpenToCouple, may, ROLES, STATES, step, type BookingEvent, type State } from "../../../lib/booking";

const now = (state: State, lastNumber = 0) => ({ state, lastNumber });
const EVENTS: readonly BookingEvent[] = [
  { type: "opened" }, { type: "saved", step: "guests" }, { type: "chosen", layout: "a" }, { type: "sent", number: 2 },
  { type: "returned", number: 1, reason: "why" }, { type: "agreed", number: 1 }, { type: "closed", reason: "" }, { type: "amended", number: 2 },
];

describe("the state machine of a booking", () => {
  it("knows for every state and event where it leads, or refuses", () => {
    const table = STATES.map((state) => EVENTS.map((event) => {
      const next = step(now(state, 1), event);
      return next.ok ? next.value.state : "-";
    }));
    expect(table).toEqual([
      // opened, saved, chosen, sent, returned, agreed, closed, amended
      /* invited  */ ["started", "started", "started", "sent", "-", "-", "closed", "-"],
      /* started  */ ["started", "started", "started", "sent", "-", "-", "closed", "-"],
      /* sent     */ ["sent", "-", "-", "-", "returned", "agreed", "closed", "sent"],
      /* returned */ ["returned", "returned", "returned", "sent", "-", "-", "closed", "-"],
      /* agreed   */ ["agreed", "-", "-", "-", "-", "-", "closed", "-"],
      /* closed   */ ["-", "-", "-", "-", "-", "-", "-", "-"],
    ]);
  });

  it("takes only the next number when sent, and only the last when answered", () => {
    expect(step(now("started", 3), { type: "sent", number: 5 })).toEqual({ ok: false, error: { code: "not-the-last", lastNumber: 3 } });
    expect(step(now("sent", 3), { type: "agreed", number: 2 })).toEqual({ ok: false, error: { code: "not-the-last", lastNumber: 3 } });
    expect(step(now("sent", 3), { type: "returned", number: 2, reason: "why" })).toEqual({ ok: false, error: { code: "not-the-last", lastNumber: 3 } });
  });

  it("returns nothing without a reason", () => {
    expect(step(now("sent", 1), { type: "returned", number: 1, reason: " \n" })).toEqual({ ok: false, error: { code: "no-reason" } });
  });

  it("mails couple and desk when sent, the couple when answered, and withdraws the links when closed", () => {
    const effects = (state: State, event: BookingEvent) => { const next = step(now(state, 1), event); return next.ok ? next.value.effects : []; };
    expect(effects("started", { type: "sent", number: 2 })).toEqual([{ do: "mail", what: "sent-to-couple" }, { do: "mail", what: "sent-to-desk" }]);
    expect(effects("sent", { type: "returned", number: 1, reason: "why" })).toEqual([{ do: "mail", what: "returned" }]);
    expect(effects("sent", { type: "agreed", number: 1 })).toEqual([{ do: "mail", what: "agreed" }]);
    expect(effects("sent", { type: "amended", number: 2 })).toEqual([{ do: "mail", what: "amended" }]);
    expect(effects("sent", { type: "closed", reason: "" })).toEqual([{ do: "withdraw-links" }]);
  });
});

describe("who may do what", () => {
  it("lets couple and desk adjust an open layout, and the desk alone what was sent", () => {
    for (const state of STATES) {
      expect(may("couple", "adjust", state)).toBe(isOpenToCouple(state));
      expect(may("desk", "adjust", state)).toBe(isOpenToCouple(state) || state === "sent");
      expect(may("look", "adjust", state)).toBe(false);
    }
  });

  it("gives nothing to nobody and to the couple of another booking", () => {
    for (const role of ["nobody", "stranger"] as const) {
      for (const action of ["look", "answer", "arrange", "send", "return", "agree", "close", "invite", "add", "queue", "mailbox", "venues"] as const) {
        expect(STATES.some((state) => may(role, action, state)), `${role} ${action}`).toBe(false);
      }
    }
  });

  it("lets a couple answer and send while the booking is open to it, and never agree", () => {
    for (const state of STATES) {
      expect(may("couple", "answer", state)).toBe(isOpenToCouple(state));
      expect(may("couple", "send", state)).toBe(isOpenToCouple(state));
      expect(may("couple", "agree", state)).toBe(false);
      expect(may("couple", "return", state)).toBe(false);
    }
  });

  it("lets the desk answer what was sent, and nothing in the couple's name", () => {
    for (const state of STATES) {
      expect(may("desk", "agree", state)).toBe(state === "sent");
      expect(may("desk", "return", state)).toBe(state === "sent");
      expect(may("desk", "answer", state)).toBe(false);
      expect(may("desk", "send", state)).toBe(false);
    }
  });

  it("lets the desk and the couple look in every state", () => {
    expect(ROLES.filter((role) => STATES.every((state) => may(role, "look", state)))).toEqual(["couple", "desk-look", "desk", "manager"]);
  });

  it("lets whoever only looks at the desk change nothing, and a manager alone the venue and its people", () => {
    for (const state of STATES) for (const action of ["answer", "send", "return", "agree", "close", "invite", "adjust", "draft", "set-standard", "change-late", "numbers", "erase", "arrange", "add", "mailbox"] as const) {
      expect(may("desk-look", action, state), `${action} ${state}`).toBe(false);
      expect(may("manager", action, state), `${action} ${state}`).toBe(may("desk", action, state));
    }
    for (const action of ["edit-venue", "people"] as const) expect(ROLES.filter((role) => may(role, action))).toEqual(["manager"]);
  });
});
