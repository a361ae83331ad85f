import type { Path, Problem } from "../../base";
import type { Layout } from "../../layout";
import type { Venue } from "../schema";
import { problem } from "./room";

/** Where a layout names what its venue does not have: rooms, drapes, stock, standing pieces; or two pieces of a scene share a name. */
export function layoutFacts(venue: Venue, layout: Layout, at: Path = []): readonly Problem[] {
  const rooms = new Set(venue.rooms.map((r) => r.id)), drapes = new Set(venue.drapes.map((d) => d.id));
  const stock = new Set(venue.stock.map((s) => s.id)), standing = new Set(venue.rooms.flatMap((r) => r.standing.map((s) => s.id)));
  const known = (set: ReadonlySet<string>, id: string, { here, what }: { readonly here: Path; readonly what: string }): readonly Problem[] =>
    set.has(id) ? [] : [problem(here, `"${id}" is not ${what} of this venue; allowed: ${[...set].map((x) => `"${x}"`).join(", ") || "none"}`)];
  return layout.scenes.flatMap((scene, i) => {
    const here = [...at, "scenes", i];
    const seen = new Set<string>();
    return [
      ...(layout.scenes.findIndex((s) => s.id === scene.id) === i ? [] : [problem([...here, "id"], `"${scene.id}" stands twice; allowed: each part of the day once`)]),
      ...scene.rooms.flatMap((r, k) => known(rooms, r, { here: [...here, "rooms", k], what: "a room" })),
      ...scene.drapes.flatMap((d, k) => known(drapes, d, { here: [...here, "drapes", k], what: "a drape" })),
      ...scene.items.flatMap((item, k) => {
        const double = seen.has(item.id);
        seen.add(item.id);
        const spot = [...here, "items", k];
        return [
          ...(double ? [problem([...spot, "id"], `"${item.id}" stands twice in one part of the day; allowed: a name of its own`)] : []),
          ...known(rooms, item.room, { here: [...spot, "room"], what: "a room" }),
          ...("stock" in item.from ? known(stock, item.from.stock, { here: [...spot, "from", "stock"], what: "in the stock" }) : []),
          ...("standing" in item.from ? known(standing, item.from.standing, { here: [...spot, "from", "standing"], what: "a standing piece" }) : []),
        ];
      }),
    ];
  });
}
