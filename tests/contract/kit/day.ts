import { tidewheel } from "../../../lib/demo";
import { turn } from "../../../lib/geometry";
import type { Item, Layout } from "../../../lib/layout";

/** A round of the mill's with eight places about it. */
export function round(id: string, at: readonly [number, number]): Item {
  const seats = Array.from({ length: 8 }, (_, i) => {
    const [dx, dy] = turn([840 + 130, 0], i * 45);
    return { x: Math.round(at[0] + dx), y: Math.round(at[1] + dy), facing: (i * 45 + 180) % 360, place: "chair" as const };
  });
  return { id, kind: "table", role: "dining", label: id, room: "grain-floor", from: { stock: "round" }, shape: { diameter: 1680 }, at, angle: 0, seats };
}

const stands = (tidewheel.rooms[0]?.standing ?? []).map((s): Item => ({
  id: s.id, kind: s.kind === "lounge" ? "lounge" : "other", label: s.name, room: "grain-floor", from: { standing: s.id }, shape: s.shape, at: s.at, angle: s.angle, seats: [],
}));

/** A meal at two rounds of the Grain Floor, everything else where the venue has it. */
export const meal = (items: readonly Item[] = [round("t1", [6500, 2200]), round("t2", [9900, 2200])]): Layout => ({
  id: "a", title: "Two rounds", why: [],
  scenes: [{ id: "meal", title: "Meal", rooms: ["grain-floor"], drapes: [], items: [...stands, ...items], seats: items.reduce((n, i) => n + i.seats.length, 0), numbers: items.map((i) => i.id) }],
  turnovers: [], findings: [],
});
