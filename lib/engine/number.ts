import { clearance, dot, sub, turn, type Point } from "../geometry";
import { footprint, isRound, type Item } from "../layout";

/** Tables whose edges come this near are one run, mm. */
const JOINED = 10;
/** Tables nearer than this along the way in stand in one row, mm. */
const SAME_ROW = 900;

export type Numbered = {
  readonly items: readonly Item[];
  /** The first part of each numbered table, in order. */
  readonly numbers: readonly string[];
};

export type NumberOptions = {
  /** The couple's table, left unnumbered. */
  readonly top?: Item | undefined;
  /** The axis that the rows are true to, degrees; the tables' own where it is left out. */
  readonly axis?: number;
  /** The first number; 1 where it is left out. */
  readonly start?: number;
};

type Group = { readonly parts: readonly Item[]; readonly at: Point };

/** Tables put end to end are one table to the guests: they share a number. */
function groupsOf(tables: readonly Item[]): readonly Group[] {
  const parent = tables.map((_, i) => i);
  const find = (i: number): number => { let r = i; while (parent[r] !== r) r = parent[r] ?? r; return r; };
  for (let i = 0; i < tables.length; i++) for (let j = i + 1; j < tables.length; j++) {
    const a = tables[i], b = tables[j];
    if (!a || !b || a.room !== b.room || isRound(a.shape) || isRound(b.shape)) continue;
    if (clearance(footprint(a), footprint(b)) <= JOINED) parent[find(j)] = find(i);
  }
  const byRoot = new Map<number, Item[]>();
  tables.forEach((t, i) => byRoot.set(find(i), [...(byRoot.get(find(i)) ?? []), t]));
  return [...byRoot.values()].map((parts) => ({
    parts,
    at: [parts.reduce((s, p) => s + p.at[0], 0) / parts.length, parts.reduce((s, p) => s + p.at[1], 0) / parts.length],
  }));
}

/** The axis that the tables are true to: the top table's, else the commonest of the long tables', else the page's. */
function axisOfTables(tables: readonly Item[], top: Item | undefined): number {
  if (top && !isRound(top.shape)) return top.angle;
  const count = new Map<number, number>();
  for (const t of tables) if (!isRound(t.shape)) {
    const a = Math.round((((t.angle % 90) + 90) % 90) * 10) / 10;
    count.set(a, (count.get(a) ?? 0) + 1);
  }
  return [...count].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0]?.[0] ?? 0;
}

/**
 * Numbers the dining tables as a guest who comes in meets them: row after row from the entrance, to and fro. Ids become t1, t2, …
 * (the further parts of a joined run t3-b, t3-c), labels "Table 3" on every part. Other items pass unchanged and keep their order.
 */
export function numberTables(items: readonly Item[], entry: Point, options: NumberOptions = {}): Numbered {
  const { top, start = 1 } = options;
  const tables = items.filter((i) => i.kind === "table" && i.role === "dining" && i.id !== top?.id);
  const groups = groupsOf(tables);
  if (groups.length === 0) return { items, numbers: [] };
  const axis = options.axis ?? axisOfTables(tables, top);
  const middle: Point = [groups.reduce((s, g) => s + g.at[0], 0) / groups.length, groups.reduce((s, g) => s + g.at[1], 0) / groups.length];
  const ways = [0, 90, 180, 270].map((d) => turn([1, 0], axis + d));
  const onward = [...ways].sort((a, b) => dot(sub(middle, entry), b) - dot(sub(middle, entry), a))[0] ?? [1, 0];
  const across: Point = [-onward[1], onward[0]];
  const ahead = (g: Group): number => Math.round(dot(sub(g.at, entry), onward));
  const aside = (g: Group): number => Math.round(dot(sub(g.at, entry), across));

  const rows: Group[][] = [];
  for (const g of [...groups].sort((a, b) => ahead(a) - ahead(b) || aside(a) - aside(b))) {
    const row = rows[rows.length - 1];
    if (row?.[0] && ahead(g) - ahead(row[0]) < SAME_ROW) row.push(g);
    else rows.push([g]);
  }
  const first = rows[0] ?? [];
  // The first row starts at the end nearer to the entrance; each next one goes the other way.
  const ends = first.map(aside);
  let rising = Math.abs(Math.min(...ends)) <= Math.abs(Math.max(...ends));
  const order: Group[] = [];
  for (const row of rows) {
    order.push(...[...row].sort((a, b) => (rising ? aside(a) - aside(b) : aside(b) - aside(a))));
    rising = !rising;
  }

  const renamed = new Map<string, Item>();
  order.forEach((g, i) => {
    const parts = [...g.parts].sort((a, b) => dot(sub(a.at, b.at), across) || dot(sub(a.at, b.at), onward));
    parts.forEach((p, k) => renamed.set(p.id, { ...p, id: k === 0 ? `t${start + i}` : `t${start + i}-${letter(k)}`, label: `Table ${start + i}` }));
  });
  return { items: items.map((i) => renamed.get(i.id) ?? i), numbers: order.map((_, i) => `t${start + i}`) };
}

/** 1 → b, 2 → c, …, 26 → aa. */
const letter = (k: number): string => (k < 26 ? String.fromCharCode(97 + k) : `${letter(Math.floor(k / 26) - 1)}${letter(k % 26)}`);
