import pino, { type Logger } from "pino";
import type { Config } from "../config";
import { withoutKeys } from "../mail";

export type Log = Logger;

/** One line of JSON an event, on standard output. */
export const makeLog = (level: Config["log"]): Log => pino({ level, base: null, timestamp: pino.stdTimeFunctions.isoTime });

/** A request's address as it may be written down: without the secret of a mailed link, and without its query. */
export const loggedPath = (url: string): string => withoutKeys(url.split("?")[0] ?? "");
