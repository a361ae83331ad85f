export type Clockwork = { readonly stop: () => Promise<void> };

/** Does a piece of work now and every so often, one at a time. `complain` hears of one that broke; the next one still comes. */
export function startClockwork(every: number, work: () => Promise<unknown>, complain: (error: unknown) => void): Clockwork {
  let running: Promise<void> | undefined;
  let stopped = false;
  const turn = (): void => {
    if (stopped || running) return;
    running = work().then(() => undefined, complain).finally(() => { running = undefined; });
  };
  turn();
  const timer = setInterval(turn, every);
  timer.unref();
  return { stop: async () => { stopped = true; clearInterval(timer); await running; } };
}
