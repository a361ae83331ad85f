import { deliverDue, type Post } from "./outbox";

export type Postman = {
  /** There is something new to send: now rather than at the next round. */
  readonly poke: () => void;
  /** Ends after the letter in hand. */
  readonly stop: () => Promise<void>;
};

const ROUND_MS = 15_000;

/** Walks the outbox in the background every so often, one round at a time. `complain` hears of a round that broke; the next one still comes. */
export function startPostman(post: Post, complain: (error: unknown) => void): Postman {
  let stopped = false;
  let running: Promise<void> | undefined;
  let again = false;
  const round = async (): Promise<void> => {
    do {
      again = false;
      // What could not be written keeps no letter that is there from leaving.
      for (const work of [post.before, () => deliverDue(post)]) {
        try { await work?.(); } catch (error) { complain(error); }
      }
    } while (again && !stopped);
    running = undefined;
  };
  const poke = (): void => {
    if (stopped) return;
    again = running !== undefined;
    running ??= round();
  };
  const timer = setInterval(poke, ROUND_MS);
  timer.unref();
  return {
    poke,
    async stop() {
      stopped = true;
      clearInterval(timer);
      await running;
    },
  };
}
