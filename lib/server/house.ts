import { randomInt } from "node:crypto";
import { fail, ok, type Result } from "../base";
import type { Config } from "../config";
import { startPostman, type Postman } from "../jobs";
import { setHouse, type House } from "../service/house";
import { openStore, storeErrorText } from "../store/open";
import type { Log } from "./log";
import { transportOf } from "./transport";
import { makeWorks, type WorksHandle } from "./works";

export type OpenHouse = { readonly house: House; readonly close: () => Promise<void> };

/** Opens the store, starts the works and the postman, and makes the house known to the pages. */
export async function openHouse(config: Config, log: Log): Promise<Result<OpenHouse, string>> {
  const opened = await openStore(config);
  if (!opened.ok) return fail(storeErrorText(opened.error));
  const store = opened.value;
  const transport = transportOf(config);
  if (!transport.ok) {
    await store.close();
    return transport;
  }
  const works: WorksHandle = makeWorks();
  const clock = { now: () => Date.now() };
  const postman: Postman = startPostman(
    { store, transport: transport.value, clock, from: config.mailFrom, keepLinks: config.demo && config.mailUrl === undefined },
    (error) => log.error({ err: error }, "the outbox could not be worked on"),
  );
  const house: House = {
    origin: config.origin, demo: config.demo, deskPeople: config.deskPeople, mailFrom: config.mailFrom, store, clock,
    random: () => randomInt(2 ** 47) / 2 ** 47, works: works.works, poke: postman.poke,
  };
  setHouse(house);
  const close = async (): Promise<void> => {
    setHouse(undefined);
    await postman.stop();
    transport.value.close();
    await works.close();
    await store.close();
  };
  return ok({ house, close });
}
