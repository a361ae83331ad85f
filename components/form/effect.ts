import type { Brief, Display, Extra } from "@/lib/brief";
import type { StepId } from "@/lib/brief/draft";
import type { ArrangeResult, Capacity, Item, Layout, Quote, SceneId } from "@/lib/layout";
import { ruleValues } from "@/lib/rules";
import type { Venue } from "@/lib/venue";
import type { Phrase, Say } from "@/lib/words/pages/say";
import { sayLength } from "../ui/say";
import type { Choice } from "./questions/ask";
import { bestOf, seatsOf, type StyleSeats } from "./questions/seats";
import { DISPLAY_OPTIONS, EXTRA_OPTIONS } from "./questions/shown";

export type EffectInput = {
  readonly step: StepId;
  readonly venue: Venue;
  readonly rooms: Venue["rooms"];
  readonly capacity: Capacity | null;
  readonly result: ArrangeResult | null;
  readonly guests: number;
  /** What is to be put on show, and what else takes floor; undefined while there is no brief. */
  readonly brief: Pick<Brief, "displays" | "extras"> | undefined;
  readonly tables: string;
  readonly drape: string;
  readonly say: Say;
};
export type Effect = {
  /** The answer, as a sentence with its figures. */
  readonly sentence: string;
  readonly seats: StyleSeats | null;
  /** The part of the day whose plan shows it, and the layout it is taken from. */
  readonly scene: SceneId | null;
  readonly layout: Layout | null;
};

const roomName = (venue: Venue, id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;

const STYLES = ["rounds", "long", "mixed"] as const;
const PHRASE = { rounds: "Round tables alone", long: "Long tables alone", mixed: "Round and long tables together" } as const;

function mealSeats(i: EffectInput): { readonly chosen: StyleSeats | null; readonly style: (typeof STYLES)[number] } {
  const drapes = i.drape !== "no";
  const all = STYLES.map((style) => ({ style, seats: seatsOf(i.capacity, style, i.rooms, drapes) }));
  const best = bestOf(all.map((s) => s.seats));
  const own = all.find((s) => s.style === i.tables && s.seats);
  return { chosen: own?.seats ?? best, style: own?.style ?? all.find((s) => s.seats === best)?.style ?? "mixed" };
}

/** What the tables seat against the guests. It counts tables by themselves: whatever else stands in the room may take places. */
function mealSentence(i: EffectInput): string {
  const { say } = i;
  const { chosen, style } = mealSeats(i);
  if (!chosen) return say("How many the rooms of your package seat is being counted.");
  const tables = say(PHRASE[style]);
  const facts = { tables, room: roomName(i.venue, chosen.room), guests: i.guests, comfort: chosen.comfort, most: chosen.most };
  if (i.guests === 0) return say("{tables} seat {comfort} in comfort in the {room}, {most} at the most.", facts);
  const laid = i.result?.status === "arranged" ? seatedIn(i.result.layouts[0]) : undefined;
  if (laid && i.guests > chosen.comfort) {
    return say("As the {room} stands, {tables} seat {comfort} of your {guests} in comfort, {most} at the most. Laid out for you: {laid}", { ...facts, tables: lower(tables), laid: lower(laid) });
  }
  if (i.guests < chosen.comfort) return say("{tables} seat all {guests} of you in comfort in the {room}; there is room for {n} more.", { ...facts, n: chosen.comfort - i.guests });
  if (i.guests === chosen.comfort) return say("{tables} seat all {guests} of you in comfort in the {room}, and nobody more.", facts);
  const cure = STYLES.map((s) => ({ s, seats: seatsOf(i.capacity, s, i.rooms, true) })).find((o) => o.s !== style && o.seats && o.seats.comfort >= i.guests);
  const then = cure ? ` ${say("{tables} seat everyone in comfort.", { tables: say(PHRASE[cure.s]) })}` : "";
  if (i.guests <= chosen.most) return `${say("{tables} seat all {guests} of you in the {room}, closer than comfort: {comfort} would sit at ease.", facts)}${then}`;
  return `${say("{tables} seat {most} of your {guests} at the most.", facts)}${then}`;
}

/** Of the reasons for a layout the one that tells how the guests sit; it comes after what sets it apart from others. */
function seatedIn(layout: Layout | undefined): string | undefined {
  const at = layout?.told?.why.findIndex((one) => one.code === "all-in-comfort" || one.code === "all-placed") ?? -1;
  return at < 0 ? undefined : layout?.why[at];
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const itemsOf = (layout: Layout, match: (item: Item) => boolean): readonly { readonly item: Item; readonly scene: SceneId }[] =>
  layout.scenes.flatMap((s) => s.items.filter(match).map((item) => ({ item, scene: s.id })));

function musicSentence(layout: Layout, venue: Venue, say: Say): string {
  const floor = itemsOf(layout, (x) => x.kind === "dance-floor").at(-1)?.item;
  const player = itemsOf(layout, (x) => x.kind === "dj" || x.kind === "band").at(-1)?.item;
  const size = floor && "width" in floor.shape
    ? say("The dance floor is {width} by {depth}, in the {room}.", { width: sayLength(floor.shape.width, venue), depth: sayLength(floor.shape.depth, venue), room: roomName(venue, floor.room) })
    : say("No dance floor is drawn yet.");
  if (!player) return size;
  const room = roomName(venue, player.room);
  return `${size} ${player.kind === "dj" ? say("The DJ stands in the {room}.", { room }) : say("The band plays in the {room}.", { room })}`;
}

/** What a piece's role is called where it is not the word of the brief. */
const ROLES: Readonly<Partial<Record<Display | Extra, string>>> = { "cocktail-tables": "cocktail-table", "children-corner": "children", "second-bar": "bar" };

/** Where that which was asked for is drawn; what stands in the house anyway is not told. */
function placedSentence(layout: Layout, { venue, say }: Pick<EffectInput, "venue" | "say">, what: { readonly asked: readonly (Choice & { readonly value: Display | Extra })[]; readonly none: Phrase }): string {
  const placed = what.asked.map((one) => {
    const role = ROLES[one.value] ?? one.value;
    return { name: say(one.name), found: itemsOf(layout, (x) => x.role === role || x.kind === role || (x.also ?? []).includes(role)) };
  }).filter(({ found }) => found.length > 0);
  if (placed.length === 0) return say(what.none);
  const rooms = [...new Set(placed.flatMap(({ found }) => found.map((f) => f.item.room)))].map((id) => roomName(venue, id));
  const things = placed.map(({ name }, i) => (i === 0 ? name : lower(name))).join(", ");
  return say("{things}: drawn in the {rooms}.", { things, rooms: new Intl.ListFormat(venue.locale).format(rooms) });
}

const eachLater = ({ guests, say }: EffectInput): string =>
  (guests > 0 ? say("Each of them is drawn in its place here as soon as your answers are laid out.") : say("Once we know how many you are, each of them is drawn in its place here."));

const LOOK: Readonly<Record<StepId, readonly SceneId[]>> = {
  guests: ["meal", "drinks"], ceremony: ["ceremony", "meal"], meal: ["meal", "drinks"], music: ["dancing", "meal"], displays: ["meal", "drinks", "ceremony"], extras: ["meal", "dancing", "drinks"],
};

/** What the answers so far do: one sentence, the measure of places, and the plan that shows it. */
export function effectOf(i: EffectInput): Effect {
  const { say } = i;
  const layout = i.result?.layouts[0] ?? null;
  const scene = layout ? (LOOK[i.step].find((s) => layout.scenes.some((x) => x.id === s)) ?? layout.scenes[0]?.id ?? null) : null;
  const rows = seatsOf(i.capacity, "rows", i.rooms);
  const meal = mealSeats(i).chosen;
  const stuck = i.result && i.result.status !== "arranged" ? (i.result.reasons[0]?.text ?? say("No layout was found for the answers so far.")) : null;
  const base = { scene, layout, seats: i.step === "ceremony" ? rows : i.step === "guests" || i.step === "meal" ? meal : null };
  switch (i.step) {
    case "guests":
    case "meal": return { ...base, sentence: mealSentence(i) };
    case "ceremony": {
      if (!rows) return { ...base, sentence: stuck ?? say("How many the rows seat is being counted.") };
      const where = roomName(i.venue, rows.room);
      const facts = { room: where, comfort: rows.comfort, most: rows.most, guests: i.guests };
      if (i.guests === 0 && rows.comfort === rows.most) return { ...base, sentence: say("Rows in the {room} seat {comfort} in comfort, and nobody more.", facts) };
      if (i.guests === 0) return { ...base, sentence: say("Rows in the {room} seat {comfort} in comfort, {most} at the most.", facts) };
      if (i.guests <= rows.comfort) return { ...base, sentence: say("Rows in the {room} seat all {guests} of you in comfort.", facts) };
      return { ...base, sentence: i.guests <= rows.most ? say("Rows in the {room} seat all {guests} of you, closer than comfort.", facts) : say("Rows in the {room} seat {most} of your {guests} at the most.", facts) };
    }
    case "music": return { ...base, sentence: stuck ?? (layout ? musicSentence(layout, i.venue, say) : i.guests > 0 ? say("The dance floor is drawn here as soon as your answers are laid out.") : say("Once we know how many you are, the dance floor is drawn here.")) };
    case "displays": return { ...base, sentence: stuck ?? (layout ? placedSentence(layout, i, { asked: DISPLAY_OPTIONS.filter((o) => i.brief?.displays.includes(o.value)), none: "No display is drawn yet." }) : eachLater(i)) };
    case "extras": return { ...base, sentence: stuck ?? (layout ? placedSentence(layout, i, { asked: EXTRA_OPTIONS.filter((o) => i.brief?.extras.includes(o.value)), none: "No extra is drawn yet." }) : eachLater(i)) };
  }
}

type GapWords = { readonly comfort: string; readonly most: string };
/** How far apart tables or rows stand at each of the two counts. */
function gapWords(venue: Venue, rows: boolean, say: Say): GapWords {
  const v = ruleValues(venue);
  const gap = (mm: number): { readonly gap: string } => ({ gap: sayLength(mm, venue) });
  return rows
    ? { comfort: say("{gap} from row to row: one can pass before those who sit.", gap(v.comfort.rowPitch)), most: say("{gap} from row to row: those who sit must turn their knees.", gap(v.most.rowPitch)) }
    : { comfort: say("{gap} between tables: one can pass behind a seated guest.", gap(v.comfort.tableGap)), most: say("{gap} between tables: chairs come near when both are pushed back.", gap(v.most.tableGap)) };
}

/** The count that a step's places are measured against; 0 while it is not known. */
export function guestsAt(step: StepId, brief: Pick<Brief, "guests"> | undefined): number {
  if (!brief) return 0;
  const all = brief.guests.adults + brief.guests.children;
  if (step === "ceremony") return brief.guests.ceremony ?? all;
  return step === "music" ? (brief.guests.evening ?? all) : all;
}

/** What of an effect is shown beside the questions, as plain values. */
export type EffectView = {
  readonly sentence: string; readonly seats: StyleSeats | null; readonly guests: number; readonly rows: boolean; readonly gaps: GapWords;
  /** The part of the day that the plan shows. */
  readonly scene: string | null;
  /** What that layout costs beyond the package. */
  readonly fees: FeesShown | null;
};
export type FeesShown = { readonly quote: Quote; readonly locale: string; readonly tax: { readonly name: string; readonly included: boolean } };

export function effectView(effect: Effect, { step, venue, guests, say }: Pick<EffectInput, "step" | "venue" | "guests" | "say">): EffectView {
  const rows = step === "ceremony";
  const scene = effect.layout?.scenes.find((s) => s.id === effect.scene)?.title ?? null;
  const quote = effect.layout?.quote;
  return { sentence: effect.sentence, seats: effect.seats && { ...effect.seats, because: say.given(effect.seats.because) }, guests, rows, gaps: gapWords(venue, rows, say), scene, fees: quote ? { quote, locale: venue.locale, tax: { name: venue.tax.name, included: venue.tax.included } } : null };
}
