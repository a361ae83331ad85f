import type { Clock, Random } from "../base";
import type { Store } from "../store";
import type { Works } from "./works";

/** All that a use case works with. Made once a process by the server or a command; tests make their own. */
export type House = {
  readonly origin: string;
  readonly demo: boolean;
  readonly deskPeople: readonly string[];
  readonly mailFrom: string;
  readonly store: Store;
  readonly clock: Clock;
  /** For references, which are names and no secrets. */
  readonly random: Random;
  readonly works: Works;
  /** There is a mail to send. */
  readonly poke: () => void;
};

// The pages' bundle is evaluated more than once, and the server's code apart from it: only globalThis is common to all.
const KEY = Symbol.for("marquetry.house");
const world: typeof globalThis & { [KEY]?: House } = globalThis;

export function setHouse(house: House | undefined): void {
  world[KEY] = house;
}

/** The house of this process. The server makes it before it takes the first request. */
export async function theHouse(): Promise<House> {
  const house = world[KEY];
  if (!house) throw new Error("no house: start through `npm start`, `npm run dev` or `npm run demo`");
  return house;
}
