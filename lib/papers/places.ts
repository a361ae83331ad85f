import { isRound, type Item, type Layout, type Scene } from "../layout";
import { formatLength, formatSize, lengthStyle } from "../measure";
import type { Venue } from "../venue";
import { paperVoice, type PaperVoice } from "../words/papers";
import { paragraph, type Setting } from "./blocks";
import { element, type Content, type Element } from "./document";
import { table, type RowSpec } from "./table";
import { STYLES } from "./type";
import { capital, list } from "./words";

type Told = { readonly layout: Layout; readonly venue: Venue; readonly say: PaperVoice };
type Row = { readonly names: readonly string[]; readonly numbers: readonly number[]; readonly table: string; readonly under: string; readonly each: number; readonly places: number };

/** The part of the day whose tables the schedule lists: the meal, or else the one with most places at tables. */
export function seatedScene(layout: Layout): Scene | undefined {
  const atTables = (s: Scene): number => s.items.reduce((n, i) => n + (i.kind === "table" ? i.seats.length : 0), 0);
  const best = [...layout.scenes].sort((a, b) => Number(b.id === "meal") - Number(a.id === "meal") || atTables(b) - atTables(a))[0];
  return best && atTables(best) > 0 ? best : undefined;
}

function sizeOf(item: Item, venue: Venue): string {
  const style = lengthStyle(venue, true);
  return isRound(item.shape) ? formatLength(item.shape.diameter, style) : formatSize(item.shape.width, item.shape.depth, style);
}

function stockName(item: Item, venue: Venue, say: PaperVoice): string {
  const from = item.from;
  const stock = "stock" in from ? venue.stock.find((s) => s.id === from.stock)?.name : undefined;
  const standing = "standing" in from ? venue.rooms.flatMap((r) => r.standing).find((s) => s.id === from.standing)?.name : undefined;
  return stock ?? standing ?? (isRound(item.shape) ? say("Round table") : say("Table"));
}

/** The pieces of one table: those put end to end bear one label, and one of them its number. */
export type Laid = { readonly number: number; readonly items: readonly [Item, ...Item[]] };

export function laidTables(scene: Scene): readonly Laid[] {
  const tables = scene.items.filter((i) => i.kind === "table" && i.seats.length > 0 && i.role !== "work");
  const numbered = scene.numbers.flatMap((id, i) => {
    const bearer = tables.find((t) => t.id === id);
    return bearer ? [{ number: i + 1, bearer }] : [];
  });
  const joined = numbered.map(({ number, bearer }): Laid => {
    const others = tables.filter((t) => t !== bearer && t.label === bearer.label && !scene.numbers.includes(t.id));
    return { number, items: [bearer, ...others] };
  });
  const taken = new Set(joined.flatMap((l) => l.items));
  return [...joined, ...tables.filter((t) => !taken.has(t)).map((t): Laid => ({ number: 0, items: [t] }))];
}

/** "Round table, 1.68 m"; "3 × Long table, 1.83 × 0.76 m, end to end". */
export function tableWords({ items }: Laid, venue: Venue, say: PaperVoice = paperVoice("en-GB")): string {
  const counts = new Map<string, number>();
  for (const item of items) {
    const words = `${capital(stockName(item, venue, say))}, ${sizeOf(item, venue)}`;
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  const kinds = list([...counts].map(([words, n]) => (n === 1 ? words : `${n}\u00a0×\u00a0${words}`)), say.language);
  return items.length === 1 ? kinds : say("{kinds}, end to end", { kinds });
}

function rowOf(laid: Laid, { venue, say }: Told): Row {
  const [first] = laid.items;
  const seats = laid.items.flatMap((i) => i.seats);
  const wheelchairs = seats.filter((s) => s.place === "wheelchair").length;
  const under = [
    ...(first.role === "top" ? [say("the couple's")] : first.role === "children" ? [say("the children's")] : []),
    ...(wheelchairs > 0 ? [say("{n} places for wheelchairs", { n: wheelchairs })] : []),
    ...laid.items.flatMap((i) => (i.note ? [i.note] : [])),
  ];
  return {
    names: laid.number > 0 ? [] : [first.label], numbers: laid.number > 0 ? [laid.number] : [], each: seats.length, places: seats.length,
    table: tableWords(laid, venue, say), under: under.join("; "),
  };
}

/** Numbers that follow one another are written as a run: "1 to 6, 9". */
export function numberRuns(numbers: readonly number[], say: PaperVoice = paperVoice("en-GB")): string {
  const runs: [number, number][] = [];
  for (const n of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && last[1] === n - 1) last[1] = n;
    else runs.push([n, n]);
  }
  return runs.map(([a, b]) => (a === b ? String(a) : b === a + 1 ? `${a}, ${b}` : say("{a} to {b}", { a, b }))).join(", ");
}

/** Tables alike in kind, size, places and remark share a row. */
function grouped(rows: readonly Row[]): readonly Row[] {
  const groups = new Map<string, Row>();
  for (const row of rows) {
    const key = JSON.stringify([row.table, row.under, row.each, row.numbers.length > 0]);
    const known = groups.get(key);
    groups.set(key, known
      ? { ...known, names: [...new Set([...known.names, ...row.names])], numbers: [...known.numbers, ...row.numbers], places: known.places + row.places }
      : row);
  }
  return [...groups.values()];
}

export function placeRows(told: Told, scene: Scene): readonly RowSpec[] {
  const rows = grouped(laidTables(scene).map((l) => rowOf(l, told)));
  const { say } = told;
  const total = rows.reduce((sum, r) => sum + r.places, 0);
  return [
    ...rows.map((r): RowSpec => {
      const alike = r.names.length + r.numbers.length > 1 ? say("{n} places each", { n: r.each }) : "";
      const under = [alike, r.under].filter(Boolean).join("; ");
      return {
        cells: [
          { text: r.numbers.length > 0 ? numberRuns(r.numbers, say) : list(r.names, told.venue.locale), style: STYLES.strong },
          { text: r.table, ...(under ? { under } : {}) }, { text: String(r.places) },
        ],
      };
    }),
    { sum: true, cells: [{ text: say("All places"), style: STYLES.total }, { text: "" }, { text: String(total), style: STYLES.total }] },
  ];
}

/** What stands in the scene besides its tables with places: how many of each, in words. */
function besides(scene: Scene, { venue, say }: Told): string {
  const counts = new Map<string, number>();
  const chairs = scene.items.reduce((n, i) => n + (i.kind === "chair" ? 1 : i.seats.filter((s) => s.place === "chair").length), 0);
  for (const item of scene.items) {
    const places = item.seats.length;
    if (item.kind === "chair" || (item.kind === "table" && places > 0 && item.role !== "work")) continue;
    const bare = item.label || stockName(item, venue, say);
    const name = places > 0 ? say("{name} ({n} places, not the guests')", { name: bare, n: places }) : bare;
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  const others = [...counts].map(([name, n]) => (n === 1 ? name : `${n}\u00a0×\u00a0${name}`));
  // A label may hold a comma of its own ("Cards, guest book").
  return [say("Chairs brought out: {n}.", { n: chairs }), ...(others.length > 0 ? [say("Also standing then: {others}.", { others: others.join("; ") })] : [])].join(" ");
}

export function placesSection(told: Told, to: Setting & { readonly artifacts: Content[] }): readonly Element[] {
  const scene = seatedScene(told.layout), { say } = told;
  if (!scene) return [paragraph(say("No part of this day has places at tables."), STYLES.body, to)];
  const columns = [{ title: say("No."), width: 23 }, { title: say("Table") }, { title: say("Places"), width: 16, align: "end" }] as const;
  const places = table({ columns, rows: placeRows(told, scene) }, to);
  to.flow.gap(4);
  return [element("Sect", [places, paragraph(besides(scene, told), STYLES.second, to)])];
}
