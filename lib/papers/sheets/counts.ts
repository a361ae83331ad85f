import type { Item, Scene } from "../../layout";
import { counted, list } from "../words";
import { before, fresh, roomName, sizeOf, type Told } from "./told";

export type Count = { readonly n: number; readonly name: string; readonly where: string; readonly under: string };

const units = (item: Item): number => ("stock" in item.from ? (item.from.count ?? 1) : 1);
const chairsAt = (item: Item): number => (item.kind === "chair" ? 1 : item.seats.filter((s) => s.place === "chair").length);

/** Loose chairs in one room past which they are fastened in groups: more than 200 (IBC 2018, 1029.15). */
export const FASTENED_PAST = 200;

const roomsOf = (items: readonly Item[], told: Told): string => list([...new Set(items.map((i) => roomName(i.room, told.venue)))]);

/** Standing furniture that a part of the day does without, or that stands elsewhere in it, where its room was not used before. */
function carried(scene: Scene, told: Told): readonly Count[] {
  return told.venue.rooms.filter((r) => scene.rooms.includes(r.id) && before(told.layout, scene, r.id) === undefined).flatMap((room) =>
    room.standing.flatMap((piece): readonly Count[] => {
      const now = scene.items.find((i) => "standing" in i.from && i.from.standing === piece.id);
      const heavy = told.venue.charges.find((c) => c.id === piece.move)?.name;
      const under = heavy ?? "";
      if (!now) return [{ n: 1, name: `Carry out: ${piece.name}`, where: room.name, under }];
      const off = Math.hypot(now.at[0] - piece.at[0], now.at[1] - piece.at[1]);
      return now.room === room.id && off <= 1 ? [] : [{ n: 1, name: `Move: ${piece.name}`, where: now.room === room.id ? `within ${room.name}` : roomName(now.room, told.venue), under }];
    }));
}

function stockCounts(scene: Scene, told: Told): readonly Count[] {
  const set = fresh(scene, told);
  return told.venue.stock.flatMap((stock): readonly Count[] => {
    if (stock.kind === "chair") return [];
    const mine = set.filter((i) => "stock" in i.from && i.from.stock === stock.id);
    const n = mine.reduce((sum, i) => sum + units(i), 0);
    if (n === 0) return [];
    const size = mine[0] && units(mine[0]) === 1 ? sizeOf(mine[0], told.venue) : "";
    return [{ n, name: size === "" ? stock.name : `${stock.name}, ${size}`, where: roomsOf(mine, told), under: "" }];
  });
}

function chairCounts(scene: Scene, told: Told): readonly Count[] {
  const set = fresh(scene, told);
  const n = set.reduce((sum, i) => sum + chairsAt(i), 0);
  if (n === 0) return [];
  // What stood in the same rooms before, and stands there no more, is at hand.
  const old = [...new Set(scene.rooms.map((r) => before(told.layout, scene, r)))].flatMap((s) => s?.items.filter((i) => scene.rooms.includes(i.room) && i.kind === "chair") ?? []);
  const gone = old.filter((o) => !scene.items.some((i) => i.kind === "chair" && i.at[0] === o.at[0] && i.at[1] === o.at[1])).length;
  const reused = Math.min(n, gone);
  const under = reused === 0 ? "" : `${reused} off the rows that stood before${n > reused ? `, ${n - reused} more` : ""}`;
  return [{ n, name: "Chairs", where: roomsOf(set.filter((i) => chairsAt(i) > 0), told), under }];
}

/** What the couple or their suppliers bring, each kind once. */
function brought(scene: Scene, told: Told): readonly Count[] {
  const set = fresh(scene, told).filter((i) => "brought" in i.from && i.role !== "wheelchair-space");
  return [...new Set(set.map((i) => i.label))].map((label) => {
    const mine = set.filter((i) => i.label === label);
    return { n: mine.length, name: label, where: roomsOf(mine, told), under: `brought in, ${mine[0] ? sizeOf(mine[0], told.venue) : ""}` };
  });
}

function marks(scene: Scene, told: Told): readonly Count[] {
  const set = fresh(scene, told);
  const numbered = scene.numbers.filter((id) => set.some((i) => i.id === id)).length;
  return numbered > 0 ? [{ n: numbered, name: "Table numbers", where: "", under: `${scene.numbers.length === numbered ? `1 to ${numbered}` : "those of the tables set now"}` }] : [];
}

/** What to bring out for a part of the day, before anything is put in its place. */
export const bringOut = (scene: Scene, told: Told): readonly Count[] =>
  [...carried(scene, told), ...stockCounts(scene, told), ...chairCounts(scene, told), ...brought(scene, told), ...marks(scene, told)];

/** What the crew are told besides: places without a chair, chairs that must be fastened. */
export function besides(scene: Scene, told: Told): readonly string[] {
  const spaces = scene.items.reduce((n, i) => n + i.seats.filter((s) => s.place === "wheelchair").length, 0);
  const loose = told.venue.rooms.flatMap((room) => {
    const n = scene.items.filter((i) => i.kind === "chair" && i.room === room.id).length;
    return n > FASTENED_PAST ? [`${n} loose chairs in ${room.name}: fasten them together in groups of at least three (more than ${FASTENED_PAST} loose chairs: IBC 2018, 1029.15).`] : [];
  });
  return [...loose, ...(spaces > 0 ? [`No chair at ${counted(spaces, "place", "places")}: kept for ${spaces === 1 ? "a wheelchair" : "wheelchairs"}, drawn as an open box.`] : [])];
}
