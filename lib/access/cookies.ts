/** "look": who was given a link by the couple to look at their day, and change nothing. */
export type Side = "couple" | "desk" | "look";

/**
 * The cookie's name. The `__Host-` prefix (RFC 6265bis) makes browsers refuse it from anywhere but this very host over https;
 * over plain http, on one's own machine, they would refuse it altogether.
 */
export function cookieName(side: Side | "browser", origin: string): string {
  const name = `marquetry-${side}`;
  return origin.startsWith("https:") ? `__Host-${name}` : name;
}

export type CookieToSet = {
  readonly name: string;
  readonly value: string;
  readonly options: {
    readonly httpOnly: true; readonly sameSite: "lax"; readonly secure: boolean; readonly path: "/"; readonly maxAge: number;
  };
};

/** A session's cookie; an empty value with no seconds to live clears it. */
export function sessionCookie(side: Side, origin: string, value: { readonly secret: string; readonly seconds: number } | "clear"): CookieToSet {
  return {
    name: cookieName(side, origin),
    value: value === "clear" ? "" : value.secret,
    options: { httpOnly: true, sameSite: "lax", secure: origin.startsWith("https:"), path: "/", maxAge: value === "clear" ? 0 : value.seconds },
  };
}

/** How long a browser is known as the one that asked for a sign-in, seconds: longer than what is mailed lasts. */
const BROWSER_SECONDS = 3_600;
/** The mark of the browser that asks for a sign-in. It opens nothing by itself. */
export const browserCookie = (origin: string, secret: string): CookieToSet =>
  ({ name: cookieName("browser", origin), value: secret, options: { httpOnly: true, sameSite: "lax", secure: origin.startsWith("https:"), path: "/", maxAge: BROWSER_SECONDS } });

/** The value of one cookie in a request's Cookie header (RFC 6265, 5.4). The first of two alike counts. */
export function readCookie(header: string | null | undefined, name: string): string | undefined {
  for (const pair of (header ?? "").split(";")) {
    const at = pair.indexOf("=");
    if (at > 0 && pair.slice(0, at).trim() === name) return pair.slice(at + 1).trim();
  }
  return undefined;
}
