import { cookieName, hashSecret, isSecret, readCookie, sessionCookie, type Side } from "../access";
import { sessions } from "../store";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { CookieToSet } from "./types";

/** Ends the session; the cookie returned clears it. */
export async function signOut(house: House, { cookie, side }: { readonly cookie: string | null | undefined; readonly side: Side }): Promise<CookieToSet> {
  const secret = readCookie(cookie, cookieName(side, house.origin));
  if (secret !== undefined && isSecret(secret)) await sessions.end(house.store.db, hashSecret(secret), nowIso(house));
  return sessionCookie(side, house.origin, "clear");
}
