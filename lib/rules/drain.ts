import type { Point } from "../geometry";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { roomsJoined } from "./exit-width";
import { levelLinks } from "./ways";

/** A door that people walk through: from a room to another, or out. Millimetres. */
type Door = { readonly id: string; readonly from: string; readonly to: string | null; readonly width: number; readonly at: Point };

/** Doors between rooms, stairs and lifts among them, and ways out, of the rooms that can be walked to. */
function doorsOf(v: SceneView): readonly Door[] {
  const rooms = new Set(roomsJoined(v.site, v.scene.rooms));
  const inside = v.site.passages.filter((p) => p.rooms.every((r) => rooms.has(r))).map((p): Door => {
    const gate = v.site.rooms.get(p.rooms[0])?.gates.find((g) => g.door.id === p.doors[0]);
    return { id: `${p.rooms[0]}/${p.doors[0]}`, from: p.rooms[0], to: p.rooms[1], width: p.width, at: gate?.at ?? [0, 0] };
  });
  const stairs = levelLinks(v.site, "anyone").map(([a, b]): Door => ({ id: `${a.room}/${a.door.id}`, from: a.room, to: b.room, width: Math.min(a.width, b.width), at: a.at }));
  const out = [...rooms].flatMap((r) => v.site.rooms.get(r)?.gates ?? []).filter((g) => g.door.exit && !v.site.rooms.has(g.door.leads))
    .map((g): Door => ({ id: `${g.room}/${g.door.id}`, from: g.room, to: null, width: g.width, at: g.at }));
  return [...inside, ...stairs, ...out];
}

type Cut = { readonly rooms: ReadonlySet<string>; readonly doors: readonly Door[] };

/**
 * Sends the people of each room through the doors as evenly as the widths let them (greatest flow by shortest paths: Edmonds and
 * Karp 1972). Null where all get out; else the rooms whose people do not, and the doors that hold them up (the least cut).
 */
function heldUp(people: ReadonlyMap<string, number>, doors: readonly Door[]): Cut | null {
  const used = new Map<Door, number>(doors.map((d) => [d, 0]));
  const left = new Map(people);
  /** What still goes through a door in the direction from a room. */
  const spare = (d: Door, room: string): number => d.width - (used.get(d) ?? 0) * (d.from === room ? 1 : -1);
  for (;;) {
    const via = new Map<string, { readonly door: Door; readonly from: string }>();
    const seen = new Set([...left].filter(([, n]) => n > 1e-6).map(([r]) => r));
    const starts = new Set(seen);
    let exit: { readonly door: Door; readonly from: string } | null = null;
    for (const room of seen) {
      for (const door of doors) {
        if ((door.from !== room && door.to !== room) || spare(door, room) <= 1e-6) continue;
        const to = door.from === room ? door.to : door.from;
        if (to === null) { exit = { door, from: room }; break; }
        if (!seen.has(to)) { seen.add(to); via.set(to, { door, from: room }); }
      }
      if (exit) break;
    }
    if (!exit) return starts.size === 0 ? null : { rooms: seen, doors: doors.filter((d) => seen.has(d.from) ? d.to === null || !seen.has(d.to) : d.to !== null && seen.has(d.to)) };
    const path = [exit];
    for (let room = exit.from; !starts.has(room);) { const step = via.get(room); if (!step) break; path.push(step); room = step.from; }
    const first = path.at(-1)?.from ?? exit.from;
    const by = Math.min(left.get(first) ?? 0, ...path.map((s) => spare(s.door, s.from)));
    for (const s of path) used.set(s.door, (used.get(s.door) ?? 0) + (s.door.from === s.from ? by : -by));
    left.set(first, (left.get(first) ?? 0) - by);
  }
}

/** People at the places of each room; no more of them than are there. */
function peopleByRoom(v: SceneView): ReadonlyMap<string, number> {
  const seats = new Map<string, number>();
  for (const i of v.scene.items) if (i.seats.length > 0) seats.set(i.room, (seats.get(i.room) ?? 0) + i.seats.length);
  const all = [...seats.values()].reduce((a, b) => a + b, 0), share = all === 0 ? 0 : Math.min(1, v.people / all);
  return new Map([...seats].map(([r, n]) => [r, n * share]));
}

/**
 * The people at the places of each room against the doors that they drain to, one by one: 0.2 in of width a person through every door
 * on the way, and half of that with any one way out shut (IBC 2018 1005.3.2, 1005.5; all of it by the UK's guides). People are sent
 * through the doors as evenly as the widths let them, so what is told holds however they walk. Where the ways out lack width in all,
 * `exitWidth` tells it.
 */
export function drain(v: SceneView, c: Context): readonly Raw[] {
  const doors = doorsOf(v), people = peopleByRoom(v), exits = doors.filter((d) => d.to === null);
  const found = (shut: Door | null): Raw | null => {
    if (shut && v.people <= c.values.exitSteps[0]) return null;
    const each = c.values.exitWidth * (shut ? c.values.exitLeft : 1), open = doors.filter((d) => d !== shut);
    const cut = heldUp(new Map([...people].map(([r, n]) => [r, n * each])), open);
    if (!cut) return null;
    const behind = [...cut.rooms].reduce((n, r) => n + (people.get(r) ?? 0), 0), width = cut.doors.reduce((n, d) => n + d.width, 0);
    const door = [...cut.doors].sort((a, b) => a.width - b.width || (a.id < b.id ? -1 : 1))[0] ?? shut;
    // All the ways out there are: told of as such.
    if (width >= behind * each - 1 || open.every((d) => d.to !== null || cut.doors.includes(d))) return null;
    const room = [...cut.rooms].filter((r) => people.has(r)).sort()[0] ?? "";
    return {
      code: "drain", level: c.values.profile === "model-code" ? "must" : "should", source: "IBC 2018 1005.3.2, 1005.5", scene: v.scene.id, items: [], ...(door ? { at: placed(door.at) } : {}),
      measured: Math.floor(width), limit: Math.ceil(behind * each), unit: "mm",
      data: { room, people: Math.round(behind), width: Math.floor(width), limit: Math.ceil(behind * each), doors: cut.doors.length, shut: shut !== null },
    };
  };
  const open = found(null);
  if (open) return [open];
  const worst = exits.flatMap((e) => found(e) ?? []).sort((a, b) => ((b.limit ?? 0) - (b.measured ?? 0)) - ((a.limit ?? 0) - (a.measured ?? 0)))[0];
  return worst ? [worst] : [];
}
