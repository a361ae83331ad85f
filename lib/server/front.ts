import { randomBytes } from "node:crypto";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { Duplex } from "node:stream";
import { makeCounter } from "../access";
import type { Config } from "../config";
import { mendBroken } from "./broken-page";
import { addresses, turnedAway } from "./guard";
import { answerHeaders, makeNonce } from "./headers";
import { loggedPath, type Log } from "./log";
import type { Metrics } from "./metrics";

/** What answers behind the front: the pages. */
export type Handle = (request: IncomingMessage, response: ServerResponse) => Promise<void>;
export type Upgrade = (request: IncomingMessage, socket: Duplex, head: Buffer) => Promise<void>;
export type Front = {
  /** The port it listens on: the one asked for, or where that was 0 one that was free. */
  readonly port: number;
  /** Takes no more requests, lets those in hand end, and resolves when the last one has. */
  readonly stop: () => Promise<void>;
};
type How = {
  readonly config: Pick<Config, "host" | "port" | "origin" | "proxies">; readonly log: Log; readonly handle: Handle;
  /** Given by the development server alone. */
  readonly upgrade?: Upgrade;
  /** How long requests in hand may take to end once the server is told to stop, milliseconds. */
  readonly graceMs?: number;
  /** Hears of every answer. */
  readonly answered?: Metrics["answered"];
};

const KEPT_MS = 75_000;

/** What stands between the network and the pages: security headers, a fresh nonce and a number on every answer, a line in the log, and a stop that lets answers end. */
export async function openFront({ config, log, handle, upgrade, graceMs = 10_000, answered }: How): Promise<Front> {
  const https = config.origin.startsWith("https:");
  const inHand = new Set<ServerResponse>();
  let stopping = false;
  const guard = { ours: config.origin, counter: makeCounter(), addressOf: addresses(config.proxies) };
  const server = createServer((request, response) => {
    const id = randomBytes(8).toString("hex");
    inHand.add(response);
    response.once("close", () => inHand.delete(response));
    // The browser is not to keep a connection to a server that goes away.
    if (stopping) response.setHeader("Connection", "close");
    prepare(request, response, { id, https, dev: upgrade !== undefined });
    noteEnd({ request, response, log, id, answered });
    turnedAway(request, response, guard).then((away) => (away ? undefined : handle(request, response))).catch((error: unknown) => {
      log.error({ err: error, id, path: loggedPath(request.url ?? "") }, "a request broke");
      if (response.headersSent) { response.destroy(); return; }
      response.writeHead(500, { "Content-Type": "text/plain; charset=utf-8" });
      response.end(`This page could not be made. What was saved before is kept. Number for the venue: ${id}\n`);
    });
  });
  server.requestTimeout = 60_000;
  // Longer than proxies keep theirs (a minute is usual): else one of them sends a request down a line that is just being closed, and a save ends in a 502.
  server.keepAliveTimeout = KEPT_MS;
  server.headersTimeout = KEPT_MS + 5_000;
  server.on("upgrade", (request, socket, head) => {
    if (upgrade) upgrade(request, socket, head).catch(() => socket.destroy());
    else socket.destroy();
  });
  await listen(server, config);
  const stop = (): Promise<void> => {
    stopping = true;
    for (const response of inHand) if (!response.headersSent) response.setHeader("Connection", "close");
    return close(server, graceMs);
  };
  const at = server.address();
  return { port: at !== null && typeof at === "object" ? at.port : config.port, stop };
}

/** The nonce goes out with the answer, and in with the request: the framework reads it there and stamps its own scripts with it. */
function prepare(request: IncomingMessage, response: ServerResponse, facts: { readonly id: string; readonly https: boolean; readonly dev: boolean }): void {
  const path = (request.url ?? "/").split("?")[0] ?? "/";
  const nonce = makeNonce();
  const headers = answerHeaders({ path, https: facts.https, dev: facts.dev, nonce });
  delete request.headers["content-security-policy"];
  delete request.headers["content-security-policy-report-only"];
  const policy = headers["Content-Security-Policy"];
  if (policy !== undefined) request.headers["content-security-policy"] = policy;
  request.headers["x-request-id"] = facts.id;
  response.setHeader("X-Request-Id", facts.id);
  for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
  // The development server shows what broke.
  if (!facts.dev) mendBroken(request, response, { nonce, id: facts.id });
}

type Noted = { readonly request: IncomingMessage; readonly response: ServerResponse; readonly log: Log; readonly id: string; readonly answered?: Metrics["answered"] };
function noteEnd({ request, response, log, id, answered }: Noted): void {
  const began = performance.now();
  response.once("close", () => {
    const ms = performance.now() - began;
    answered?.({ method: request.method ?? "GET", path: (request.url ?? "/").split("?")[0] ?? "/", status: response.statusCode, seconds: ms / 1000 });
    const line = { id, method: request.method, path: loggedPath(request.url ?? ""), status: response.statusCode, ms: Math.round(ms) };
    if (response.writableFinished) log.info(line, "answered");
    else log.warn(line, "broken off");
  });
}

function listen(server: Server, { host, port }: Pick<Config, "host" | "port">): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, host, () => { server.off("error", reject); resolve(); });
  });
}

function close(server: Server, graceMs: number): Promise<void> {
  return new Promise((resolve) => {
    const hurry = setTimeout(() => server.closeAllConnections(), graceMs);
    // A connection that was kept open between two requests would hold the stop up.
    const idle = setInterval(() => server.closeIdleConnections(), 100);
    server.close(() => { clearTimeout(hurry); clearInterval(idle); resolve(); });
    server.closeIdleConnections();
  });
}
