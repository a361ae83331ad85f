import type { Brief } from "../brief";
import { area } from "../geometry";
import { footprintPolygon, type Item, type SceneId } from "../layout";
import { peopleOf } from "./people";
import type { Context, Raw } from "./context";

const onTable = (i: Item, role: string): boolean => i.role === role || (i.also ?? []).includes(role);

/** What shows that a display or an extra of the brief stands somewhere. */
function shown(items: readonly Item[], what: string): boolean {
  switch (what) {
    case "photo-booth": return items.some((i) => i.kind === "photo-booth");
    case "lounge": return items.some((i) => i.kind === "lounge");
    case "cocktail-tables": return items.some((i) => i.kind === "cocktail-table");
    case "children-corner": return items.some((i) => onTable(i, "children") || onTable(i, "children-corner"));
    case "second-bar": return items.filter((i) => i.kind === "bar").length >= 2;
    case "buffet": return items.some((i) => i.kind === "buffet" || onTable(i, "buffet"));
    default: return items.some((i) => onTable(i, what));
  }
}

/** Each part of the day that the brief asks for is laid out. */
export function scenesAsked(c: Context): readonly Raw[] {
  const b = c.brief;
  if (!b) return [];
  const wanted: readonly SceneId[] = [
    ...(b.ceremony.here ? ["ceremony" as const] : []), ...(b.meal.service !== "none" ? ["meal" as const] : []),
    ...(b.music.dancing > 0 ? ["dancing" as const] : []),
  ];
  return wanted.filter((id) => !c.layout.scenes.some((s) => s.id === id)).map((id) => ({
    code: "scene-missing", level: "must" as const, source: "the brief", items: [], data: { scene: id },
  }));
}

/** Every display, extra, music and buffet asked for stands in some part of the day. */
export function asked(c: Context): readonly Raw[] {
  const b = c.brief;
  if (!b) return [];
  const everywhere = c.layout.scenes.map((s) => s.items);
  const missing = (what: string, level: "must" | "should", scene?: SceneId): Raw => ({
    code: "not-placed", level, source: "the brief", items: [], ...(scene ? { scene } : {}), data: { what, ...(scene ? { part: scene } : {}) },
  });
  const out: Raw[] = [];
  for (const what of [...b.displays, ...b.extras]) if (!everywhere.some((items) => shown(items, what))) out.push(missing(what, "should"));
  if (b.meal.service === "buffet" && !shown(sceneItems(c, "meal"), "buffet")) out.push(missing("buffet", "must", "meal"));
  if (b.meal.service === "stations" && !everywhere.some((items) => shown(items, "buffet"))) out.push(missing("stations", "must", "meal"));
  const music = b.music.by;
  if ((music === "dj" || music === "band") && !everywhere.some((items) => items.some((i) => i.kind === music))) out.push(missing(music, "must"));
  for (const m of b.music.more ?? []) if (m.by !== "playlist" && !sceneItems(c, m.scene).some((i) => i.kind === m.by)) out.push(missing(m.by, "should", m.scene));
  for (const g of b.brought ?? []) {
    const stands = everywhere.some((items) => items.some((i) => "brought" in i.from && i.label.toLowerCase().includes(g.what.toLowerCase())));
    if (!stands) out.push({ ...missing("brought", "should", g.scene), data: { what: "brought", name: g.what } });
  }
  if (b.meal.service !== "none" && b.meal.top !== "none" && !sceneItems(c, "meal").some((i) => i.role === "top")) out.push(missing("top", "should", "meal"));
  return out;
}

const sceneItems = (c: Context, id: SceneId): readonly Item[] => c.layout.scenes.find((s) => s.id === id)?.items ?? [];

const floorOf = (items: readonly Item[]): number => items.filter((i) => i.kind === "dance-floor").reduce((n, i) => n + area(footprintPolygon(i)), 0) / 1e6;

/** Dance floor: 4.5 ft2 (0.418 m2) a dancer, common practice of the hire trade. */
export function danceFloor(c: Context): readonly Raw[] {
  const b: Brief | undefined = c.brief;
  if (!b || b.music.dancing === 0) return [];
  const scene = c.scenes.find((s) => s.scene.id === "dancing");
  if (!scene) return [];
  const dancers = peopleOf(b, "dancing").guests * b.music.dancing;
  const need = dancers * c.values.danceArea;
  const has = floorOf(scene.scene.items);
  if (has >= need - 0.005) return [];
  const floors = scene.scene.items.filter((i) => i.kind === "dance-floor");
  return [{
    code: "dance-floor", level: "must", source: "common practice of the hire trade (4.5 ft2 a dancer)", scene: "dancing", items: floors.map((i) => i.id),
    ...(floors[0] ? { at: floors[0].at } : {}), measured: Math.floor(has * 100) / 100, limit: Math.ceil(need * 100) / 100, unit: "m2",
    data: { has: Math.floor(has * 100) / 100, need: Math.ceil(need * 100) / 100, dancers: Math.ceil(dancers - 1e-9) },
  }];
}
