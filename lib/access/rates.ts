import { RateLimiterMemory, type RateLimiterRes } from "rate-limiter-flexible";

/** Kinds of requests that are counted by whom they come from, and how many of each one address may send in ten minutes. */
export const RATES = {
  /** Asking for a link, opening one, signing in: what a guesser would do. */
  links: { points: 60, about: "links asked for and opened" },
  /** Saving, sending, choosing: forms that were filled in. */
  forms: { points: 600, about: "forms sent" },
  /** Papers, each a fifth of a second to half a second of the server. */
  papers: { points: 120, about: "papers made" },
} as const;
export type Rate = keyof typeof RATES;
const SECONDS = 600;

const LINKS = /^\/(desk\/)?open(\/|$)|^\/quiet\//;
const PAPERS = /^\/api\/[a-z-]+\.(pdf|svg|ics)$/;

/** Which count a request falls under; most fall under none. */
export function rateOf({ method, path }: { readonly method: string; readonly path: string }): Rate | undefined {
  if (LINKS.test(path)) return "links";
  if (PAPERS.test(path)) return "papers";
  return method === "GET" || method === "HEAD" ? undefined : "forms";
}

export type Counted = { readonly ok: true } | { readonly ok: false; /** Seconds until the next is taken. */ readonly wait: number };
export type Counter = (rate: Rate, from: string) => Promise<Counted>;

/** Counts in this process's memory: with several servers an address has as many times the room, which still ends a guesser. */
export function makeCounter(): Counter {
  const of = (rate: Rate): RateLimiterMemory => new RateLimiterMemory({ keyPrefix: rate, points: RATES[rate].points, duration: SECONDS });
  const counters: Readonly<Record<Rate, RateLimiterMemory>> = { links: of("links"), forms: of("forms"), papers: of("papers") };
  return async (rate, from) => {
    try {
      await counters[rate].consume(from);
      return { ok: true };
    } catch (refused) {
      return { ok: false, wait: Math.max(1, Math.ceil((isRes(refused) ? refused.msBeforeNext : SECONDS * 1000) / 1000)) };
    }
  };
}

const isRes = (value: unknown): value is RateLimiterRes => typeof value === "object" && value !== null && "msBeforeNext" in value;
