import type { Item, Layout, Move, Turnover } from "../layout";
import type { Venue } from "../venue";
import { heading, paragraph, type Setting } from "./blocks";
import { element, type Content, type Element } from "./document";
import { table, type RowSpec } from "./table";
import { STYLES } from "./type";
import { capital, counted, SCENE_NAMES } from "./words";

type Told = { readonly layout: Layout; readonly venue: Venue };
type Step = { readonly act: Move["act"]; readonly what: string; readonly to: string; readonly count: number; readonly minutes: number | undefined };

const ACTS: Record<NonNullable<Move["act"]>, string> = { out: "Bring out", away: "Put away", shift: "Shift", lay: "Lay" };

/** "Table 7" and "Table 8" are both a table: what a crew member calls the thing, without its number. */
const plain = (label: string): string => label.replace(/\s*\d+$/, "").trim();

const itemOf = (id: string, turnover: Turnover, layout: Layout): Item | undefined => {
  const scene = (name: string) => layout.scenes.find((s) => s.id === name)?.items.find((i) => i.id === id);
  return scene(turnover.to) ?? scene(turnover.from);
};

function nameOf(id: string, turnover: Turnover, { layout, venue }: Told): string {
  const item = itemOf(id, turnover, layout);
  if (!item) return id;
  const from = item.from;
  const stock = "stock" in from ? venue.stock.find((s) => s.id === from.stock)?.name : undefined;
  return stock ?? (plain(item.label) || item.kind.replace(/-/g, " "));
}

/** Where a move ends: a room, the door to the store, or the spot that a piece of the next part has in its room. */
function placeName(move: Move, turnover: Turnover, { layout, venue }: Told): string {
  const nameOfRoom = (id: string | undefined): string | undefined => venue.rooms.find((r) => r.id === id)?.name;
  const target = itemOf(move.to, turnover, layout);
  if (target) return `in ${nameOfRoom(target.room) ?? target.room}`;
  const room = nameOfRoom(move.to);
  if (room) return move.act === "away" ? `beside ${room}` : `to ${room}`;
  const door = venue.rooms.flatMap((r) => r.doors).some((d) => d.id === move.to);
  return door ? `by the door “${move.to.replace(/-/g, " ")}”` : `to ${move.to.replace(/-/g, " ")}`;
}

/** Moves of one sort, one thing and one goal are one step; the order of their first move stays. */
export function stepsOf(turnover: Turnover, told: Told): readonly Step[] {
  const steps = new Map<string, Step>();
  for (const move of turnover.moves) {
    const what = nameOf(move.item, turnover, told);
    const to = placeName(move, turnover, told);
    const key = JSON.stringify([move.act, what, to]);
    const known = steps.get(key);
    const minutes = move.minutes === undefined ? known?.minutes : (known?.minutes ?? 0) + move.minutes;
    steps.set(key, { act: move.act, what, to, count: (known?.count ?? 0) + 1, minutes });
  }
  return [...steps.values()];
}

function rowsOf(turnover: Turnover, told: Told): readonly RowSpec[] {
  return stepsOf(turnover, told).map((step, i) => ({
    cells: [
      { text: String(i + 1), style: STYLES.strong },
      { text: `${step.act ? ACTS[step.act] : "Move"}: ${step.count > 1 ? `${step.count} × ` : ""}${step.what}`, under: step.to },
      { text: step.minutes === undefined ? "" : step.minutes < 1 ? "under 1" : String(Math.ceil(step.minutes)) },
    ],
  }));
}

/** Each turnover with its crew, its minutes and its steps. */
export function turnoverSection(told: Told, to: Setting & { readonly artifacts: Content[] }): readonly Element[] {
  const { layout, venue } = told;
  if (layout.turnovers.length === 0) {
    return [paragraph("No room is cleared and laid again: what stands at the first part of the day stands to the last.", STYLES.body, to)];
  }
  return layout.turnovers.map((turnover, i) => {
    if (i > 0) to.flow.gap(7);
    const room = venue.rooms.find((r) => r.id === turnover.room)?.name;
    const title = `${SCENE_NAMES[turnover.from]} to ${SCENE_NAMES[turnover.to].toLowerCase()}${room ? `, ${room}` : ""}`;
    const head = heading(title, STYLES.part, { ...to, tag: "H3", keep: 18 });
    to.flow.gap(1);
    const minutes = Math.ceil(turnover.minutes);
    const says = paragraph(
      `${capital(counted(minutes, "minute", "minutes"))} with a crew of ${turnover.crew}, by the venue's handling rates; ${counted(turnover.moves.length, "move", "moves")}.`,
      STYLES.body, to,
    );
    to.flow.gap(2);
    const timed = turnover.moves.some((m) => m.minutes !== undefined);
    const columns = [{ title: "Step", width: 11 }, { title: "What" }, { title: timed ? "Minutes of work" : "", width: 27, align: "end" as const }];
    const rows = rowsOf(turnover, told);
    const shown = timed ? { columns, rows } : { columns: columns.slice(0, 2), rows: rows.map((r) => ({ ...r, cells: r.cells.slice(0, 2) })) };
    return element("Sect", rows.length > 0 ? [head, says, table(shown, to)] : [head, says]);
  });
}
