import type { Item, Scene } from "../../layout";
import type { Point } from "../../geometry";
import type { Family } from "./rates";

/** One thing that the crew handle: an item, one or several units of stock, or a chair at a table. */
export type Handled = {
  /** The item of the scene that it is, or that it stands at. */
  readonly id: string;
  readonly room: string;
  readonly at: Point;
  readonly angle: number;
  /** What it can stand in for: the same stock, the same standing piece. */
  readonly kind: string;
  readonly family: Family;
  readonly units: number;
  readonly chairOf: boolean;
};

const HEAVY: readonly Item["kind"][] = ["bar", "band", "dj", "lounge", "photo-booth", "buffet", "arch", "backdrop", "screen"];

function familyOf(item: Item): Family {
  if (item.kind === "chair") return "chair";
  if (item.kind === "dance-floor" || item.role === "stage") return "panel";
  if (item.kind === "table" || item.kind === "buffet" || item.kind === "cocktail-table") return "table";
  return HEAVY.includes(item.kind) ? "heavy" : "chair";
}

const kindOf = (item: Item): string =>
  "stock" in item.from ? `stock ${item.from.stock}` : "standing" in item.from ? `standing ${item.from.standing}` : `brought ${item.kind} ${item.role ?? ""} ${item.label}`;

/** Wheelchair spaces are floor, not furniture. */
const isFurniture = (item: Item): boolean => item.role !== "wheelchair-space";

/** Everything in one room of a scene that hands must move, chairs at tables among it. */
export function handled(scene: Scene, rooms: ReadonlySet<string>, chairKind: string): readonly Handled[] {
  const out: Handled[] = [];
  for (const item of scene.items) {
    if (!rooms.has(item.room) || !isFurniture(item)) continue;
    const units = "stock" in item.from ? (item.from.count ?? 1) : 1;
    out.push({ id: item.id, room: item.room, at: item.at, angle: item.angle, kind: kindOf(item), family: familyOf(item), units, chairOf: false });
    if (item.kind === "chair") continue;
    for (const s of item.seats) {
      if (s.place === "chair") out.push({ id: item.id, room: item.room, at: [s.x, s.y], angle: s.facing - 90, kind: chairKind, family: "chair", units: 1, chairOf: true });
    }
  }
  return out;
}

const SAME_SPOT = 1;
/** Stands just as it stood. */
export const stays = (a: Handled, b: Handled): boolean =>
  a.kind === b.kind && a.units === b.units && a.room === b.room &&
  Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) <= SAME_SPOT &&
  Math.abs((((a.angle - b.angle) % 360) + 540) % 360 - 180) <= 0.5;
