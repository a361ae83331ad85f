import type { Venue } from "../schema";
import { fieldOf, formOf, type Amiss, type Form, type Part, type Shown, type Typed } from "./form";
import { withDoorsBothSides } from "./mirror";
import { cornerOf, readCorners, shownCorners } from "./outline";
import { readRoom, roomParts } from "./room";
import { shownLength } from "./lengths";

/** The house's plan as one form: every room's corners, all counted from one point. */
export function planParts(venue: Venue): readonly Part[] {
  return [{
    ...PART, title: "Corners of every room", key: "corners", at: "rooms", fixed: true,
    about: "One corner a line: how far to the right and how far down, all counted from one point of the plan. Rooms of one level lie side by side; a wall of up to 0.80 m may stand between. What hangs on a wall keeps its distance from the wall’s first corner.",
    words: { outline: "corners" },
    fields: [{ name: "name", label: "Name", kind: "kept" }, { name: "corners", label: "Corners", kind: "area" }],
    shown: venue.rooms.map((room) => ({ name: room.name, corners: shownCorners(room.outline, [0, 0], venue) })),
  }];
}

/** What a browser sends of a form left as it is shown. */
const asShown = (parts: readonly Part[]): Record<string, Shown[string]> =>
  Object.fromEntries(parts.flatMap((part) => part.shown.flatMap((row, i) => Object.entries(row).map(([name, value]) => [fieldOf(part, i, name), value] as const))));

/** The rooms with their corners as typed; all that is in them goes with them as on their own pages. */
export function readPlan(form: Form, venue: Venue, faults: Amiss[]): Venue {
  return form.rows("corners").reduce((house, row) => {
    const before = house.rooms[row.index];
    if (!before) return house;
    const corners = readCorners(row, "corners", venue);
    if (corners.length < 3 || same(corners, before.outline)) return house;
    const corner = cornerOf(corners), parts = roomParts(house, before, row.index), amiss: Amiss[] = [];
    const typed: Typed = {
      ...asShown(parts), "floor.form": "corners", "floor.corners": shownCorners(corners, corner, venue), "floor.left": shownLength(corner[0], venue), "floor.top": shownLength(corner[1], venue),
    };
    const room = readRoom(formOf(parts, typed, { venue: house, faults: amiss }), house, before);
    faults.push(...amiss.map(({ message, fact }) => ({ fact, field: cornersField(row.index), message: `${before.name}: ${message}` })));
    return withDoorsBothSides({ ...house, rooms: house.rooms.map((r) => (r === before ? room : r)) }, room, before);
  }, venue);
}

const PART = { id: "corners", one: "room" } as const;
/** The field in which a room's corners are typed. */
export const cornersField = (room: number): string => fieldOf(PART, room, "corners");
const same = (a: Venue["rooms"][number]["outline"], b: Venue["rooms"][number]["outline"]): boolean => a.length === b.length && a.every((p, i) => p[0] === b[i]?.[0] && p[1] === b[i]?.[1]);

/** The rooms as far as their corners can be read: for the drawing beside the form. */
export function outlinesTyped(venue: Venue, typed: Typed): readonly Venue["rooms"][number]["outline"][] {
  const rows = formOf(planParts(venue), typed, { venue, faults: [] }).rows("corners");
  return venue.rooms.map((room, i) => { const row = rows.find((one) => one.index === i), read = row ? readCorners(row, "corners", venue) : []; return read.length >= 3 ? read : room.outline; });
}
