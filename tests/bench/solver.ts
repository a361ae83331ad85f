import highsLoader from "highs";
import type { Point } from "../../lib/geometry";

/** A 0/1 model in CPLEX LP text: as many spots as can be, no two nearer than the pitch. Groups of spots that all bar each other are one row. */
export function modelOf(spots: readonly Point[], pitch: number): string {
  const bars = (i: number, j: number): boolean => { const a = spots[i], b = spots[j]; return a !== undefined && b !== undefined && Math.hypot(a[0] - b[0], a[1] - b[1]) < pitch - 1e-6; };
  const rows: string[] = [];
  const told = new Set<string>();
  spots.forEach((_, i) => spots.forEach((_q, j) => {
    if (j <= i || !bars(i, j) || told.has(`${i} ${j}`)) return;
    const group = [i, j];
    spots.forEach((_r, k) => { if (k !== i && k !== j && group.every((g) => bars(g, k))) group.push(k); });
    group.forEach((a) => group.forEach((b) => { if (a < b) told.add(`${a} ${b}`); }));
    rows.push(` c${rows.length}: ${group.map((g) => `x${g}`).join(" + ")} <= 1`);
  }));
  const names = spots.map((_, i) => `x${i}`);
  return `Maximize\n obj: ${names.join(" + ")}\nSubject To\n${rows.length > 0 ? rows.join("\n") : ` c0: ${names[0] ?? "x0"} <= 1`}\nBinary\n ${names.join(" ")}\nEnd\n`;
}

/** Most of the spots that HiGHS takes at once, within so many seconds; `proved` where it is the most there is. */
export async function mostBySolver(spots: readonly Point[], pitch: number, seconds = 60): Promise<{ readonly count: number; readonly proved: boolean }> {
  const highs = await highsLoader();
  const found = highs.solve(modelOf(spots, pitch), { time_limit: seconds, output_flag: false });
  return { count: Math.round(found.ObjectiveValue), proved: found.Status === "Optimal" };
}

/** The same by trying every choice: for a dozen spots. */
export function mostByTrying(spots: readonly Point[], pitch: number): number {
  let best = 0;
  const go = (i: number, taken: readonly Point[]): void => {
    if (taken.length + spots.length - i <= best) return;
    const s = spots[i];
    if (!s) { best = Math.max(best, taken.length); return; }
    if (taken.every((t) => Math.hypot(t[0] - s[0], t[1] - s[1]) >= pitch - 1e-6)) go(i + 1, [...taken, s]);
    go(i + 1, taken);
  };
  go(0, []);
  return best;
}
