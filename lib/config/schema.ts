import proxyAddr from "proxy-addr";
import { z } from "zod";

/** A setting: its variable, what it is for, an example for `.env.example`, and how it is read. */
type Setting<S extends z.ZodType> = { readonly about: string; readonly example: string; readonly read: S };
const setting = <S extends z.ZodType>(one: Setting<S>): Setting<S> => one;

const flag = z.enum(["0", "1"], "0 or 1").default("0").transform((text) => text === "1");
const origin = z.string().refine(isOrigin, "an address without a path, such as https://plans.example.org")
  .transform((text) => new URL(text).origin);
const days = z.string().regex(/^\d{1,5}$/, "a number of days from 1 to 36500").transform(Number).pipe(z.number().min(1, "a number of days from 1 to 36500").max(36_500, "a number of days from 1 to 36500"));
const address = z.email("a mail address such as desk@example.org").max(254, "at most 254 characters");

function isOrigin(text: string): boolean {
  try {
    const url = new URL(text);
    return (url.protocol === "http:" || url.protocol === "https:") && url.pathname === "/" && url.search === "" && url.hash === "" && url.username === "";
  } catch {
    return false;
  }
}

const METRICS_AT = "a port, or an address and a port such as 127.0.0.1:9464";
function hostAndPort(text: string): { readonly host: string; readonly port: number } {
  const colon = text.lastIndexOf(":");
  return { host: colon < 0 ? "127.0.0.1" : text.slice(0, colon).replace(/^\[|\]$/g, ""), port: Number(text.slice(colon + 1)) };
}

const listed = (text: string): readonly string[] => text.split(",").map((one) => one.trim()).filter((one) => one !== "");
function areNetworks(list: readonly string[]): boolean {
  try {
    proxyAddr.compile([...list]);
    return true;
  } catch {
    return false;
  }
}

function startsWith(...heads: readonly string[]) {
  return z.string().refine((text) => heads.some((head) => text.startsWith(head)) && URL.canParse(text), `an address that begins with ${heads.join(" or ")}`);
}

/** Every variable that is read, and no other. `.env.example` lists the same ones; a test holds the two equal. */
export const SETTINGS = {
  PORT: setting({
    about: "The port the server listens on.", example: "3000",
    read: z.string().regex(/^\d{1,5}$/, "a number from 0 to 65535").transform(Number).pipe(z.number().max(65_535, "a number from 0 to 65535")).default(3000),
  }),
  MARQUETRY_HOST: setting({
    about: "The address the server listens on. 127.0.0.1 is this machine only; 0.0.0.0 is every network it is on.", example: "127.0.0.1",
    read: z.string().min(1).max(255).default("127.0.0.1"),
  }),
  MARQUETRY_ORIGIN: setting({
    about: "The public address, as people type it. Links in mails are made from it alone. Left out: http://localhost and the port.",
    example: "http://localhost:3000", read: origin.optional(),
  }),
  MARQUETRY_PROXIES: setting({
    about: "Which reverse proxies stand before the server, with commas between: addresses, networks such as 10.0.0.0/8, or loopback, linklocal, uniquelocal. Only they are believed about whom a request comes from.",
    example: "", read: z.string().default("").transform(listed).refine(areNetworks, "addresses or networks with commas between, such as loopback,10.0.0.0/8"),
  }),
  MARQUETRY_DATA_DIR: setting({
    about: "The folder of the embedded database. Not used when DATABASE_URL is set.", example: ".data",
    read: z.string().min(1).max(1_000).default(".data"),
  }),
  DATABASE_URL: setting({
    about: "A PostgreSQL server instead of the embedded database.", example: "",
    read: startsWith("postgres://", "postgresql://").optional(),
  }),
  MAIL_URL: setting({
    about: "The mail server, smtp:// or smtps://, with user:password@ where it asks for them. Without it mails are only kept, and shown where the demo is on.", example: "",
    read: startsWith("smtp://", "smtps://").optional(),
  }),
  MARQUETRY_MAIL_CA: setting({
    about: "A file of certificates (PEM) that the mail server is trusted by instead of the system's: a venue's own authority.", example: "",
    read: z.string().max(1_000).optional(),
  }),
  MARQUETRY_MAIL_FROM: setting({
    about: "The address mails come from.", example: "desk@tidewheel.example", read: address.default("desk@tidewheel.example"),
  }),
  MARQUETRY_DESK: setting({
    about: "Who may sign in to the desk: mail addresses with commas between.", example: "desk@tidewheel.example",
    read: z.string().default("desk@tidewheel.example").transform((text) => text.split(",").map((one) => one.trim().toLowerCase()).filter((one) => one !== ""))
      .pipe(z.array(address).min(1, "at least one mail address")),
  }),
  MARQUETRY_DEMO: setting({ about: "1: the demo mailbox is shown at the desk.", example: "0", read: flag }),
  MARQUETRY_WORKER: setting({
    about: "0: this server sends no mails and keeps no due dates; `npm run worker` does, in as many processes as you like. Needs DATABASE_URL.", example: "1",
    read: z.enum(["0", "1"], "0 or 1").default("1").transform((text) => text === "1"),
  }),
  MARQUETRY_KEEP_BOOKINGS: setting({
    about: "Days after its day for which a booking's names, addresses and free words are kept. Then they are erased; counts, layouts, prices and fingerprints stay.", example: "730",
    read: days.default(730),
  }),
  MARQUETRY_KEEP_MAILS: setting({ about: "Days for which a mail that was sent is kept.", example: "180", read: days.default(180) }),
  MARQUETRY_METRICS: setting({
    about: "Where figures for monitoring are shown (OpenMetrics text at /metrics): a port of this machine, or an address and a port such as 10.0.0.5:9464. Left out: nowhere.", example: "",
    read: z.string().regex(/^(?:(?:[\w.-]+|\[[\da-f:]+\]):)?\d{1,5}$/i, METRICS_AT).transform(hostAndPort).refine(({ port }) => port <= 65_535, METRICS_AT).optional(),
  }),
  MARQUETRY_LOG: setting({
    about: "How much is logged.", example: "info", read: z.enum(["silent", "error", "warn", "info", "debug"], "silent, error, warn, info or debug").default("info"),
  }),
} as const;

export type SettingName = keyof typeof SETTINGS;
