import { hashSecret, makeSecret } from "../access";
import { links, type Handle } from "../store";
import type { House } from "./house";
import { iso, nowIso } from "./moment";
import { linkTo } from "./post";

/** A link that signs a person in to the desk. */
export async function deskLink(tx: Handle, house: House, how: { readonly person: string; readonly lastsMs: number; readonly once: boolean; readonly browser?: string | null }): Promise<string> {
  const secret = makeSecret();
  await links.add(tx, {
    hash: hashSecret(secret), purpose: "desk", booking: null, person: how.person, once: how.once, browser: how.browser,
    madeAt: nowIso(house), expiresAt: iso(house.clock.now() + how.lastsMs),
  });
  return linkTo(house, "desk", secret);
}
