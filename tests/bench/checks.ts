import { arrange } from "../../lib/engine";
import type { Item, Layout, Scene } from "../../lib/layout";
import { check, checker } from "../../lib/rules";
import type { Brief } from "../../lib/brief";
import type { Venue } from "../../lib/venue";
import { day, hallFor } from "./weddings";

/** A copy of which no part is the same object, with one table of each part of the day a little aside: nothing of an earlier check answers for it. */
function fresh(layout: Layout, by: number): Layout {
  const copied: Layout = JSON.parse(JSON.stringify(layout));
  const aside = (s: Scene): Scene => {
    const at = s.items.findIndex((i) => i.kind === "table");
    return { ...s, items: s.items.map((i, k) => (k === at ? moved(i, by) : i)) };
  };
  return { ...copied, scenes: copied.scenes.map(aside) };
}
const moved = (i: Item, by: number): Item => ({ ...i, at: [i.at[0] + by, i.at[1]], seats: i.seats.map((s) => ({ ...s, x: s.x + by })) });

const spent = (): number => { const u = process.cpuUsage(); return (u.user + u.system) / 1000; };

/** Runs that warm up, and that are measured: a drag goes on for longer. */
const WARM = 60, RUNS = 120;

/** The middle and the least of several runs, milliseconds of the processor; the first runs warm it up. */
function timed(run: (k: number) => void): { readonly least: number; readonly middle: number } {
  for (let k = 0; k < WARM; k++) run(k);
  const taken = Array.from({ length: RUNS }, (_, k) => { const t = spent(); run(WARM + k); return spent() - t; }).sort((a, b) => a - b);
  return { least: taken[0] ?? 0, middle: taken[taken.length >> 1] ?? 0 };
}

type Case = { readonly name: string; readonly venue: Venue; readonly brief: Brief; readonly layout: Layout };
function cases(): readonly Case[] {
  return [230, 400].flatMap((guests): readonly Case[] => {
    const venue = hallFor(guests), brief = day("hire", guests - 1);
    const [layout] = arrange(venue, brief, { layouts: 1, instead: false }).layouts;
    const pieces = layout?.scenes.reduce((n, s) => n + s.items.length, 0);
    return layout ? [{ name: `${guests} guests, ${pieces} pieces in ${layout.scenes.length} parts of the day`, venue, brief, layout }] : [];
  });
}

/** What checking costs: a whole day anew, and one table dragged about the meal. Aims: 15 ms and 4 ms at 400 pieces. */
export function checkBench(): readonly { readonly name: string; readonly least: number; readonly middle: number; readonly aim: number }[] {
  return cases().flatMap(({ name, venue, brief, layout }) => {
    const copies = Array.from({ length: WARM + RUNS }, (_, k) => fresh(layout, k % 25));
    const whole = timed((k) => check(venue, copies[k] ?? layout, brief));
    const held = checker(venue, brief, layout), meal = layout.scenes.find((s) => s.id === "meal"), table = meal?.items.find((i) => i.kind === "table" && i.role === "dining");
    if (!meal || !table) return [{ name: `${name}: whole`, aim: 15, ...whole }];
    const near = timed((k) => held.move("meal", moved(table, (k % 25) + 1)));
    const about = timed((k) => held.move("meal", moved(table, (k % 50) * 150)));
    return [{ name: `${name}: whole`, aim: 15, ...whole }, { name: "  a table dragged by a hand's breadth", aim: 4, ...near }, { name: "  a table dragged across the room", aim: 4, ...about }];
  });
}
