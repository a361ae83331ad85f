import { distance, scale, sub, turn, type Point } from "../../geometry";
import { isRound, type Item, type Scene } from "../../layout";

/** The figure on a table's medallion, by item: that of its label where it ends in one, else its place in the scene's numbering. */
export function numbersOf(scene: Scene): ReadonlyMap<string, string> {
  const out = new Map<string, string>();
  scene.numbers.forEach((id, i) => {
    const item = scene.items.find((it) => it.id === id);
    const written = item && /(\d+)\s*$/.exec(item.label)?.[1];
    out.set(id, written ?? String(i + 1));
  });
  // Tables that are joined bear the label of the one that is numbered.
  const byLabel = new Map(scene.items.flatMap((i) => { const n = out.get(i.id); return n === undefined ? [] : [[`${i.room}/${i.label}`, n] as const]; }));
  for (const i of scene.items) {
    const n = byLabel.get(`${i.room}/${i.label}`);
    if (n !== undefined && i.kind === "table" && !out.has(i.id)) out.set(i.id, n);
  }
  return out;
}

export type Run = { readonly number: string; readonly items: readonly Item[]; /** Where its one medallion goes. */ readonly at: Point };

/** Tables that share a number are one run, numbered once: at its middle, if that lies on one of them, else on the first. */
export function runsOf(scene: Scene, numbers: ReadonlyMap<string, string>): readonly Run[] {
  const groups = new Map<string, Item[]>();
  for (const item of scene.items) {
    const n = numbers.get(item.id);
    if (n !== undefined) groups.set(n, [...(groups.get(n) ?? []), item]);
  }
  return [...groups].map(([number, items]) => {
    const mean: Point = [items.reduce((s, i) => s + i.at[0], 0) / items.length, items.reduce((s, i) => s + i.at[1], 0) / items.length];
    const near = items.reduce((a, b) => (distance(b.at, mean) < distance(a.at, mean) ? b : a));
    const reach = isRound(near.shape) ? near.shape.diameter / 2 : Math.min(near.shape.width, near.shape.depth);
    return { number, items, at: distance(near.at, mean) <= reach + 700 && items.length > 1 ? mean : near.at };
  });
}

/** Joined tables may stand so far apart, and be so far out of line, mm: they are rounded to whole millimetres. */
const JOINT = 5;

/** The items of a plan with top tables that stand end to end as one long piece, in the place of the first: the run bears one name, on its middle. */
export function withRunsAsOne(items: readonly Item[]): readonly Item[] {
  const runs = items.reduce<readonly EndToEnd[]>((all, item): readonly EndToEnd[] => {
    const k = all.findIndex((run) => run.some((o) => endToEnd(o, item)));
    return k < 0 ? [...all, [item]] : all.map((run, n): EndToEnd => (n === k ? [...run, item] : run));
  }, []);
  return runs.map(asOne);
}

type EndToEnd = readonly [Item, ...Item[]];

function endToEnd(a: Item, b: Item): boolean {
  if (a.role !== "top" || b.role !== "top" || a.room !== b.room || a.label !== b.label || a.angle !== b.angle || isRound(a.shape) || isRound(b.shape) || a.shape.depth !== b.shape.depth) return false;
  const [along, across] = turn(sub(b.at, a.at), -a.angle);
  return Math.abs(across) <= JOINT && Math.abs(Math.abs(along) - (a.shape.width + b.shape.width) / 2) <= JOINT;
}

function asOne(run: EndToEnd): Item {
  const [first] = run;
  if (run.length === 1 || isRound(first.shape)) return first;
  const along = run.map((i) => turn(sub(i.at, first.at), -first.angle)[0]), half = first.shape.width / 2;
  const [from, to] = [Math.min(...along) - half, Math.max(...along) + half];
  const middle = turn(scale([1, 0], (from + to) / 2), first.angle);
  return { ...first, shape: { width: to - from, depth: first.shape.depth }, at: [first.at[0] + middle[0], first.at[1] + middle[1]], seats: run.flatMap((i) => i.seats) };
}
