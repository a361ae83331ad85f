/** Minutes of work for one or more people, done without a break. */
export type Job = { readonly minutes: number };

/** When a job is begun and done, minutes from the stage's or the turnover's start. */
export type Span = { readonly begins: number; readonly ends: number };

/**
 * When a crew does jobs that wait for nothing but a free hand: list scheduling in the given order (Graham 1966).
 * The order must not depend on the minutes; then the finish never falls when a job grows or the crew shrinks, because each job
 * lands on the least loaded of hands whose sorted loads can only rise.
 */
export function spans(jobs: readonly Job[], crew: number): readonly Span[] {
  const hands = Math.max(1, Math.min(crew, jobs.length));
  const load = new Array<number>(hands).fill(0);
  return jobs.map((job) => {
    let least = 0;
    for (let i = 1; i < hands; i++) if ((load[i] ?? 0) < (load[least] ?? 0)) least = i;
    const begins = load[least] ?? 0, ends = begins + job.minutes;
    load[least] = ends;
    return { begins, ends };
  });
}

/** When the last of the jobs is done. */
export const finish = (jobs: readonly Job[], crew: number): number => spans(jobs, crew).reduce((m, s) => Math.max(m, s.ends), 0);

/** The jobs of a turnover, stage by stage: each stage waits for the one before. `from`: when the first may begin. */
export function timetable<T extends Job>(stages: readonly (readonly T[])[], by: { readonly crew: number; readonly from: number }): { readonly timed: readonly (T & Span)[]; readonly ends: number } {
  let at = by.from;
  const timed = stages.flatMap((jobs) => {
    const begin = at;
    const when = spans(jobs, by.crew);
    return jobs.map((job, i) => {
      const { begins, ends } = when[i] ?? { begins: 0, ends: 0 };
      at = Math.max(at, begin + ends);
      return { ...job, begins: begin + begins, ends: begin + ends };
    });
  });
  return { timed, ends: at };
}
