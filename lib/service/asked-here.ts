import { browserCookie, cookieName, hashSecret, isSecret, makeSecret, readCookie } from "../access";
import type { House } from "./house";
import type { CookieToSet } from "./types";

/**
 * The mark of the browser that asks for a sign-in: the one that its cookies hold, else a new one. Set the cookie with the answer, and
 * hand `browser` on: what is mailed opens in that browser alone.
 */
export function markedBrowser(house: House, cookies: string | null): { readonly browser: string; readonly cookie: CookieToSet } {
  const browser = browserOf(house, cookies) ?? makeSecret();
  return { browser, cookie: browserCookie(house.origin, browser) };
}

/** The mark that a browser brought with it, if any. */
export function browserOf(house: House, cookies: string | null): string | undefined {
  const held = readCookie(cookies, cookieName("browser", house.origin));
  return held !== undefined && isSecret(held) ? held : undefined;
}

/** What is kept of a mark. */
export const hashOfBrowser = (browser: string | undefined): string | null => (browser === undefined ? null : hashSecret(`browser ${browser}`));
