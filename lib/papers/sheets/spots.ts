import { datumOf, fromWalls } from "../../drawing";
import type { Item, Scene } from "../../layout";
import { isRound } from "../../layout";
import type { Room } from "../../venue";
import { fresh, lengthOf, type Told } from "./told";

export type SpotRow = { readonly name: string; readonly across: string; readonly down: string; readonly turned: string };
export type RoomSpots = { readonly room: Room; readonly from: string; readonly pieces: readonly SpotRow[]; /** Rows of chairs: their ends and their lines. */ readonly rows: readonly SpotRow[] };

/** Turns that a rectangle shows: 0 to 179 degrees; one with a front 0 to 359. */
function turnOf(item: Item): string {
  if (isRound(item.shape)) return "";
  const a = ((Math.round(item.angle) % 360) + 360) % 360;
  const seen = item.seats.length > 0 && item.role !== "top" ? a % 180 : a;
  return seen === 0 ? "" : `${seen}°`;
}

function rowsOfChairs(chairs: readonly Item[], room: Room, told: Told): readonly SpotRow[] {
  const datum = datumOf(room);
  if (!datum || chairs.length === 0) return [];
  const straight = chairs.filter((c) => Math.abs(c.angle % 90) < 0.5);
  const lines = new Map<string, Item[]>();
  for (const c of straight) {
    const turned = Math.abs(c.angle % 180) > 45;
    const key = `${turned ? 1 : 0} ${Math.round((turned ? c.at[0] : c.at[1]) / 60)}`;
    lines.set(key, [...(lines.get(key) ?? []), c]);
  }
  const rows = [...lines.values()].map((row) => {
    const xs = row.map((c) => c.at[0]), ys = row.map((c) => c.at[1]);
    const span = (vs: readonly number[], at: number): string => {
      const [a, b] = [Math.min(...vs) - at, Math.max(...vs) - at];
      return b - a < 60 ? lengthOf((a + b) / 2, told.venue, false) : `${lengthOf(a, told.venue, false)} to ${lengthOf(b, told.venue, false)}`;
    };
    return { count: row.length, across: span(xs, datum[0]), down: span(ys, datum[1]) };
  });
  return rows.map((r, i) => ({ name: `${i + 1}: ${r.count}`, across: r.across, down: r.down, turned: "" }));
}

/** Where the middle of each piece set for a part of the day stands, room by room, from the room's upper left corner or its nearest walls. */
export function spotsOf(scene: Scene, told: Told): readonly RoomSpots[] {
  const set = fresh(scene, told);
  const collator = new Intl.Collator("en", { numeric: true });
  return told.venue.rooms.filter((r) => scene.rooms.includes(r.id)).flatMap((room): readonly RoomSpots[] => {
    const here = set.filter((i) => i.room === room.id);
    const pieces = here.filter((i) => i.kind !== "chair").sort((a, b) => Number(!scene.numbers.includes(a.id)) - Number(!scene.numbers.includes(b.id)) || collator.compare(a.label, b.label));
    const datum = datumOf(room);
    const rows = pieces.map((item): SpotRow => {
      if (datum) return { name: item.label, across: lengthOf(item.at[0] - datum[0], told.venue, false), down: lengthOf(item.at[1] - datum[1], told.venue, false), turned: turnOf(item) };
      const [first, second] = fromWalls(room, item.at);
      const say = (w: typeof first): string => (w ? `${lengthOf(w.mm, told.venue, false)} ${w.wall}` : "");
      return { name: item.label, across: say(first), down: say(second), turned: turnOf(item) };
    });
    const lines = rowsOfChairs(here.filter((i) => i.kind === "chair"), room, told);
    return rows.length + lines.length === 0 ? [] : [{ room, pieces: rows, rows: lines, from: datum ? "from the marked corner, to the right and down" : "from the nearer walls" }];
  });
}
