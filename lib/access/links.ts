import type { LinkRow } from "../store";

export type LinkFault = { readonly code: "link"; readonly why: "unknown" | "expired" | "used" | "revoked" };

/** What is wrong with a link at a moment (milliseconds since 1970 UTC), if anything. */
export function faultOf(link: LinkRow | undefined, now: number): LinkFault | undefined {
  if (!link) return { code: "link", why: "unknown" };
  if (link.revokedAt !== null) return { code: "link", why: "revoked" };
  if (link.once && link.usedAt !== null) return { code: "link", why: "used" };
  if (now >= Date.parse(link.expiresAt)) return { code: "link", why: "expired" };
  return undefined;
}
