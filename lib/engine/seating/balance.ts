import { boxOf, intersect, subtract, aroundCircle, type Point, type Region } from "../../geometry";
import { lay, type Draft, type Work } from "./drafts";
import { fieldOf } from "./field";
import { judge } from "./grids";
import { boxAt, placesFor } from "./hall";
import { flipRegion, linesOf, uprightLines } from "./lines";
import { packEqual } from "./pack";
import { settle } from "./settle";
import type { Family } from "./types";
import { placesAt, roundUnit } from "./units";

/** How much wider than the least gap is tried first, so that room left over is shared out. */
const WIDER = [1.22, 1.14, 1.08, 1.04, 1.015, 1];

/** The share of the rounds wanted that patterns must hold before more is searched for. */
const NEARLY = 0.9;

/** What holds n at the widest of the gaps: halved between those that do and those that do not. */
function widest(n: number, at: (k: number) => readonly Point[]): readonly Point[] | null {
  let lo = 0, hi = WIDER.length, best: readonly Point[] | null = null;
  while (lo < hi) {
    const mid = Math.floor((lo + hi) / 2);
    const points = at(WIDER[mid] ?? 1);
    if (points.length >= n) { best = points; hi = mid; } else lo = mid + 1;
  }
  return best;
}

/** n rounds where no grid holds them: mirrored about the line of symmetry if that can be, else as they go; rows brought into line. */
export function freeRounds(work: Work, f: Family, places: number): readonly Draft[] {
  const { hall } = work;
  const unit = roundUnit(hall, f, placesAt(f, work.ask, hall.chair));
  if (!unit) return [];
  const n = Math.ceil(places / unit.places);
  if (n > f.count || n < 1) return [];
  const region = placesFor(hall, unit.footing);
  if (region.length === 0) return [];
  const lines = linesOf(region), upright = uprightLines(region);
  const out: Draft[] = [];
  const take = (points: readonly Point[], align: boolean, form: string): void => {
    const settled = settle(points, { unit, level: lines, upright, hall }, { align });
    out.push({ laid: lay(unit, settled), kind: "rounds", form, score: judge(settled, unit, hall, lines) });
  };
  const pack = (r: Region, k: number, ceiling: number, share: number): readonly Point[] => r.length === 0 || ceiling < 1 ? [] : packEqual(fieldOf(r), Math.round(unit.px * k), {
    angles: [0, 90], steps: Math.round(work.steps * share * (k === 1 ? 1 : 0.15)), random: work.random, ceiling,
  });
  // Where patterns alone fall well short of the number, no search brings them all; without a search nothing does.
  const plain = packEqual(fieldOf(region), unit.px, { angles: [0, 90], steps: 0, random: work.random, ceiling: n });
  if (plain.length < (work.steps > 0 ? NEARLY * n : n)) return [];
  if (hall.mirrorX !== null || hall.mirrorY !== null) {
    const swap = hall.mirrorX === null;
    const double = Math.round(2 * (hall.mirrorX ?? hall.mirrorY ?? 0));
    const own = swap ? flipRegion(region) : region;
    const best = widest(n, (k) => mirrored(own, { double, n, pitch: Math.round(unit.px * k), pack: (r, most) => pack(r, k, most, 0.5) }));
    if (best) take(swap ? best.map(([x, y]) => [y, x] as const) : best, true, "balanced");
  }
  const free = widest(n, (k) => pack(region, k, n, 1));
  if (free) take(free, true, "free");
  return out.sort((a, b) => b.score - a.score).slice(0, 1);
}

/** Points mirrored about the upright line x = double / 2: some on the line itself, the rest packed on one side. */
function mirrored(region: Region, o: { readonly double: number; readonly n: number; readonly pitch: number; readonly pack: (r: Region, most: number) => readonly Point[] }): readonly Point[] {
  const { double, n, pitch } = o;
  const over = (ring: readonly Point[]): Point[] => ring.map(([x, y]) => [double - x, y]);
  const both = subtract(intersect(region, region.map((p) => over(p.outer))), region.flatMap((p) => p.holes.map(over)));
  if (both.length === 0) return [];
  const { minX, minY, maxY } = boxOf(both.flatMap((p) => p.outer));
  const edge = Math.floor(double / 2 - pitch / 2);
  const half = edge <= minX ? [] : intersect(both, [boxAt([(minX + edge) / 2, (minY + maxY) / 2], edge - minX + 0.02, maxY - minY + 2)]);
  let best: readonly Point[] = [];
  const onLine = double % 2 === 0 ? linesOf(flipRegion(both)).at(double / 2) : [];
  const rows: (readonly number[])[] = [[]];
  for (const way of [0, 1, 2]) {
    let last = -Infinity;
    const ys = onLine.flatMap(([low, b]) => {
      const a = Math.max(low, last + pitch);
      if (a > b) return [];
      const k = Math.floor((b - a) / pitch + 1e-9) + 1, from = Math.ceil(a), room = Math.floor(b) - from - (k - 1) * pitch;
      if (room < 0) return [];
      const line = Array.from({ length: k }, (_, i) => from + i * pitch + (way === 0 ? 0 : way === 1 ? room : Math.round(room / 2)));
      last = line[line.length - 1] ?? last;
      return line;
    });
    for (let keep = 1; keep <= ys.length; keep++) rows.push(way === 1 ? ys.slice(-keep) : ys.slice(0, keep));
  }
  for (const mid of rows) {
    const spare = n - mid.length;
    if (spare < 0 || (spare % 2 === 1)) continue;
    const side = spare === 0 ? [] : o.pack(subtract(half, mid.map((y) => aroundCircle([double / 2, y], pitch, 72))), spare / 2);
    const points = [...mid.map((y): Point => [double / 2, y]), ...side, ...side.map(([x, y]): Point => [double - x, y])];
    if (points.length > best.length) best = points;
    if (best.length >= n) return best;
  }
  // One more than asked, when that is what symmetry takes.
  return best;
}
