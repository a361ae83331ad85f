import { arrange } from "../../lib/engine";
import { seatTables, type SeatingSpace } from "../../lib/engine/seating";
import { linesOf } from "../../lib/engine/seating/lines";
import { gridCount } from "../../lib/engine/seating/grids";
import { boundaryDistance, offset, regionContains, subtract, type Point } from "../../lib/geometry";
import { checkBench } from "./checks";
import { composed } from "./composed/main";
import { A084616, KNOWN, KNOWN_LONG } from "./known";
import { line, type Part } from "./line";
import { askFor, long, PITCH, rooms, round, spaceOf, square } from "./rooms";
import { mostBySolver } from "./solver";
import { day, hallFor, mill } from "./weddings";
import type { Brief } from "../../lib/brief";
import type { Venue } from "../../lib/venue";

const spent = (): number => { const u = process.cpuUsage(); return (u.user + u.system) / 1000; };
const timed = <T>(work: () => T): readonly [T, number] => { const t = spent(), v = work(); return [v, spent() - t]; };
const mean = (list: readonly number[]): number => list.reduce((s, v) => s + v, 0) / Math.max(1, list.length);

const tables = (space: SeatingSpace): readonly [number, number] => timed(() => seatTables(space, askFor([round]))[0]?.items.length ?? 0);
const inner = (space: SeatingSpace) => offset(subtract(space.floor, space.solids), -(PITCH / 2 - 0.4));
/** Tables on one level grid from the corner: what is drawn without a thought. */
function plainGrid(space: SeatingSpace): number {
  const lines = linesOf(inner(space));
  return gridCount({ px: PITCH, py: PITCH, x0: Math.ceil(lines.minX), y0: Math.ceil(lines.minY), staggered: false }, lines);
}

function packing(): void {
  line("rounds in a room", "tables", "known", "ratio", "grid", "ms");
  const squares = A084616.map((known, i) => ({ name: `square of ${i + 1} discs' area`, known, space: spaceOf(square(Math.floor(Math.sqrt(i + 1) * PITCH))) }));
  const list = [...squares, ...rooms.map((r) => ({ ...r, known: KNOWN[r.name] ?? 0 }))].map((r) => {
    const [n, ms] = tables(r.space), grid = plainGrid(r.space);
    line(r.name, n, r.known, n / r.known, grid / r.known, ms);
    return { ...r, n, ms, grid };
  });
  const over = list.filter((r) => r.known >= 15);
  line("mean ratio; plain grid", mean(list.map((r) => r.n / r.known)), mean(list.map((r) => r.grid / r.known)));
  line("most short below 15; least ratio from 15", Math.max(...list.filter((r) => r.known < 15).map((r) => r.known - r.n)), Math.min(...over.map((r) => r.n / r.known)));
  line("ms: mean, most", mean(list.map((r) => r.ms)), Math.max(...list.map((r) => r.ms)));
  line("long tables in a room", "tables", "known", "ratio", "patterns", "ms");
  const longs = rooms.map((r) => {
    const [s, ms] = timed(() => seatTables(r.space, askFor([long]))[0]), bare = seatTables(r.space, askFor([long]), { effort: 0 })[0];
    const known = KNOWN_LONG[r.name] ?? 0, ratio = (s?.items.length ?? 0) / known, patterns = (bare?.items.length ?? 0) / known;
    line(r.name, s?.items.length ?? 0, known, ratio, patterns, ms);
    return { ratio, patterns };
  });
  line("mean ratio; of patterns alone", mean(longs.map((l) => l.ratio)), mean(longs.map((l) => l.patterns)));
}

/** Spots on a lattice of the room, as a solver is given them. */
function spotsOf(space: SeatingSpace, step: number): readonly Point[] {
  const floor = inner(space), out: Point[] = [];
  const box = floor[0]?.box;
  if (!box) return out;
  for (let x = Math.ceil(box.minX); x <= box.maxX; x += step) for (let y = Math.ceil(box.minY); y <= box.maxY; y += step)
    if (regionContains(floor, [x, y]) || floor.some((p) => boundaryDistance(p.outer, [x, y]) < 0.3)) out.push([x, y]);
  return out;
}

/** How much longer than the search the solver is waited for. */
const PATIENCE = 60;

async function solver(): Promise<void> {
  line("against HiGHS on a lattice of spots", "tables", "solver", "proved", "ms", "times");
  const asked = rooms.filter((q) => (KNOWN[q.name] ?? 0) <= 31);
  // Both warm: the search as on a thread that has answered before, the solver as compiled machine code that it is from the start.
  for (const r of asked) tables(r.space);
  for (const r of asked) {
    const [n, ms] = tables(r.space), t = spent();
    const found = await mostBySolver(spotsOf(r.space, PITCH / 8), PITCH, Math.max(5, (PATIENCE * ms) / 1000));
    line(r.name, n, found.count, String(found.proved), ms, (spent() - t) / ms);
  }
}

const whole = (guests: number, layouts: number): readonly [string, number] => {
  const [r, ms] = timed(() => arrange(hallFor(guests), day("hire", guests - 1), { layouts, instead: false }));
  return [`${r.status} ${r.layouts.length}`, ms];
};

/** The exponent of the growth of time between two sizes. */
function growth(): void {
  const sizes = [50, 100, 200, 400];
  whole(50, 1);
  const times = sizes.map((n) => { const [what, ms] = whole(n, 3); line(`${n} guests in a hall of ${2.5 * n} m2`, what, ms); return ms; });
  line("growth: time ~ guests ^", Math.log((times.at(-1) ?? 1) / (times[0] ?? 1)) / Math.log((sizes.at(-1) ?? 1) / (sizes[0] ?? 1)));
}

function weddings(): void {
  line("a whole day, three layouts", "status", "layouts", "first ms", "all ms");
  const cases: readonly (readonly [string, Venue, Brief])[] = [
    ...[40, 92, 100, 110].map((n) => [`${n} guests at the mill, 152 m2`, mill, day(n > 100 ? "hosted-weekend" : "hosted-day", n)] as const),
    ...[100, 230].map((n) => [`${n} guests in a hall of ${n * 2.5} m2`, hallFor(n), day("hire", n - 1)] as const),
  ];
  for (const [name, venue, brief] of cases) {
    // As on a thread that has answered before.
    arrange(venue, brief, { layouts: 1, instead: false });
    const [, first] = timed(() => arrange(venue, brief, { layouts: 1, instead: false }));
    const [r, all] = timed(() => arrange(venue, brief, { instead: false }));
    line(name, r.status, r.layouts.length, first, all);
  }
}

/** What an eye finds wrong in random days, one layout each. */
function looks(): void {
  const { days, arranged, faults } = composed();
  line("what an eye finds wrong", "days", "arranged", "with it");
  for (const { look, fault, seeds } of faults) line(`${look}: ${fault}`, days, arranged, seeds.length);
}

function checks(): void {
  line("checking", "least ms", "middle", "aim");
  for (const { name, least, middle, aim } of checkBench()) line(name, least, middle, aim);
}

/** The benches of the engine and of the check alone. */
export const parts: Readonly<Record<string, Part>> = { packing, solver, growth, weddings, composed: looks, checks };
