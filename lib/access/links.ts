import type { LinkRow } from "../store";

export type LinkFault = { readonly code: "link"; readonly why: "unknown" | "expired" | "used" | "revoked" | "elsewhere" };

/** What is wrong with a link at a moment (milliseconds since 1970 UTC), if anything; `browser`: the hash of the mark of the one that brings it. */
export function faultOf(link: LinkRow | undefined, now: number, browser: string | null = null): LinkFault | undefined {
  if (!link) return { code: "link", why: "unknown" };
  if (link.revokedAt !== null) return { code: "link", why: "revoked" };
  if (link.once && link.usedAt !== null) return { code: "link", why: "used" };
  if (now >= Date.parse(link.expiresAt)) return { code: "link", why: "expired" };
  if (link.browser !== null && link.browser !== browser) return { code: "link", why: "elsewhere" };
  return undefined;
}
