import type { IncomingMessage, ServerResponse } from "node:http";
import { isFromOurPages } from "../access";

const MOST_BYTES = 6 * 1024 * 1024;

/** Turns away what no page of ours sends; true when it has answered. */
export function turnedAway(request: IncomingMessage, response: ServerResponse, ours: string): boolean {
  const header = (name: string): string | undefined => { const value = request.headers[name]; return typeof value === "string" ? value : undefined; };
  const allowed = isFromOurPages({ method: request.method ?? "GET", origin: header("origin"), fetchSite: header("sec-fetch-site"), host: header("host"), ours });
  if (!allowed) return answer(response, 403, "This form did not come from our own page. Open the page again and send it from there.");
  if (Number(header("content-length") ?? 0) > MOST_BYTES) return answer(response, 413, "That is more than 6 MB.");
  return false;
}

function answer(response: ServerResponse, status: number, words: string): true {
  response.writeHead(status, { "Content-Type": "text/plain; charset=utf-8", Connection: "close" });
  response.end(`${words}\n`);
  return true;
}
