import { ok } from "../base";
import { hashSecret, isSecret } from "../access";
import { linkAsks, links } from "../store";
import { hashOfBrowser } from "./asked-here";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Outcome } from "./types";

/** Longer than any mail address (RFC 5321, 4.5.3.1.3: 256 with its brackets). */
const MOST = 254;

/** Asks for a one-time sign-in link to the desk. The same is done for every address, so that neither words nor time tell whose it is; `answerAsks` does the rest. */
export async function askDeskLink(house: House, { email, browser }: { readonly email: string; readonly browser?: string }): Promise<Outcome<null>> {
  return note(house, { side: "desk", address: tidy(email), booking: null, browser: hashOfBrowser(browser) });
}

/** Asks for a fresh link to every open booking of an address; as little is told. */
export async function askCoupleLink(house: House, { email }: { readonly email: string }): Promise<Outcome<null>> {
  return note(house, { side: "couple", address: tidy(email), booking: null, browser: null });
}

/** Asks for a fresh link in place of one that ran out or was replaced. Answers the same whether the key is known or not. */
export async function renewLink(house: House, { key, browser }: { readonly key: string; readonly browser?: string }): Promise<Outcome<null>> {
  const link = isSecret(key) ? await links.find(house.store.db, hashSecret(key)) : undefined;
  return note(house, { side: link && link.person !== null ? "desk" : "couple", address: link?.person ?? null, booking: link?.booking ?? null, browser: hashOfBrowser(browser) });
}

// A zero character is in no address, and the database takes none.
const tidy = (email: string): string => email.replaceAll("\0", "").trim().toLowerCase().slice(0, MOST);

async function note(house: House, ask: Omit<linkAsks.NewLinkAsk, "askedAt">): Promise<Outcome<null>> {
  await linkAsks.add(house.store.db, { ...ask, askedAt: nowIso(house) });
  house.poke();
  return ok(null);
}
