import type { Point } from "../../geometry";
import type { Venue } from "../../venue";
import { siteOf } from "../../venue";

type Stop = { readonly room: string; readonly at: Point };
const metres = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/**
 * How far it is from one spot to another through the doors between the rooms, walked straight from door to door, mm; null where no
 * door joins them. Furniture is not walked round: the least that the way can be. Shortest path over doors (Dijkstra 1959).
 */
export function straightWalk(venue: Venue, from: Stop, to: Stop): number | null {
  if (from.room === to.room) return metres(from.at, to.at);
  const gates = [...siteOf(venue).rooms.values()].flatMap((r) => r.gates).filter((g) => g.leadsTo !== null);
  const cost = new Map<string, number>();
  const key = (room: string, door: string): string => `${room}/${door}`;
  const open: { readonly stop: Stop; readonly cost: number }[] = [{ stop: from, cost: 0 }];
  let best: number | null = null;
  while (open.length > 0) {
    open.sort((a, b) => b.cost - a.cost);
    const now = open.pop();
    if (!now || (best !== null && now.cost >= best)) break;
    if (now.stop.room === to.room) best = Math.min(best ?? Infinity, now.cost + metres(now.stop.at, to.at));
    for (const g of gates.filter((g) => g.room === now.stop.room)) {
      const next = now.cost + metres(now.stop.at, g.at);
      const id = key(g.leadsTo ?? "", g.door.id);
      if (next >= (cost.get(id) ?? Infinity)) continue;
      cost.set(id, next);
      open.push({ stop: { room: g.leadsTo ?? "", at: g.at }, cost: next });
    }
  }
  return best;
}
