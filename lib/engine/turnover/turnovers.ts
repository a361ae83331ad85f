import type { Item, Move, Scene, Turnover } from "../../layout";
import { siteOf, type Site, type Venue } from "../../venue";
import { contentsOf } from "../../rules";
import { matching } from "./assignment";
import { orderOf, type OnItsWay } from "./order";
import { handled, stays, type Handled } from "./pieces";
import { CARRY, CREW, doorSeconds, FLOW, ratesOf, WALK, type Rates } from "./rates";
import { timetable, type Job, type Span } from "./schedule";
import { storeFor, walkFrom, type Stop, type Store } from "./walk";

export type TurnoverOptions = {
  /** People who must leave the room before the crew can start. */
  readonly guests?: number;
  /** The stock id of the chairs at tables; the venue's first chairs where it is left out. */
  readonly chair?: string;
};
export type TurnoverPlan = {
  readonly turnover: Turnover;
  /** Where what is over goes, and why there. */
  readonly store: Store | null;
  /** Minutes until the last guest is out. */
  readonly out: number;
};

/** Stages in an order that can be done: clear, big pieces, tables, the rest, chairs, laying. */
const STAGES = ["clear", "big", "tables", "rest", "chairs", "lay"] as const;
type Stage = (typeof STAGES)[number];
type Task = Job & { readonly stage: Stage; readonly room: string; readonly move: Move | null };

/** Past this many of one kind the exact matching would take seconds: they are then matched in the order that they stand. */
const EXACT_UP_TO = 500;

const stageOf = (h: Handled): Stage =>
  h.family === "panel" || h.family === "heavy" ? "big" : h.family === "table" ? "tables" : h.kind.startsWith("stock") ? "chairs" : "rest";

/** Minutes of one person for one piece carried over a walk of so many seconds each way. */
export function carrying(h: Handled, seconds: number, rates: Rates): number {
  const { atATime, people } = CARRY[h.family];
  return h.units * (rates[h.family] + ((2 * seconds) / 60) * (people / atATime));
}

export function pair(old: readonly Handled[], fresh: readonly Handled[], metres: (a: Handled, b: Handled) => number): readonly (readonly [Handled, Handled])[] {
  if (Math.max(old.length, fresh.length) <= EXACT_UP_TO) return matching(old, fresh, metres);
  const order = (l: readonly Handled[]): readonly Handled[] => [...l].sort((a, b) => a.at[1] - b.at[1] || a.at[0] - b.at[0]);
  const b = order(fresh);
  return order(old).slice(0, fresh.length).flatMap((x, i) => { const y = b[i]; return y ? [[x, y] as const] : []; });
}

/** What was taken out of both lists because it stands as it stood. */
function unmoved(old: readonly Handled[], fresh: readonly Handled[]): { readonly old: readonly Handled[]; readonly fresh: readonly Handled[] } {
  const spot = (h: Handled): string => `${h.kind} ${h.room} ${Math.round(h.at[0] / 50)} ${Math.round(h.at[1] / 50)}`;
  const at = new Map<string, Handled[]>();
  for (const h of fresh) at.set(spot(h), [...(at.get(spot(h)) ?? []), h]);
  const gone = new Set<Handled>(), kept = new Set<Handled>();
  for (const h of old) {
    for (const dx of [0, -1, 1]) for (const dy of [0, -1, 1]) {
      if (kept.has(h)) break;
      const key = `${h.kind} ${h.room} ${Math.round(h.at[0] / 50) + dx} ${Math.round(h.at[1] / 50) + dy}`;
      const same = (at.get(key) ?? []).find((f) => !gone.has(f) && stays(h, f));
      if (same) { gone.add(same); kept.add(h); }
    }
  }
  return { old: old.filter((h) => !kept.has(h)), fresh: fresh.filter((h) => !gone.has(h)) };
}

/**
 * How the rooms that two scenes share are turned over from one to the other: one turnover for each room in which anything differs.
 * Pieces are matched by kind at the least distance walked (assignment problem); what is over goes to the store, what is wanting
 * comes from it. `item` of a move is the piece of the old scene ("away", "shift") or of the new one ("out", "lay"); `to` is the
 * piece of the new scene ("shift", "lay"), the room ("out") or the store ("away"). A chair that comes to or leaves a table bears the
 * table's id. Minutes: whole, at least 1, from the last guest's leaving to the laid room.
 */
export function turnoverPlans(venue: Venue, from: Scene, to: Scene, options: TurnoverOptions = {}): readonly TurnoverPlan[] {
  const site = siteOf(venue, [...new Set([...from.drapes, ...to.drapes])]);
  const shared = from.rooms.filter((r) => to.rooms.includes(r));
  const rooms = new Set(shared);
  const rates = ratesOf(venue);
  const crew = venue.crew?.size ?? CREW;
  const chairKind = `stock ${options.chair ?? venue.stock.find((s) => s.kind === "chair")?.id ?? "chair"}`;
  const left = unmoved(handled(from, rooms, chairKind), handled(to, rooms, chairKind));
  const stores = new Map(shared.map((r) => [r, storeFor(site, r)] as const));

  const tasks: Task[] = [];
  const toStore = (h: Handled): number => {
    const store = stores.get(h.room);
    if (!store) return 0;
    const w = walkFrom(site, { room: h.room, at: h.at })(store);
    return (w?.seconds ?? 0) + (store.door === null ? 0 : doorSeconds(store.door));
  };
  const between = (a: Stop, b: Stop): { readonly metres: number; readonly seconds: number } =>
    (a.room === b.room ? null : walkFrom(site, a)(b)) ?? { metres: Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) / 1000, seconds: Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) / 1000 / WALK };

  const away = (h: Handled): void => void tasks.push({
    stage: "clear", room: h.room, minutes: carrying(h, toStore(h), rates), move: { item: h.id, to: stores.get(h.room)?.id ?? h.room, act: "away" },
  });
  const ways: OnItsWay<{ readonly task: Task; readonly family: Handled["family"] }>[] = [];
  const itemAt = (scene: Scene, id: string): Item | null => scene.items.find((i) => i.id === id) ?? null;
  const place = (h: Handled, task: Task, old: Item | null): void => {
    const now = h.family === "chair" ? null : itemAt(to, h.id);
    if (now) ways.push({ task: { task, family: h.family }, stage: STAGES.indexOf(task.stage), old, now }); else tasks.push(task);
  };
  const out = (h: Handled): void => place(h, {
    stage: stageOf(h), room: h.room, minutes: carrying(h, toStore(h), rates), move: { item: h.id, to: h.room, act: "out" },
  }, null);
  const shift = (a: Handled, b: Handled): void => {
    const minutes = carrying(a, between(a, b).seconds, rates);
    // A chair is stacked out of the way while floor and tables are set, and put in its place after them: handled twice.
    if (a.family === "chair") tasks.push({ stage: "clear", room: b.room, minutes: rates.chair, move: null });
    place(b, { stage: stageOf(a), room: b.room, minutes, move: { item: a.id, to: b.id, act: "shift" } }, a.family === "chair" ? null : itemAt(from, a.id));
  };

  for (const kind of [...new Set([...left.old, ...left.fresh].map((h) => h.kind))].sort()) {
    const old = left.old.filter((h) => h.kind === kind), fresh = left.fresh.filter((h) => h.kind === kind);
    const moved = pair(old, fresh, (a, b) => between(a, b).metres);
    for (const [a, b] of moved) {
      shift(a, b);
      // A floor of other size: the panels that are over or wanting.
      if (a.units > b.units) away({ ...a, units: a.units - b.units });
      if (b.units > a.units) out({ ...b, units: b.units - a.units });
    }
    const used = new Set(moved.flat());
    old.filter((h) => !used.has(h)).forEach(away);
    fresh.filter((h) => !used.has(h)).forEach(out);
  }
  // Each piece goes to a spot that is free by then; what stands in another's way is put aside with the clearing, and handled twice.
  const { steps, aside } = orderOf(ways);
  for (const w of aside) tasks.push({ stage: "clear", room: w.task.task.room, minutes: rates[w.task.family], move: null });
  tasks.push(...steps.map((w) => w.task.task));

  for (const item of to.items) {
    const minutes = rooms.has(item.room) ? laying(item, from, to, rates) : 0;
    if (minutes > 0) tasks.push({ stage: "lay", room: item.room, minutes, move: { item: item.id, to: item.id, act: "lay" } });
  }

  return shared.flatMap((room): readonly TurnoverPlan[] => {
    const mine = tasks.filter((t) => t.room === room);
    // Wheelchair spaces and drapes are no piece of furniture, yet a room in which they differ is another room.
    if (mine.length === 0 && contentsOf(from, room) === contentsOf(to, room) && drapesAt(venue, from, room) === drapesAt(venue, to, room)) return [];
    const leaving = emptying(site, room, options.guests ?? from.seats);
    const { timed, ends } = timetable(STAGES.map((s) => mine.filter((t) => t.stage === s)), { crew, from: leaving });
    return [{
      out: round(leaving), store: stores.get(room) ?? null,
      turnover: {
        from: from.id, to: to.id, room, crew, minutes: Math.max(1, Math.ceil(round(ends))), leaving: round(leaving),
        moves: together(timed), ...stackedFirst(timed),
      },
    }];
  });
}

/** The same as plain turnovers, as a layout holds them. */
export const turnovers = (venue: Venue, from: Scene, to: Scene, options: TurnoverOptions = {}): readonly Turnover[] =>
  turnoverPlans(venue, from, to, options).map((p) => p.turnover);

/** One line for what goes together: a table and the chairs about it. */
export function together(tasks: readonly ({ readonly move: Move | null; readonly minutes: number } & Span)[]): readonly Move[] {
  const lines = new Map<string, Move>();
  for (const { move, minutes, begins, ends } of tasks) {
    if (!move) continue;
    const key = `${move.item} ${move.to} ${move.act ?? ""}`;
    const known = lines.get(key);
    lines.set(key, { ...move, minutes: round((known?.minutes ?? 0) + minutes), begins: Math.min(known?.begins ?? Infinity, round(begins)), ends: Math.max(known?.ends ?? 0, round(ends)) });
  }
  return [...lines.values()];
}

/** What is cleared out of the way to be set again later: handled twice, and no move of its own. */
function stackedFirst(tasks: readonly (Task & Span)[]): Pick<Turnover, "aside"> {
  const twice = tasks.filter((t) => t.move === null);
  if (twice.length === 0) return {};
  return { aside: {
    pieces: twice.length, minutes: round(twice.reduce((n, t) => n + t.minutes, 0)),
    begins: round(Math.min(...twice.map((t) => t.begins))), ends: round(Math.max(...twice.map((t) => t.ends))),
  } };
}

const drapesAt = (venue: Venue, s: Scene, room: string): string =>
  venue.drapes.filter((d) => s.drapes.includes(d.id) && (d.grows === room || d.from === room)).map((d) => d.id).join(" ");

export const round = (x: number): number => Math.round(x * 1000) / 1000;

/** Tables laid for the meal: a cloth each, a cover each place; not again where the same table was laid already. */
const LAID: readonly (string | undefined)[] = ["dining", "top", "children"];
const isLaid = (item: Item, scene: Scene): boolean => item.kind === "table" && LAID.includes(item.role) && item.seats.length > 0 && scene.id === "meal";
/** A ceremony at the laid tables: the table stood there with its places, so it is laid already. */
const standsLaid = (item: Item, from: Scene): boolean =>
  from.items.some((i) => i.kind === "table" && i.seats.length > 0 && i.room === item.room && Math.hypot(i.at[0] - item.at[0], i.at[1] - item.at[1]) <= 1);
function laying(item: Item, from: Scene, to: Scene, rates: Rates): number {
  if (!isLaid(item, to) || standsLaid(item, from)) return 0;
  return rates.cloth + item.seats.length * rates.cover;
}

/** Minutes until the last guest is out of a room: its guests over the flow of its doors. */
export function emptying(site: Site, room: string, people: number): number {
  const width = (site.rooms.get(room)?.gates ?? []).filter((g) => g.door.exit || g.door.for.includes("guests")).reduce((s, g) => s + g.width, 0);
  return width === 0 ? 0 : people / ((width / 1000) * FLOW) / 60;
}
