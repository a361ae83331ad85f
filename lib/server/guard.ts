import type { IncomingMessage, ServerResponse } from "node:http";
import proxyAddr from "proxy-addr";
import { isFromOurPages, rateOf, type Counter } from "../access";

const MOST_BYTES = 6 * 1024 * 1024;
/** What our pages send, and no more: the framework would answer a DELETE of a page with the page (ASVS 5.0, 4.1.4). */
const METHODS: readonly string[] = ["GET", "HEAD", "POST"];

type Guard = { readonly ours: string; readonly counter: Counter; readonly addressOf: (request: IncomingMessage) => string | undefined };

/** Turns away what no page of ours sends, and who sends too much of it; true when it has answered. */
export async function turnedAway(request: IncomingMessage, response: ServerResponse, { ours, counter, addressOf }: Guard): Promise<boolean> {
  const header = (name: string): string | undefined => { const value = request.headers[name]; return typeof value === "string" ? value : undefined; };
  const method = request.method ?? "GET";
  if (!METHODS.includes(method)) {
    response.setHeader("Allow", METHODS.join(", "));
    return answer(response, 405, "No page here is asked in that way.");
  }
  // No name of ours holds a zero character, and no database takes one.
  if (request.url?.includes("%00")) return answer(response, 400, "This address holds a character that none of ours has.");
  const allowed = isFromOurPages({ method, origin: header("origin"), fetchSite: header("sec-fetch-site"), host: header("host"), ours });
  if (!allowed) return answer(response, 403, "This form did not come from our own page. Open the page again and send it from there.");
  if (header("transfer-encoding") !== undefined) return answer(response, 411, "Say how long it is (Content-Length).");
  if (Number(header("content-length") ?? 0) > MOST_BYTES) return answer(response, 413, "That is more than 6 MB.");
  const rate = rateOf({ method, path: (request.url ?? "/").split("?")[0] ?? "/" });
  const from = rate && addressOf(request);
  if (rate === undefined || from === undefined) return false;
  const counted = await counter(rate, from);
  if (counted.ok) return false;
  response.setHeader("Retry-After", String(counted.wait));
  return answer(response, 429, `Too much came from your network in a short time. Nothing is lost: try again in ${Math.ceil(counted.wait / 60)} min.`);
}

/**
 * Whom a request comes from. What forwarded it is believed only where it is named: without proxies it is the other end of the line.
 * This machine itself is not counted where no proxy is named: whoever sits at it is at home.
 */
export function addresses(proxies: readonly string[]): (request: IncomingMessage) => string | undefined {
  const trusted = proxyAddr.compile([...proxies]);
  return (request) => {
    if (request.socket.remoteAddress === undefined) return undefined;
    const address = proxyAddr(request, trusted);
    return proxies.length === 0 && isThisMachine(address) ? undefined : wide(address);
  };
}

const isThisMachine = (address: string): boolean => address === "::1" || address.replace("::ffff:", "").startsWith("127.");
/** A home has a whole /64 of IPv6 to itself: its first four groups are counted together. */
const wide = (address: string): string => {
  const four = address.startsWith("::ffff:") ? address.slice(7) : address;
  return four.includes(":") ? four.split(":").slice(0, 4).join(":") : four;
};

function answer(response: ServerResponse, status: number, words: string): true {
  response.writeHead(status, { "Content-Type": "text/plain; charset=utf-8", Connection: "close" });
  response.end(`${words}\n`);
  return true;
}
