import { assertNever } from "../base";
import type { Item, Layout, Scene, SceneId } from "../layout";
import { formatLength, lengthStyle } from "../measure";
import type { Venue } from "../venue";
import { labelIn } from "../words/engine";
import { handVoiceOf } from "../words/hand";
import { roomNow } from "./room-now";
import type { Edit, Standing } from "./types";
import { nearWalls } from "./walls";

const itemOf = (layout: Layout, scene: SceneId | undefined, id: string): Item | undefined =>
  layout.scenes.filter((s) => scene === undefined || s.id === scene).flatMap((s) => s.items).find((i) => i.id === id);

/** What a piece is called: its label, else what it is. */
export const nameOf = (item: Item): string => item.label || (item.role ?? item.kind).replaceAll("-", " ");
const roomName = (venue: Venue, id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;

/** How far a piece stands from the nearer walls of its room, in words; measured from its edge. */
export function sayWalls(venue: Venue, { drapes }: Pick<Scene, "drapes">, item: Item): string {
  const room = venue.rooms.find((r) => r.id === item.room), style = lengthStyle(venue, true);
  const say = handVoiceOf(venue.locale);
  const walls = room ? nearWalls(roomNow(venue, drapes, room, item.at), item) : [], clear = walls.filter((w) => w.mm >= 0);
  // A piece that stands through a wall has no clear floor to it; through two, nothing better can be said.
  return (clear.length > 0 ? clear : walls).map((w) => say(`{length} from the ${w.wall} wall`, { length: formatLength(w.mm, style) })).join(", ");
}

/** The part of a piece's turn that can be seen: half a turn of a straight piece without a front shows nothing. */
export const sayTurn = (angle: number): string => `${Math.round(angle * 10) / 10}°`;

/** A deed in one line, as the list of what was done tells it. */
export function sayEdit(venue: Venue, { was, now, edit }: { readonly was: Standing; readonly now: Standing; readonly edit: Edit }): string {
  const scene = "scene" in edit ? edit.scene : undefined;
  const before = "piece" in edit ? itemOf(was.layout, scene, edit.piece) : undefined;
  const after = "piece" in edit ? itemOf(now.layout, scene, edit.piece) : undefined;
  const say = handVoiceOf(venue.locale), called = (item: Item): string => labelIn(nameOf(item), say.language), piece = before ? called(before) : "";
  switch (edit.do) {
    case "place": {
      if (!before || !after) return piece;
      const told = { piece, where: sayWalls(venue, now.layout.scenes.find((s) => s.id === edit.scene) ?? { drapes: [] }, after), room: roomName(venue, after.room), angle: sayTurn(after.angle) };
      if (before.angle === after.angle) return say(before.room === after.room ? "{piece} to {where}" : "{piece} to the {room}, {where}", told);
      return say(before.room === after.room ? "{piece} to {where}, turned to {angle}" : "{piece} to the {room}, {where}, turned to {angle}", told);
    }
    case "turn": return say("{piece} turned to {angle}", { piece, angle: sayTurn(after?.angle ?? 0) });
    case "swap": { const other = itemOf(was.layout, scene, edit.with); return say("{piece} and {other} change places", { piece, other: other ? called(other) : edit.with }); }
    case "exchange": return say("{piece} becomes: {other}", { piece, other: venue.stock.find((s) => s.id === edit.stock)?.name ?? edit.stock });
    case "lay": return say("{piece} laid for {n}", { piece, n: edit.places });
    case "remove": return say("{piece} taken away", { piece });
    case "add": {
      const known = new Set(was.layout.scenes.flatMap((s) => s.items.map((i) => `${s.id} ${i.id}`)));
      const fresh = now.layout.scenes.flatMap((s) => s.items.filter((i) => !known.has(`${s.id} ${i.id}`)))[0];
      return say("{piece} added in the {room}", { piece: fresh ? called(fresh) : say("A piece"), room: roomName(venue, edit.room) });
    }
    case "hold": return say(edit.on ? "{piece} held where it stands" : "{piece} let go", { piece });
    case "note": return say("Note on {piece}", { piece });
    default: return assertNever(edit);
  }
}

export const sayMend = (venue: Pick<Venue, "locale">, moved: number): string => handVoiceOf(venue.locale)("Put right: {n} pieces moved", { n: moved });
