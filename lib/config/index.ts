import { fail, ok, type Result } from "../base";
import { SETTINGS } from "./schema";

export { SETTINGS, type SettingName } from "./schema";

export type Config = {
  readonly port: number;
  readonly host: string;
  readonly origin: string;
  /** Proxies that are believed about whom a request comes from. */
  readonly proxies: readonly string[];
  readonly dataDir: string;
  readonly databaseUrl?: string;
  readonly mailUrl?: string;
  readonly mailCa?: string;
  readonly mailFrom: string;
  readonly deskPeople: readonly string[];
  readonly demo: boolean;
  /** Does the server send mails and keep due dates itself? */
  readonly worker: boolean;
  /** Days for which personal data is kept: of a booking after its day, of a mail after it was sent. */
  readonly keep: { readonly bookings: number; readonly mails: number };
  /** Where figures for monitoring are shown, if anywhere. */
  readonly metrics?: { readonly host: string; readonly port: number };
  readonly log: "silent" | "error" | "warn" | "info" | "debug";
};

type Environment = Readonly<Record<string, string | undefined>>;

/** Reads the settings. The error lists every one that is wrong: variable, what is wanted, what was found. */
export function readConfig(from: Environment = process.env): Result<Config, readonly string[]> {
  const problems: string[] = [];
  const read = <T>(name: keyof typeof SETTINGS, how: { safeParse(value: unknown): { success: boolean; data?: T; error?: { issues: readonly { message: string }[] } } }): T | undefined => {
    // An empty variable is one that is left out: shells and compose files write them so.
    const raw = from[name]?.trim() || undefined;
    const outcome = how.safeParse(raw);
    if (!outcome.success) problems.push(`${name}: ${outcome.error?.issues[0]?.message ?? "not understood"}${secretless(name, raw)}`);
    return outcome.data;
  };
  const port = read("PORT", SETTINGS.PORT.read);
  const host = read("MARQUETRY_HOST", SETTINGS.MARQUETRY_HOST.read);
  const origin = read("MARQUETRY_ORIGIN", SETTINGS.MARQUETRY_ORIGIN.read);
  const proxies = read("MARQUETRY_PROXIES", SETTINGS.MARQUETRY_PROXIES.read);
  const dataDir = read("MARQUETRY_DATA_DIR", SETTINGS.MARQUETRY_DATA_DIR.read);
  const databaseUrl = read("DATABASE_URL", SETTINGS.DATABASE_URL.read);
  const mailUrl = read("MAIL_URL", SETTINGS.MAIL_URL.read);
  const mailCa = read("MARQUETRY_MAIL_CA", SETTINGS.MARQUETRY_MAIL_CA.read);
  const mailFrom = read("MARQUETRY_MAIL_FROM", SETTINGS.MARQUETRY_MAIL_FROM.read);
  const deskPeople = read("MARQUETRY_DESK", SETTINGS.MARQUETRY_DESK.read);
  const demo = read("MARQUETRY_DEMO", SETTINGS.MARQUETRY_DEMO.read);
  const worker = read("MARQUETRY_WORKER", SETTINGS.MARQUETRY_WORKER.read);
  if (worker === false && databaseUrl === undefined && problems.length === 0) problems.push("MARQUETRY_WORKER: 0 needs DATABASE_URL: the embedded database has room for one process");
  const keepBookings = read("MARQUETRY_KEEP_BOOKINGS", SETTINGS.MARQUETRY_KEEP_BOOKINGS.read);
  const keepMails = read("MARQUETRY_KEEP_MAILS", SETTINGS.MARQUETRY_KEEP_MAILS.read);
  const metrics = read("MARQUETRY_METRICS", SETTINGS.MARQUETRY_METRICS.read);
  const log = read("MARQUETRY_LOG", SETTINGS.MARQUETRY_LOG.read);
  if (problems.length > 0 || port === undefined || host === undefined || dataDir === undefined || proxies === undefined || mailFrom === undefined || deskPeople === undefined || demo === undefined || worker === undefined || log === undefined || keepBookings === undefined || keepMails === undefined) {
    return fail(problems);
  }
  return ok({ port, host, origin: origin ?? `http://localhost:${port}`, proxies, dataDir, databaseUrl, mailUrl, mailCa, mailFrom, deskPeople, demo, worker, keep: { bookings: keepBookings, mails: keepMails }, metrics, log });
}

/** What was found, but never of a variable that may hold a password. */
function secretless(name: string, raw: string | undefined): string {
  return raw === undefined || name.endsWith("_URL") ? "" : ` (found "${raw}")`;
}

/** Settings of the process, changed where a command implies them (the demo is the demo whatever the shell says). */
export function setEnvironment(values: Readonly<Record<string, string>>): void {
  for (const [name, value] of Object.entries(values)) process.env[name] = value;
}

/** The same, but what the shell says goes before. */
export function setDefaults(values: Readonly<Record<string, string>>): void {
  for (const [name, value] of Object.entries(values)) process.env[name] ??= value;
}

/** Is this process the script of an npm command? */
export const isRunByNpm = (): boolean => process.env.npm_lifecycle_event !== undefined;

/** What a program started from here is to find: the process's own settings, and these. */
export const settingsWith = (values: Readonly<Record<string, string>>): NodeJS.ProcessEnv => ({ ...process.env, ...values });
