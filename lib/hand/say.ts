import { assertNever } from "../base";
import type { Item, Layout, SceneId } from "../layout";
import { formatLength, lengthStyle } from "../measure";
import type { Venue } from "../venue";
import type { Edit, Standing } from "./types";
import { nearWalls } from "./walls";

const itemOf = (layout: Layout, scene: SceneId | undefined, id: string): Item | undefined =>
  layout.scenes.filter((s) => scene === undefined || s.id === scene).flatMap((s) => s.items).find((i) => i.id === id);

/** What a piece is called: its label, else what it is. */
export const nameOf = (item: Item): string => item.label || (item.role ?? item.kind).replaceAll("-", " ");
const roomName = (venue: Venue, id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;

/** How far a piece stands from the nearer walls of its room, in words; measured from its edge. */
export function sayWalls(venue: Venue, item: Item): string {
  const room = venue.rooms.find((r) => r.id === item.room), style = lengthStyle(venue, true);
  return room ? nearWalls(room, item).map((w) => `${formatLength(w.mm, style)} from the ${w.wall} wall`).join(", ") : "";
}

/** The part of a piece's turn that can be seen: half a turn of a straight piece without a front shows nothing. */
export const sayTurn = (angle: number): string => `${Math.round(angle * 10) / 10}°`;

/** A deed in one line, as the list of what was done tells it. */
export function sayEdit(venue: Venue, { was, now, edit }: { readonly was: Standing; readonly now: Standing; readonly edit: Edit }): string {
  const scene = "scene" in edit ? edit.scene : undefined;
  const before = "piece" in edit ? itemOf(was.layout, scene, edit.piece) : undefined;
  const after = "piece" in edit ? itemOf(now.layout, scene, edit.piece) : undefined;
  const name = before ? nameOf(before) : "";
  switch (edit.do) {
    case "place": {
      if (!before || !after) return name;
      const turned = before.angle === after.angle ? "" : `, turned to ${sayTurn(after.angle)}`;
      return `${name} to ${before.room === after.room ? "" : `the ${roomName(venue, after.room)}, `}${sayWalls(venue, after)}${turned}`;
    }
    case "turn": return `${name} turned to ${sayTurn(after?.angle ?? 0)}`;
    case "swap": { const other = itemOf(was.layout, scene, edit.with); return `${name} and ${other ? nameOf(other) : edit.with} change places`; }
    case "exchange": return `${name} becomes: ${venue.stock.find((s) => s.id === edit.stock)?.name ?? edit.stock}`;
    case "lay": return `${name} laid for ${edit.places}`;
    case "remove": return `${name} taken away`;
    case "add": {
      const known = new Set(was.layout.scenes.flatMap((s) => s.items.map((i) => `${s.id} ${i.id}`)));
      const fresh = now.layout.scenes.flatMap((s) => s.items.filter((i) => !known.has(`${s.id} ${i.id}`)))[0];
      return `${fresh ? nameOf(fresh) : "A piece"} added in the ${roomName(venue, edit.room)}`;
    }
    case "hold": return edit.on ? `${name} held where it stands` : `${name} let go`;
    case "note": return `Note on ${name}`;
    default: return assertNever(edit);
  }
}

export const sayMend = (moved: number): string => `Put right: ${moved} ${moved === 1 ? "piece" : "pieces"} moved`;
