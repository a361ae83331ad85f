import type { Style } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import { DrawingSheet } from "../plan/drawing";
import { Scroll } from "../ui/scroll";
import { counted } from "../ui/say";

type Counts = { readonly comfort: { readonly seats: number; readonly tables: number }; readonly most: { readonly seats: number; readonly tables: number }; readonly ceiling: { readonly seats: number; readonly because: string } };
export type RoomStyles = { readonly room: string; readonly drape: string | null; readonly styles: readonly { readonly style: Style; readonly counts: Counts; readonly svg: string }[] };

const STYLE_WORD: Readonly<Record<Style, string>> = {
  rounds: "Round tables", long: "Long tables", mixed: "Round and long together", rows: "Rows of chairs", standing: "Standing",
  u: "Horseshoe", e: "Comb", t: "T", "hollow-square": "Hollow square",
};

/** One room, with or without its drape: a table of counts, then the drawing of each in comfort. */
export function RoomCounts({ counts: { room, drape, styles }, venue }: { readonly counts: RoomStyles; readonly venue: Venue }) {
  const name = venue.rooms.find((r) => r.id === room)?.name ?? room;
  const cloth = drape === null ? null : (venue.drapes.find((d) => d.id === drape)?.name ?? drape);
  const id = `room-${room}-${drape ?? "bare"}`;
  const drawn = styles.filter((s) => s.svg !== "");
  return (
    <section className="section fit-room" aria-labelledby={id}>
      <h2 id={id}>{name}{cloth && `, with the ${cloth.replace(/^The /, "").replace(/^./, (c) => c.toLowerCase())}`}</h2>
      {styles.length === 0 ? <p className="small sec mt-3">Nothing is seated here: the room is used for other things.</p> : (
        <Scroll label={`Counts: ${name}`}><table className="stacked">
          <thead><tr><th scope="col">Style</th><th scope="col" className="figures">In comfort</th><th scope="col" className="figures">At the most</th><th scope="col" className="figures">Ceiling</th><th scope="col">Set by</th></tr></thead>
          <tbody>{styles.map(({ style, counts }) => (
            <tr key={style}><th scope="row">{STYLE_WORD[style]}</th><td className="figures" data-head="in comfort"><b>{counts.comfort.seats}</b></td><td className="figures" data-head="at the most">{counts.most.seats}</td><td className="figures" data-head="ceiling">{counts.ceiling.seats}</td><td className="wide" data-head="Set by">{counts.ceiling.because}</td></tr>
          ))}</tbody>
        </table></Scroll>
      )}
      {drawn.length > 0 && (
        <div className="fit-grid">{drawn.map(({ style, counts, svg }) => (
          <DrawingSheet key={style} svg={svg} caption={`${STYLE_WORD[style]}: ${counted(counts.comfort.seats, "place", "places")} in comfort${counts.comfort.tables > 0 ? `, ${counted(counts.comfort.tables, "table", "tables")}` : ""}`} />
        ))}</div>
      )}
    </section>
  );
}
