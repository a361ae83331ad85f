import type { Brief } from "../brief";
import type { Item, Scene, SceneId, Turnover } from "../layout";
import { SCENES } from "../layout";
import type { Venue } from "../venue";
import type { Context, Raw } from "./context";

/** A piece as the crew see it: what it is and where it stands, not how it is numbered. */
const marks = new WeakMap<Item, string>();
function markOf(i: Item): string {
  const known = marks.get(i) ?? mark(i);
  marks.set(i, known);
  return known;
}
const mark = (i: Item): string => JSON.stringify([
  "stock" in i.from ? i.from.stock : "standing" in i.from ? i.from.standing : "brought", i.kind, i.shape, i.at, ((i.angle % 360) + 360) % 360,
  // A chair is its own place, and stays one piece whether anyone sits on it or not.
  i.kind === "chair" || i.role === "wheelchair-space" ? [] : i.seats.map((s) => [s.x, s.y, s.place]),
]);

const contents = new WeakMap<Scene, Map<string, string>>();

/** What stands in a room at a part of the day, as one text. */
export function contentsOf(scene: Scene, room: string): string {
  const of = contents.get(scene) ?? new Map<string, string>();
  contents.set(scene, of);
  const text = of.get(room) ?? scene.items.filter((i) => i.room === room).map(markOf).sort().join("\n");
  of.set(room, text);
  return text;
}

type Change = { readonly room: string; readonly from: Scene; readonly to: Scene };

/** Rooms whose contents differ between one part of the day that uses them and the next that does. */
export function changes(scenes: readonly Scene[], drapes: Venue["drapes"] = []): readonly Change[] {
  const ordered = [...scenes].sort((a, b) => SCENES.indexOf(a.id) - SCENES.indexOf(b.id));
  const rooms = [...new Set(ordered.flatMap((s) => s.rooms))];
  return rooms.flatMap((room) => {
    const here = ordered.filter((s) => s.rooms.includes(room));
    return here.slice(1).flatMap((to, k) => {
      const from = here[k];
      return from && (contentsOf(from, room) !== contentsOf(to, room) || drapesOn(from, room, drapes) !== drapesOn(to, room, drapes)) ? [{ room, from, to }] : [];
    });
  });
}
/** The drapes drawn at a room: hanging or taking one down is work there too. */
const drapesOn = (s: Scene, room: string, drapes: Venue["drapes"]): string =>
  drapes.filter((d) => s.drapes.includes(d.id) && (d.grows === room || d.from === room)).map((d) => d.id).sort().join(" ");

const at = (id: SceneId): number => SCENES.indexOf(id);

/** The turnovers of a room, or of all rooms, that a layout has between two parts of the day. */
export const turnoversOf = (c: Context, { room, from, to }: Change): readonly Turnover[] =>
  c.layout.turnovers.filter((t) => at(t.from) >= at(from.id) && at(t.to) <= at(to.id) && (t.room === undefined || t.room === room));

/** Which of them allows no turnover, if either. */
export function whoForbids(c: Context): "package" | "brief" | null {
  if (c.venue.packages.find((p) => p.id === c.brief?.package)?.turnover === false) return "package";
  return c.brief?.turnover === false ? "brief" : null;
}

/** A turnover stands wherever a room changes, and only where package and brief allow one. */
export function turnovers(c: Context): readonly Raw[] {
  const forbids = whoForbids(c);
  return changes(c.scenes.map((v) => v.scene), c.venue.drapes).flatMap(({ room, from, to }): readonly Raw[] => {
    const base = { level: "must" as const, scene: to.id, items: [] };
    const data = { room, from: from.id, to: to.id };
    const found = turnoversOf(c, { room, from, to });
    const out: Raw[] = [];
    if (found.length === 0) out.push({ ...base, code: "turnover-missing", source: "the layout's parts of the day", data });
    else if (!found.some((t) => t.minutes > 0 && t.crew > 0)) out.push({ ...base, code: "turnover-empty", source: "the layout's parts of the day", data });
    const seated = from.items.some((i) => i.room === room && i.seats.length > 0) || c.brief?.ceremony.seating === "standing";
    if (c.brief && from.id === "ceremony" && (to.id === "drinks" || to.id === "meal") && seated && forbids) {
      out.push({ ...base, code: "turnover-not-allowed", source: `the ${forbids}`, data: { ...data, by: forbids } });
    }
    return out;
  });
}

const minutesOf = (time: string): number => { const [h, m] = time.split(":").map(Number); return (h ?? 0) * 60 + (m ?? 0); };

/** Minutes between two parts of the day for the crew: from the start of the next part, when the guests have left the room, to its own. */
export function gapFor(times: Brief["times"], from: SceneId, to: SceneId): number | null {
  const start = SCENES.slice(SCENES.indexOf(from) + 1, SCENES.indexOf(to)).map((s) => times?.[s]).find((t) => t !== undefined) ?? times?.[from];
  const end = times?.[to];
  if (start === undefined || end === undefined) return null;
  const d = minutesOf(end) - minutesOf(start);
  return d < 0 ? d + 24 * 60 : d;
}

/** Turnovers fit the gap that the day's times leave them; those between the same two parts are one crew's, one after another. */
export function turnoverTime(c: Context): readonly Raw[] {
  const windows = new Map<string, Turnover[]>();
  for (const t of c.layout.turnovers) windows.set(`${t.from} ${t.to}`, [...(windows.get(`${t.from} ${t.to}`) ?? []), t]);
  return [...windows.values()].flatMap((all): readonly Raw[] => {
    const [t] = all, gap = t ? gapFor(c.brief?.times, t.from, t.to) : null;
    if (!t || gap === null) return [];
    const leaving = all.map((one) => one.leaving ?? 0), minutes = Math.ceil(all.reduce((n, one) => n + one.minutes - (one.leaving ?? 0), Math.max(...leaving)));
    if (minutes <= gap) return [];
    return [{
      code: "turnover-time", level: "must", source: "the brief's times", scene: t.to, items: [], measured: minutes, limit: gap, unit: "minutes",
      data: { from: t.from, to: t.to, minutes, gap, ...(t.room && all.length === 1 ? { room: t.room } : {}) },
    }];
  });
}
