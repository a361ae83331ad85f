import type { Item, Layout, Move, Turnover } from "../layout";
import type { Venue } from "../venue";
import { paperVoice, type PaperPhrase, type PaperVoice } from "../words/papers";
import { heading, paragraph, type Setting } from "./blocks";
import { element, type Content, type Element } from "./document";
import { table, tableHeight, type ColumnSpec, type RowSpec } from "./table";
import { STYLES } from "./type";
import { capital, SCENE_NAMES } from "./words";

/** Without a voice the steps are told in British English, as the crew's sheets are. */
type Told = { readonly layout: Layout; readonly venue: Venue; readonly say?: PaperVoice };
const voice = ({ say }: Told): PaperVoice => say ?? paperVoice("en-GB");
type Step = { readonly act: Move["act"]; readonly what: string; readonly to: string; readonly count: number; readonly minutes: number | undefined; readonly begins: number | undefined; readonly ends: number | undefined };

const ACTS: Record<NonNullable<Move["act"]>, PaperPhrase> = { out: "Bring out {thing}", away: "Put away {thing}", shift: "Shift {thing}", lay: "Lay {thing}" };
/** What the crew do in a step, and with what. */
const deed = (s: Step, told: Told): string => voice(told)(s.act ? ACTS[s.act] : "Move {thing}", { thing: thingOf(s) });

/** "Table 7" and "Table 8" are both a table: what a crew member calls the thing, without its number. */
const plain = (label: string): string => label.replace(/\s*\d+$/, "").trim();

const byId = new WeakMap<Layout, Map<string, ReadonlyMap<string, Item>>>();
/** The pieces of a part of the day by name: a turnover has hundreds of moves, each asks for two. */
function itemsOf(layout: Layout, scene: string): ReadonlyMap<string, Item> {
  const scenes = byId.get(layout) ?? new Map<string, ReadonlyMap<string, Item>>();
  const known = scenes.get(scene) ?? new Map(layout.scenes.find((s) => s.id === scene)?.items.map((i) => [i.id, i]));
  byId.set(layout, scenes.set(scene, known));
  return known;
}

const itemOf = (id: string, turnover: Turnover, layout: Layout): Item | undefined => itemsOf(layout, turnover.to).get(id) ?? itemsOf(layout, turnover.from).get(id);

function nameOf(id: string, turnover: Turnover, { layout, venue }: Told): string {
  const item = itemOf(id, turnover, layout);
  if (!item) return id;
  const from = item.from;
  const stock = "stock" in from ? venue.stock.find((s) => s.id === from.stock)?.name : undefined;
  return stock ?? (plain(item.label) || item.kind.replace(/-/g, " "));
}

/** Where a move ends: a room, the door to the store, or the spot that a piece of the next part has in its room. */
function placeName(move: Move, turnover: Turnover, told: Told): string {
  const { layout, venue } = told, say = voice(told);
  const nameOfRoom = (id: string | undefined): string | undefined => venue.rooms.find((r) => r.id === id)?.name;
  const target = itemOf(move.to, turnover, layout);
  if (target) return say("in {room}", { room: nameOfRoom(target.room) ?? target.room });
  const room = nameOfRoom(move.to);
  if (room) return say(move.act === "away" ? "beside {room}" : "to {room}", { room });
  const door = venue.rooms.flatMap((r) => r.doors).some((d) => d.id === move.to);
  const plainly = move.to.replace(/-/g, " ");
  return door ? say("by the door “{door}”", { door: plainly }) : say("to {place}", { place: plainly });
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
    const begins = move.begins === undefined ? known?.begins : Math.min(known?.begins ?? Infinity, move.begins);
    const ends = move.ends === undefined ? known?.ends : Math.max(known?.ends ?? 0, move.ends);
    steps.set(key, { act: move.act, what, to, count: (known?.count ?? 0) + 1, minutes, begins, ends });
  }
  return [...steps.values()];
}

/** A step with its place in the turnover's minutes. */
export type TimedStep = { readonly act: Move["act"]; readonly what: string; readonly where: string; readonly from: number; readonly to: number };

const thingOf = (s: Step): string => `${s.count > 1 ? `${s.count} × ` : ""}${s.what.charAt(0).toLowerCase()}${s.what.slice(1)}`;

/** Pieces that are stacked first and set again later, most of them chairs. */
function asideStep({ aside, from, moves }: Turnover, told: Told): readonly TimedStep[] {
  if (!aside) return [];
  const old = itemsOf(told.layout, from), say = voice(told);
  const chairs = moves.filter((m) => m.act === "shift").some((m) => { const i = old.get(m.item); return i !== undefined && (i.kind === "chair" || i.seats.length > 0); });
  return [{ act: undefined, what: say(chairs ? "Stack {n} chairs" : "Put aside {n} pieces", { n: aside.pieces }), where: say("out of the way, to be set again"), from: aside.begins, to: aside.ends }];
}

/**
 * The steps of a turnover when the crew do them, minutes from its start, by the layout's own timetable: first the guests' leaving.
 * Null where the layout does not tell it.
 */
export function timetableOf(turnover: Turnover, told: Told): readonly TimedStep[] | null {
  const steps = stepsOf(turnover, told);
  if (steps.length === 0) return null;
  const timed = steps.flatMap((s): readonly TimedStep[] => (s.begins === undefined || s.ends === undefined ? []
    : [{ act: s.act, what: deed(s, told), where: s.to, from: s.begins, to: s.ends }]));
  if (timed.length < steps.length) return null;
  const { leaving = 0 } = turnover;
  return [
    ...(leaving > 0 ? [{ act: undefined, what: voice(told)("Guests leave"), where: voice(told)("until the last is out of the room"), from: 0, to: leaving }] : []),
    ...[...asideStep(turnover, told), ...timed].sort((a, b) => a.from - b.from || a.to - b.to),
  ];
}

/** "from 12 to 16", whole minutes; a step shorter than one still shows one. */
export function spanOf({ from, to }: Pick<TimedStep, "from" | "to">): readonly [number, number] {
  const begin = Math.floor(from + 0.05);
  return [begin, Math.max(begin + 1, Math.ceil(to - 0.05))];
}

const span = ([a, b]: readonly [number, number], say: PaperVoice): string => say("{a} to {b}", { a, b });

type Listed = { readonly head: string; readonly rows: readonly RowSpec[] };

/** The steps with the minutes between which each is done; where the layout has no timetable, with the work that each takes. */
function listed(turnover: Turnover, told: Told): Listed {
  const timed = timetableOf(turnover, told), say = voice(told);
  // The heading names the room: only what goes elsewhere is told where.
  const room = told.venue.rooms.find((r) => r.id === turnover.room)?.name ?? "";
  const here = [say("to {room}", { room }), say("in {room}", { room })];
  const row = (i: number, cells: { readonly what: string; readonly under: string; readonly minutes: string }): RowSpec => ({
    cells: [{ text: String(i + 1), style: STYLES.strong }, { text: cells.what, ...(cells.under === here[0] || cells.under === here[1] ? {} : { under: cells.under }) }, { text: cells.minutes }],
  });
  if (timed) return { head: say("Minutes"), rows: timed.map((s, i) => row(i, { what: s.what, under: s.where, minutes: span(spanOf(s), say) })) };
  const steps = stepsOf(turnover, told);
  return {
    head: steps.some((s) => s.minutes !== undefined) ? say("Minutes of work") : "",
    rows: steps.map((s, i) => row(i, { what: deed(s, told), under: s.to, minutes: s.minutes === undefined ? "" : s.minutes < 1 ? say("under 1") : String(Math.ceil(s.minutes)) })),
  };
}

type Shown = { readonly columns: readonly ColumnSpec[]; readonly rows: readonly RowSpec[] };

function shownOf(turnover: Turnover, told: Told): Shown {
  const { head, rows } = listed(turnover, told), say = voice(told);
  const columns = [{ title: say("Step"), width: 11 }, { title: say("What") }, ...(head === "" ? [] : [{ title: head, width: 27, align: "end" as const }])];
  return { columns, rows: rows.map((r) => ({ ...r, cells: r.cells.slice(0, columns.length) })) };
}

/** What must follow the heading of a turnover: all of a short table; of a long one its beginning, the rest may go on in the next column. */
function keepOf(shown: Shown, to: Setting): number {
  const high = tableHeight(shown, to) + 14;
  return high < 110 ? high : 40;
}

/** How much of the section its heading keeps with it, mm. */
export function turnoverKeep(told: Told, to: Setting): number {
  const [first] = told.layout.turnovers;
  return first ? keepOf(shownOf(first, told), to) + 12 : 20;
}

/** Each turnover with its crew, its minutes and its steps. */
export function turnoverSection(told: Told, to: Setting & { readonly artifacts: Content[] }): readonly Element[] {
  const { layout, venue } = told, say = voice(told);
  if (layout.turnovers.length === 0) {
    return [paragraph(say("No room is cleared and laid again: what stands at the first part of the day stands to the last."), STYLES.body, to)];
  }
  return layout.turnovers.map((turnover, i) => {
    if (i > 0) to.flow.gap(7);
    const room = venue.rooms.find((r) => r.id === turnover.room)?.name;
    const shown = shownOf(turnover, told);
    const between = capital(say("{from} to {to}", { from: say(SCENE_NAMES[turnover.from]).toLowerCase(), to: say(SCENE_NAMES[turnover.to]).toLowerCase() }));
    const title = room ? `${between}, ${room}` : between;
    const head = heading(title, STYLES.part, { ...to, tag: "H3", keep: keepOf(shown, to) });
    to.flow.gap(1);
    const minutes = Math.ceil(turnover.minutes);
    const says = paragraph(
      say("{n} minutes with a crew of {crew}, by the venue's handling rates; {moves}.", { n: minutes, crew: turnover.crew, moves: say("{n} moves", { n: turnover.moves.length }) }),
      STYLES.body, to,
    );
    to.flow.gap(2);
    return element("Sect", shown.rows.length > 0 ? [head, says, table(shown, to)] : [head, says]);
  });
}
