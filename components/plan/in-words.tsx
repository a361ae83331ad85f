import type { Item, Scene } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import { ENGLISH, type Say } from "@/lib/words/pages/say";
import { Scroll } from "../ui/scroll";
import { sayLength } from "../ui/say";

const sizeOf = ({ shape }: Item, venue: Venue, say: Say): string =>
  "diameter" in shape ? say("round, {size}", { size: sayLength(shape.diameter, venue) }) : say("{width} by {depth}", { width: sayLength(shape.width, venue), depth: sayLength(shape.depth, venue) });
const roomName = (venue: Venue, id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;
const plain = (text: string): string => text.replace(/-/g, " ");

type Line = { readonly key: string; readonly number: string; readonly what: string; readonly where: string; readonly places: number; readonly size: string; readonly count: number };

/** Pieces of one name and size in one room are one line; so are the parts of a joined table, which share its number. */
function together(lines: readonly Line[]): readonly Line[] {
  const by = new Map<string, Line>();
  for (const l of lines) {
    const key = `${l.what}|${l.where}|${l.size}`;
    const had = by.get(key);
    by.set(key, had ? { ...had, number: had.number || l.number, places: had.places + l.places, count: had.count + 1 } : l);
  }
  return [...by.values()];
}

/** Chairs of a row are told together; everything else stands in a line of its own. */
function linesOf(scene: Scene, venue: Venue, say: Say): { readonly lines: readonly Line[]; readonly chairs: readonly { readonly room: string; readonly count: number }[] } {
  const alone = scene.items.filter((i) => i.kind !== "chair");
  const lines = alone.map((i): Line => {
    const n = scene.numbers.indexOf(i.id);
    return { key: i.id, number: n < 0 ? "" : String(n + 1), what: i.label || say.given(plain(i.role ?? i.kind)), where: roomName(venue, i.room), places: i.seats.length, size: sizeOf(i, venue, say), count: 1 };
  });
  const rooms = [...new Set(scene.items.filter((i) => i.kind === "chair").map((i) => i.room))];
  const byNumber = (l: Line): number => (l.number === "" ? 1_000_000 : Number(l.number));
  return {
    lines: [...together(lines)].sort((a, b) => byNumber(a) - byNumber(b)),
    chairs: rooms.map((room) => ({ room, count: scene.items.filter((i) => i.kind === "chair" && i.room === room).length })),
  };
}

/** One part of the day as a list: the same plan for those who do not see it. */
export function SceneInWords({ scene, venue, say = ENGLISH }: { readonly scene: Scene; readonly venue: Venue; readonly say?: Say }) {
  const { lines, chairs } = linesOf(scene, venue, say);
  const rooms = new Intl.ListFormat(venue.locale).format(scene.rooms.map((r) => roomName(venue, r)));
  return (
    <>
      <p className="small sec mt-2">
        {scene.seats > 0 ? say("{n} places in the {rooms}.", { n: scene.seats, rooms }) : say("Guests stand in the {rooms}.", { rooms })}
        {chairs.map((c) => ` ${say("{n} chairs in rows in the {room}.", { n: c.count, room: roomName(venue, c.room) })}`).join("")}
      </p>
      <Scroll label={say("List: {part}", { part: scene.title })}>
        <table className="mt-2">
          <caption className="hidden-words">{say("Everything that stands: {part}", { part: scene.title })}</caption>
          <thead><tr><th scope="col">{say("No.")}</th><th scope="col">{say("What")}</th><th scope="col">{say("Where")}</th><th scope="col">{say("Size")}</th><th scope="col" className="figures">{say("Places")}</th></tr></thead>
          <tbody>{lines.map((l) => <tr key={l.key}><td>{l.number}</td><th scope="row">{l.what}{l.count > 1 && <span className="font-normal"> × {l.count}</span>}</th><td>{l.where}</td><td>{l.size}</td><td className="figures">{l.places || ""}</td></tr>)}</tbody>
        </table>
      </Scroll>
    </>
  );
}

