import { createServer } from "node:http";
import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry, type OpenMetricsContentType } from "prom-client";
import { rateOf } from "../access";
import type { Clock } from "../base";
import type { Config } from "../config";
import type { Delivered } from "../jobs";
import { outbox, type Store } from "../store";

/** What is counted and how long it took; the words are fixed and few, and none tells of a booking or a person. */
export type Metrics = {
  readonly answered: (one: { readonly method: string; readonly path: string; readonly status: number; readonly seconds: number }) => void;
  readonly mailed: (how: Delivered) => void;
  /** One job of the works (`verb`), begun: gives what is to be called when it has ended. */
  readonly working: (verb: string) => (ended: "well" | "badly") => void;
  /** The figures as OpenMetrics text (openmetrics.io, 1.0). */
  readonly text: (store: Store) => Promise<{ readonly type: string; readonly text: string }>;
};

/** Kinds of requests, by what they cost: a paper is printed, a form is saved, a page is made. */
export function classOf({ method, path }: { readonly method: string; readonly path: string }): "asset" | "health" | "link" | "paper" | "form" | "desk page" | "page" {
  if (path.startsWith("/_next/") || path === "/icon.svg") return "asset";
  if (path.startsWith("/api/health/")) return "health";
  const rate = rateOf({ method, path });
  if (rate !== undefined) return ({ links: "link", papers: "paper", forms: "form" } as const)[rate];
  return path === "/desk" || path.startsWith("/desk/") ? "desk page" : "page";
}

export function makeMetrics(clock: Clock): Metrics {
  const register = new Registry<OpenMetricsContentType>();
  register.setContentType(Registry.OPENMETRICS_CONTENT_TYPE);
  collectDefaultMetrics({ register });
  const registers = [register];
  const answers = new Histogram({ name: "marquetry_answer_seconds", help: "Time to answer a request", labelNames: ["kind", "status"], buckets: [0.01, 0.03, 0.1, 0.3, 1, 3, 10, 30], registers });
  const mails = new Counter({ name: "marquetry_mails", help: "Mails by how their sending ended", labelNames: ["ended"], registers });
  const works = new Histogram({ name: "marquetry_works_seconds", help: "Time from asking the works to their answer, waiting included", labelNames: ["verb", "ended"], buckets: [0.01, 0.1, 0.3, 1, 3, 10, 30, 100, 300], registers });
  const inHand = new Gauge({ name: "marquetry_works_in_hand", help: "Jobs of the works that were asked for and have not ended", labelNames: ["verb"], registers });
  const waiting = new Gauge({ name: "marquetry_mails_waiting", help: "Mails that have yet to leave", registers });
  const failed = new Gauge({ name: "marquetry_mails_failed", help: "Mails that were given up", registers });
  const oldest = new Gauge({ name: "marquetry_oldest_due_mail_seconds", help: "How long the mail that waits longest has been due", registers });
  return {
    answered: ({ method, path, status, seconds }) => { answers.observe({ kind: classOf({ method, path }), status: `${Math.floor(status / 100)}xx` }, seconds); },
    mailed: (how) => { mails.inc({ ended: how }); },
    working: (verb) => {
      const began = performance.now();
      inHand.inc({ verb });
      return (ended) => { inHand.dec({ verb }); works.observe({ verb, ended }, (performance.now() - began) / 1000); };
    },
    text: async ({ db }) => {
      const now = clock.now(), counts = await outbox.counts(db), due = await outbox.oldestDue(db, new Date(now).toISOString());
      waiting.set(counts.waiting);
      failed.set(counts.failed);
      oldest.set(due === undefined ? 0 : (now - Date.parse(due)) / 1000);
      return { type: register.contentType, text: await register.metrics() };
    },
  };
}

export type MetricsPort = { readonly port: number; readonly close: () => Promise<void> };

/** Shows the figures at `/metrics` on an address of their own, which the proxy does not hand on: they are for the venue's own eyes. */
export async function openMetrics(at: NonNullable<Config["metrics"]>, metrics: Metrics, store: Store): Promise<MetricsPort> {
  const server = createServer((request, response) => {
    if (request.url !== "/metrics" || request.method !== "GET") { response.writeHead(404).end(); return; }
    metrics.text(store).then(({ type, text }) => { response.writeHead(200, { "Content-Type": type }).end(text); }, () => { response.writeHead(503).end(); });
  });
  await new Promise<void>((resolve, reject) => { server.once("error", reject).listen(at.port, at.host, resolve); });
  const bound = server.address();
  return {
    port: bound !== null && typeof bound === "object" ? bound.port : at.port,
    close: () => new Promise((resolve) => { server.close(() => { resolve(); }); server.closeAllConnections(); }),
  };
}
