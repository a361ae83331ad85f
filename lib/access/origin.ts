const HARMLESS: readonly string[] = ["GET", "HEAD", "OPTIONS"];

/**
 * May this request change anything? One that does must come from our own pages. Browsers name the page's origin, and where they hide
 * it ("null") say by Sec-Fetch-Site whether it is ours. With neither header it is no browser that could have been led here by a
 * foreign page: whoever sends it must bring the cookie by its own hand.
 */
export function isFromOurPages(request: {
  readonly method: string; readonly origin: string | undefined; readonly fetchSite: string | undefined; readonly host: string | undefined; readonly ours: string;
}): boolean {
  if (HARMLESS.includes(request.method)) return true;
  if (request.origin !== undefined && request.origin !== "null") return request.origin === request.ours || isThisMachine(request);
  if (request.origin === undefined && request.fetchSite === undefined) return true;
  return request.fetchSite === "same-origin";
}

/** On one's own machine a page may be opened as localhost or by number; the origin must still be the host that was asked. */
function isThisMachine({ origin, host, ours }: { readonly origin: string | undefined; readonly host: string | undefined; readonly ours: string }): boolean {
  if (origin === undefined || host === undefined || !isLoopback(new URL(ours).hostname)) return false;
  const from = URL.canParse(origin) ? new URL(origin) : undefined;
  return from !== undefined && from.host === host && isLoopback(from.hostname);
}

const isLoopback = (name: string): boolean => name === "localhost" || name === "127.0.0.1" || name === "[::1]";
