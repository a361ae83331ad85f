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

function nameOf(id: string, turnover: Turnover, { layout, venue }: Told): string {
  const scenes = layout.scenes.filter((s) => s.id === turnover.from || s.id === turnover.to);
  const item: Item | undefined = scenes.flatMap((s) => s.items).find((i) => i.id === id);
  if (!item) return id;
  const from = item.from;
  const stock = "stock" in from ? venue.stock.find((s) => s.id === from.stock)?.name : undefined;
  return stock ?? (plain(item.label) || item.kind.replace(/-/g, " "));
}

function placeName(to: string, { venue }: Told): string {
  const room = venue.rooms.find((r) => r.id === to)?.name;
  return room ?? (to === "store" || to === venue.store ? "the store" : to.replace(/-/g, " "));
}

/** Moves of one sort, one thing and one goal are one step; the order of their first move stays. */
export function stepsOf(turnover: Turnover, told: Told): readonly Step[] {
  const steps = new Map<string, Step>();
  for (const move of turnover.moves) {
    const what = nameOf(move.item, turnover, told);
    const to = placeName(move.to, told);
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
      { text: `${step.act ? ACTS[step.act] : "Move"}: ${step.count > 1 ? `${step.count} × ` : ""}${step.what}`, under: `to ${step.to}` },
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
