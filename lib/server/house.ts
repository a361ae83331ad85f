import { randomInt } from "node:crypto";
import { fail, ok, type Result } from "../base";
import type { Config } from "../config";
import { startClockwork, startPostman, type Clockwork, type Postman } from "../jobs";
import { answerAsks } from "../service/answer-asks";
import { setHouse, type House } from "../service/house";
import { keepDates } from "../service/keep-dates";
import { keepPromises } from "../service/keep-promises";
import { workOutWaiting } from "../service/late-works";
import { openStore, storeErrorText } from "../store/open";
import type { Log } from "./log";
import { makeMetrics, openMetrics, type Metrics } from "./metrics";
import { transportOf } from "./transport";
import { makeWorks, type WorksHandle } from "./works";

export type OpenHouse = {
  readonly house: House;
  readonly metrics: Metrics;
  /** From now on due dates are kept: reminders, and what the venue sets itself. The demo's stories are told first. */
  readonly keepTime: () => void;
  readonly close: () => Promise<void>;
};

/** How often due dates are looked at. */
const DATES_MS = 10 * 60_000;
/** How often it is looked whether a change waits that nobody works on: the process that was asked has stopped. */
const CHANGES_MS = 30_000;
/** How often it is looked what has been kept long enough. */
const PROMISES_MS = 24 * 3_600_000;

/** Opens the store, starts the works and the postman, and makes the house known to the pages. */
export async function openHouse(config: Config, log: Log): Promise<Result<OpenHouse, string>> {
  const transport = transportOf(config);
  if (!transport.ok) return transport;
  const opened = await openStore(config);
  if (!opened.ok) return fail(storeErrorText(opened.error));
  const store = opened.value;
  const clock = { now: () => Date.now() }, metrics = makeMetrics(clock);
  const works: WorksHandle = makeWorks(metrics.working);
  const keepLinks = config.demo && config.mailUrl === undefined;
  const postman: Postman | undefined = config.worker
    ? startPostman({ store, transport: transport.value, clock, from: config.mailFrom, keepLinks, before: () => answerAsks(house), told: metrics.mailed }, (error) => log.error({ err: error }, "the outbox could not be worked on"))
    : undefined;
  const house: House = {
    origin: config.origin, demo: config.demo, deskPeople: config.deskPeople, mailFrom: config.mailFrom, store, clock,
    random: () => randomInt(2 ** 47) / 2 ** 47, works: works.works, poke: () => postman?.poke(),
  };
  setHouse(house);
  // What was left when a process stopped goes as soon as one is there again.
  postman?.poke();
  const figures = config.metrics && (await openMetrics(config.metrics, metrics, store));
  let clockwork: Clockwork | undefined;
  let promises: Clockwork | undefined;
  let changes: Clockwork | undefined;
  const keepTime = (): void => {
    if (!config.worker) return;
    promises ??= startClockwork(PROMISES_MS, async () => { await keepPromises(house, { keep: config.keep, dryRun: false }); await store.tidy(); }, (error) => log.error({ err: error }, "what was kept long enough could not be erased, or the database not be tidied"));
    changes ??= startClockwork(CHANGES_MS, () => workOutWaiting(house), (error) => log.error({ err: error }, "late changes could not be worked out"));
    clockwork ??= startClockwork(DATES_MS, () => keepDates(house), (error) => log.error({ err: error }, "due dates could not be kept"));
  };
  const close = async (): Promise<void> => {
    setHouse(undefined);
    await figures?.close();
    await clockwork?.stop();
    await promises?.stop();
    await changes?.stop();
    await postman?.stop();
    transport.value.close();
    await works.close();
    await store.close();
  };
  return ok({ house, metrics, keepTime, close });
}
