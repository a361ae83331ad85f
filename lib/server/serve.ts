import { setEnvironment, type Config } from "../config";
import { openFront } from "./front";
import type { Log } from "./log";
import type { Metrics } from "./metrics";

export type Serving = { readonly stop: () => Promise<void> };
type How = { readonly config: Config; readonly log: Log; readonly dev: boolean; readonly dir: string; readonly metrics: Metrics };

/** Puts the pages on the network, behind the front. */
export async function serve({ config, log, dev, dir, metrics }: How): Promise<Serving> {
  // Read by the framework when it is loaded, hence the late import.
  setEnvironment({ NODE_ENV: dev ? "development" : "production", NEXT_TELEMETRY_DISABLED: "1" });
  const { default: next } = await import("next");
  const app = next({ dev, dir, hostname: config.host, port: config.port });
  await app.prepare();
  const handle = app.getRequestHandler();
  const front = await openFront({ config, log, answered: metrics.answered, handle: (request, response) => handle(request, response), upgrade: dev ? app.getUpgradeHandler() : undefined });
  return { stop: async () => { await front.stop(); await app.close(); } };
}
