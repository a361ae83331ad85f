import { randomBytes } from "node:crypto";

export type HeaderFacts = { readonly path: string; readonly https: boolean; readonly dev: boolean; readonly nonce: string };

/** 128 random bits, fresh for every answer. */
export const makeNonce = (): string => randomBytes(16).toString("base64");

/** The headers that every answer carries. */
export function answerHeaders(facts: HeaderFacts): Readonly<Record<string, string>> {
  const policy = contentPolicy(facts);
  return {
    ...(policy === undefined ? {} : { "Content-Security-Policy": policy }),
    // Not "no-referrer": browsers would then send "Origin: null" with our own forms.
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), microphone=(), geolocation=(), payment=(), usb=()",
    "X-Robots-Tag": "noindex, nofollow",
    ...(facts.https ? { "Strict-Transport-Security": "max-age=31536000" } : {}),
    ...(isFixedAsset(facts.path) ? {} : { "Cache-Control": "no-store" }),
  };
}

/** Built files carry their content's hash in their name and say themselves how long they keep. */
const isFixedAsset = (path: string): boolean => path.startsWith("/_next/static/");

/** What a page may load and run (CSP level 3). Undefined for a PDF: it is no page, and its viewer would be bound by it. */
export function contentPolicy({ path, https, dev, nonce }: HeaderFacts): string | undefined {
  if (path.endsWith(".pdf")) return undefined;
  // A drawing opened by itself: its own styles, and nothing that runs.
  if (path.startsWith("/api/")) return "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";
  const scripts = `'self' 'nonce-${nonce}'${dev ? " 'unsafe-eval'" : ""}`;
  // The overlay of the development server injects styles without a nonce.
  const styles = dev ? "'self' 'unsafe-inline'" : `'self' 'nonce-${nonce}'`;
  return [
    "default-src 'none'", `script-src ${scripts}`, `style-src ${styles}`, "img-src 'self' data: blob:", "font-src 'self'",
    `connect-src 'self'${dev ? " ws: wss:" : ""}`, "worker-src 'self'", "manifest-src 'self'", "form-action 'self'", "base-uri 'none'",
    "frame-ancestors 'none'", "object-src 'none'", ...(https ? ["upgrade-insecure-requests"] : []),
  ].join("; ");
}
