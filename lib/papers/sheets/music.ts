import type { Item, Scene } from "../../layout";
import { setLines } from "../blocks";
import { element, type Element } from "../document";
import { wrap } from "../lines";
import { drawnFigure } from "../plans";
import { capital, counted, list, MUSIC } from "../words";
import type { Region } from "../flow";
import { besidePlan, type Drawn } from "./beside";
import type { PlanTool } from "./crew";
import { headOf, section, type Desk, type Part, type Setup } from "./page";
import { CARRIED } from "./style";
import { inOrder, lengthOf, partName, roomName, sizeOf, timeOf, type Told } from "./told";

const isMusic = (i: Item): boolean => i.kind === "dj" || i.kind === "band" || i.role === "stage";

/** Where music stands in some part of the day. */
export const musicScenes = (told: Told): readonly Scene[] => inOrder(told.layout).filter((s) => s.items.some(isMusic));

type Socket = { readonly at: readonly [number, number]; readonly said: string };

/** Sockets of a room, the nearest to a piece first. */
function socketsBy(item: Item, { venue }: Told): readonly (Socket & { readonly mm: number })[] {
  const room = venue.rooms.find((r) => r.id === item.room);
  return (room?.sockets ?? []).map((s) => {
    const socket: Socket = "length" in s ? { at: s, said: "" } : { at: s.at, said: [s.circuit ? `circuit ${s.circuit}` : "", s.amps ? `${s.amps} A` : ""].filter(Boolean).join(", ") };
    return { ...socket, mm: Math.hypot(socket.at[0] - item.at[0], socket.at[1] - item.at[1]) };
  }).sort((a, b) => a.mm - b.mm);
}

function powerWords(item: Item, told: Told): readonly string[] {
  const near = socketsBy(item, told);
  const [first, second] = near;
  if (!first) return [`${item.label}: no socket is known in ${roomName(item.room, told.venue)}; ask the venue.`];
  const say = (s: typeof first): string => `${lengthOf(s.mm, told.venue)}${s.said ? ` (${s.said})` : ""}`;
  return [`${item.label}: nearest socket ${say(first)} from its middle${second ? `, the next ${say(second)}` : ""}. Cables along the wall, not across a way.`];
}

/** What each act draws, as the couple told it. */
function loads({ brief }: Told): readonly string[] {
  return [
    ...(brief.music.more ?? []).map((m) => `${MUSIC[m.by]} at ${m.scene}: ${[m.players ? counted(m.players, "player", "players") : "", m.watts === undefined ? "load not told" : `${m.watts} W`].filter(Boolean).join(", ")}.`),
    ...(brief.brought ?? []).filter((b) => b.watts !== undefined).map((b) => `${capital(b.what)}: ${b.watts} W${b.scene ? ` at ${b.scene}` : ""}.`),
  ];
}

/** From the music to what it plays for, as the crow flies. */
function sightWords(scene: Scene, item: Item, told: Told): readonly string[] {
  const to = scene.items.filter((i) => i.room === item.room && (i.kind === "dance-floor" || i.role === "top" || i.kind === "arch"));
  const found = to.map((i) => `${lengthOf(Math.hypot(i.at[0] - item.at[0], i.at[1] - item.at[1]), told.venue)} to the middle of the ${i.role === "top" ? "couple's table" : i.label.toLowerCase()}`);
  return found.length > 0 ? [list(found)] : [];
}

const para = (text: string, to: Desk): Element => {
  to.flow.gap(1.2);
  return element("P", setLines(wrap(text, { style: CARRIED.body, width: to.flow.width(), measure: to.measure }), CARRIED.body, to));
};

/** The musicians' sheet: their spot, power, what they see, the dance floor. Null where no part of the day has music standing. */
export function musicPart(told: Told, by: Setup & { readonly from: number; readonly plan: PlanTool }): Part | null {
  const scenes = musicScenes(told);
  const shown = scenes.findLast((s) => s.id === "dancing") ?? scenes.at(-1);
  if (!shown) return null;
  const { from, plan } = by;
  const { brief } = told;
  const pieces = shown.items.filter(isMusic);
  const floors = shown.items.filter((i) => i.kind === "dance-floor");
  const rooms = [...new Set([...pieces, ...floors].map((i) => i.room))];
  const title = "Music";
  const times = scenes.flatMap((s) => { const t = timeOf(s.id, told); return t ? [`${partName(s).toLowerCase()} ${t}`] : []; });
  const head = headOf(from, { title, beside: [MUSIC[brief.music.by] + (brief.music.players > 0 ? `, ${counted(brief.music.players, "player", "players")}` : ""), ...times].join("; ") }, by);
  const measured = rooms[0];
  const draw = (into: Region): Drawn => {
    const drawing = plan(shown.id, { rooms, width: into.width, height: into.height, ...(measured ? { measured } : {}) });
    return { perMetre: drawing.perMetre, figures: [drawnFigure(drawing, into)] };
  };
  const { figures, said, artifacts, pages } = besidePlan(from, by, { draw, first: (desk) => sayMusic({ scenes, pieces, floors, told }, desk) });
  return { title, from, pages, elements: [element("Sect", [head, ...figures, ...said])], artifacts };
}

type Playing = { readonly scenes: readonly Scene[]; readonly pieces: readonly Item[]; readonly floors: readonly Item[]; readonly told: Told };

function sayMusic({ scenes, pieces, floors, told }: Playing, to: Desk): readonly Element[] {
  const { brief } = told;
  const spots = [section("Your spot", to), ...[...new Set(scenes.flatMap((s) => s.items.filter(isMusic).map((i) => `${i.label}: ${sizeOf(i, told.venue)} in ${roomName(i.room, told.venue)}`)))].map((t) => para(`${t}, ${list(scenes.filter((s) => s.items.some((i) => isMusic(i) && t.startsWith(`${i.label}:`) && t.endsWith(roomName(i.room, told.venue)))).map((s) => partName(s).toLowerCase()))}.`, to))];
  to.flow.gap(4);
  const power = [section("Power", to), ...pieces.flatMap((p) => powerWords(p, told)).map((t) => para(t, to)), ...loads(told).map((t) => para(t, to))];
  to.flow.gap(4);
  const views = scenes.flatMap((s) => s.items.filter(isMusic).flatMap((i) => sightWords(s, i, told).map((text) => ({ text, part: partName(s).toLowerCase() }))));
  const seen = [
    ...[...new Set(views.map((v) => v.text))].map((text) => `${text} (${list([...new Set(views.filter((v) => v.text === text).map((v) => v.part))])}).`),
    ...told.layout.findings.filter((f) => /^(music|dj|band|sight)/.test(f.code)).map((f) => f.text),
  ];
  const sight = seen.length > 0 ? [section("What you see", to), ...[...new Set(seen)].map((t) => para(t, to))] : [];
  to.flow.gap(4);
  const floor = floors.length > 0 ? [section("Dance floor", to), ...floors.map((f) => para(`${sizeOf(f, told.venue)}${"stock" in f.from && f.from.count ? `, ${f.from.count} panels` : ""}, ${roomName(f.room, told.venue)}.`, to))] : [];
  to.flow.gap(4);
  const { access, clear } = brief.times ?? {};
  const day = access || clear ? [section("Coming and going", to), ...(access ? [para(`The crew come in at ${access}.`, to)] : []), ...(clear ? [para(`Clear by ${clear}.`, to)] : [])] : [];
  return [...spots, ...power, ...sight, ...floor, ...day];
}
