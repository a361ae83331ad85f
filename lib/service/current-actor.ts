import { cookieName, hashSecret, isSecret, readCookie, sessionState, type Side } from "../access";
import { bookings, sessions } from "../store";
import { deskRole } from "./desk-people";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor } from "./types";

type From = { readonly cookie: string | null | undefined; readonly side: Side | "either" };
const NOBODY: Actor = { kind: "nobody" };

/** Who the request's cookie speaks for. `side` "either" prefers the desk. */
export async function currentActor(house: House, { cookie, side }: From): Promise<Actor> {
  if (side !== "either") return actorOf(house, cookie, side);
  const desk = await actorOf(house, cookie, "desk");
  return desk.kind === "nobody" ? actorOf(house, cookie, "couple") : desk;
}

async function actorOf(house: House, cookie: string | null | undefined, side: Side): Promise<Actor> {
  const secret = readCookie(cookie, cookieName(side, house.origin));
  if (secret === undefined || !isSecret(secret)) return NOBODY;
  const { db } = house.store;
  const session = await sessions.find(db, hashSecret(secret));
  if (!session || session.side !== side) return NOBODY;
  const state = sessionState(session, house.clock.now());
  if (state === "over") return NOBODY;
  if (state === "alive, note it") await sessions.seen(db, session.hash, nowIso(house));
  if (session.person !== null) {
    // Who was taken off the list is out at once, whatever session is still open.
    const role = await deskRole(house, db, session.person);
    return role ? { kind: "desk", person: session.person, role } : NOBODY;
  }
  if (session.booking === null) return NOBODY;
  if (side === "desk" || !(await bookings.isThere(db, session.booking))) return NOBODY;
  return { kind: side, reference: session.booking };
}
