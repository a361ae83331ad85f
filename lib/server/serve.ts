import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { setEnvironment, type Config } from "../config";
import { turnedAway } from "./guard";
import { answerHeaders, makeNonce } from "./headers";
import { loggedPath, type Log } from "./log";

export type Serving = { readonly stop: () => Promise<void> };
type How = { readonly config: Config; readonly log: Log; readonly dev: boolean; readonly dir: string };

/** How long requests in hand may take to end once the server is told to stop. */
const GRACE_MS = 10_000;

/** Puts the pages on the network: security headers and a fresh nonce on every answer, and a stop that lets answers end. */
export async function serve({ config, log, dev, dir }: How): Promise<Serving> {
  // Read by the framework when it is loaded, hence the late import.
  setEnvironment({ NODE_ENV: dev ? "development" : "production", NEXT_TELEMETRY_DISABLED: "1" });
  const { default: next } = await import("next");
  const app = next({ dev, dir, hostname: config.host, port: config.port });
  await app.prepare();
  const handle = app.getRequestHandler();
  const upgrade = app.getUpgradeHandler();
  const https = config.origin.startsWith("https:");

  const server = createServer((request, response) => {
    const path = (request.url ?? "/").split("?")[0] ?? "/";
    prepare(request, response, { path, https, dev });
    noteEnd(request, response, log);
    if (turnedAway(request, response, config.origin)) return;
    handle(request, response).catch((error: unknown) => {
      log.error({ err: error, path: loggedPath(request.url ?? "") }, "a request broke");
      if (!response.headersSent) response.writeHead(500);
      response.end();
    });
  });
  server.requestTimeout = 60_000;
  server.on("upgrade", (request, socket, head) => {
    if (!dev) socket.destroy();
    else upgrade(request, socket, head).catch(() => socket.destroy());
  });
  await listen(server, config);
  return { stop: async () => { await close(server); await app.close(); } };
}

/** The nonce goes out with the answer, and in with the request: the framework reads it there and stamps its own scripts with it. */
function prepare(request: IncomingMessage, response: ServerResponse, facts: { readonly path: string; readonly https: boolean; readonly dev: boolean }): void {
  const headers = answerHeaders({ ...facts, nonce: makeNonce() });
  delete request.headers["content-security-policy"];
  delete request.headers["content-security-policy-report-only"];
  const policy = headers["Content-Security-Policy"];
  if (policy !== undefined) request.headers["content-security-policy"] = policy;
  for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
}

function noteEnd(request: IncomingMessage, response: ServerResponse, log: Log): void {
  const began = performance.now();
  response.once("close", () => {
    log.info({ method: request.method, path: loggedPath(request.url ?? ""), status: response.statusCode, ms: Math.round(performance.now() - began) }, "answered");
  });
}

function listen(server: Server, { host, port }: Config): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, host, () => { server.off("error", reject); resolve(); });
  });
}

function close(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const hurry = setTimeout(() => server.closeAllConnections(), GRACE_MS);
    server.close(() => { clearTimeout(hurry); resolve(); });
    server.closeIdleConnections();
  });
}
