/** Minutes of work for one or more people, done without a break. */
export type Job = { readonly minutes: number };

/**
 * When a crew is done with jobs that wait for nothing but a free hand: list scheduling in the given order (Graham 1966).
 * The order must not depend on the minutes; then the finish never falls when a job grows or the crew shrinks, because each job
 * lands on the least loaded of hands whose sorted loads can only rise.
 */
export function finish(jobs: readonly Job[], crew: number): number {
  const hands = Math.max(1, Math.min(crew, jobs.length));
  const load = new Array<number>(hands).fill(0);
  for (const job of jobs) {
    let least = 0;
    for (let i = 1; i < hands; i++) if ((load[i] ?? 0) < (load[least] ?? 0)) least = i;
    load[least] = (load[least] ?? 0) + job.minutes;
  }
  return load.reduce((m, x) => Math.max(m, x), 0);
}

/** Stages of a turnover one after another: each waits for the one before. */
export const finishStages = (stages: readonly (readonly Job[])[], crew: number): number =>
  stages.reduce((t, jobs) => t + finish(jobs, crew), 0);
