import type { Brief } from "@/lib/brief";
import type { StepId } from "@/lib/brief/draft";
import type { ArrangeResult, Capacity, Item, Layout, Quote, SceneId } from "@/lib/layout";
import { ruleValues } from "@/lib/rules";
import type { Venue } from "@/lib/venue";
import { capital, inWords, sayLength } from "../ui/say";
import { bestOf, seatsOf, type StyleSeats } from "./questions/seats";

export type EffectInput = {
  readonly step: StepId;
  readonly venue: Venue;
  readonly rooms: Venue["rooms"];
  readonly capacity: Capacity | null;
  readonly result: ArrangeResult | null;
  readonly guests: number;
  readonly tables: string;
  readonly drape: string;
};
export type Effect = {
  /** The answer, as a sentence with its figures. */
  readonly sentence: string;
  readonly seats: StyleSeats | null;
  /** The part of the day whose plan shows it, and the layout it is taken from. */
  readonly scene: SceneId | null;
  readonly layout: Layout | null;
};

const PHRASE: Readonly<Record<string, string>> = { rounds: "Round tables alone", long: "Long tables alone", mixed: "Round and long tables together" };
const isAre = (n: number, one: string, many: string): string => (n === 1 ? one : many);
const roomName = (venue: Venue, id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;

const STYLES = ["rounds", "long", "mixed"] as const;

function mealSeats(i: EffectInput): { readonly chosen: StyleSeats | null; readonly best: StyleSeats | null; readonly style: string } {
  const drapes = i.drape !== "no";
  const all = STYLES.map((style) => ({ style, seats: seatsOf(i.capacity, style, i.rooms, drapes) }));
  const best = bestOf(all.map((s) => s.seats));
  const own = all.find((s) => s.style === i.tables)?.seats;
  return { chosen: own ?? best, best, style: own ? i.tables : (all.find((s) => s.seats === best)?.style ?? "mixed") };
}

/** What the tables seat against the guests. It counts tables by themselves: whatever else stands in the room may take places. */
function mealSentence(i: EffectInput): string {
  const { chosen, style } = mealSeats(i);
  if (!chosen) return "How many the rooms of your package seat is being counted.";
  const phrase = PHRASE[style] ?? "Tables";
  const where = roomName(i.venue, chosen.room);
  if (i.guests === 0) return `${phrase} seat ${chosen.comfort} in comfort in the ${where}, ${chosen.most} at the most.`;
  const laid = i.result?.status === "arranged" ? i.result.layouts[0]?.why[0] : undefined;
  if (laid && i.guests > chosen.comfort) return `As the ${where} stands, ${phrase.charAt(0).toLowerCase()}${phrase.slice(1)} seat ${chosen.comfort} of your ${i.guests} in comfort, ${chosen.most} at the most. Laid out for you: ${laid.charAt(0).toLowerCase()}${laid.slice(1)}`;
  if (i.guests <= chosen.comfort) return `${phrase} seat all ${i.guests} of you in comfort in the ${where}${chosen.comfort > i.guests ? `; there is room for ${chosen.comfort - i.guests} more` : ", and nobody more"}.`;
  const cure = STYLES.map((s) => ({ s, seats: seatsOf(i.capacity, s, i.rooms, true) })).find((o) => o.s !== style && o.seats && o.seats.comfort >= i.guests);
  const then = cure ? ` ${PHRASE[cure.s] ?? "Others"} seat everyone in comfort.` : "";
  if (i.guests <= chosen.most) return `${phrase} seat all ${i.guests} of you in the ${where}, closer than comfort: ${chosen.comfort} would sit at ease.${then}`;
  return `${phrase} seat ${chosen.most} of your ${i.guests} at the most.${then}`;
}

const itemsOf = (layout: Layout, match: (item: Item) => boolean): readonly { readonly item: Item; readonly scene: SceneId }[] =>
  layout.scenes.flatMap((s) => s.items.filter(match).map((item) => ({ item, scene: s.id })));

function musicSentence(layout: Layout, venue: Venue): string {
  const floor = itemsOf(layout, (x) => x.kind === "dance-floor").at(-1)?.item;
  const player = itemsOf(layout, (x) => x.kind === "dj" || x.kind === "band").at(-1)?.item;
  const size = floor && "width" in floor.shape ? `${sayLength(floor.shape.width, venue.lengths)} by ${sayLength(floor.shape.depth, venue.lengths)}` : null;
  const parts = [
    size && floor ? `The dance floor is ${size}, in the ${roomName(venue, floor.room)}` : "No dance floor is drawn yet",
    player ? `the ${player.kind === "dj" ? "DJ stands" : "band plays"} in the ${roomName(venue, player.room)}` : null,
  ].filter(Boolean);
  return `${parts.join("; ")}.`;
}

function placedSentence(layout: Layout, venue: Venue, what: { readonly roles: readonly string[]; readonly one: string; readonly many: string }): string {
  const found = itemsOf(layout, (x) => what.roles.includes(x.role ?? "") || what.roles.includes(x.kind) || (x.also ?? []).some((a) => what.roles.includes(a)));
  const rooms = [...new Set(found.map((f) => f.item.room))].map((id) => roomName(venue, id));
  const names = new Set(found.flatMap((f) => [f.item.role ?? f.item.kind, ...(f.item.also ?? [])]).filter((r) => what.roles.includes(r)));
  if (names.size === 0) return `${what.one.replace(/^a /, "No ")} is drawn yet.`;
  return `${capital(inWords(names.size))} ${isAre(names.size, "of them has its place", "of them have their places")}, in the ${new Intl.ListFormat(venue.locale).format(rooms)}.`;
}

const LOOK: Readonly<Record<StepId, readonly SceneId[]>> = {
  guests: ["meal", "drinks"], ceremony: ["ceremony", "meal"], meal: ["meal", "drinks"], music: ["dancing", "meal"], displays: ["meal", "drinks", "ceremony"], extras: ["meal", "dancing", "drinks"],
};

/** What the answers so far do: one sentence, the measure of places, and the plan that shows it. */
export function effectOf(i: EffectInput): Effect {
  const layout = i.result?.layouts[0] ?? null;
  const scene = layout ? (LOOK[i.step].find((s) => layout.scenes.some((x) => x.id === s)) ?? layout.scenes[0]?.id ?? null) : null;
  const rows = seatsOf(i.capacity, "rows", i.rooms);
  const meal = mealSeats(i).chosen;
  const stuck = i.result && i.result.status !== "arranged" ? (i.result.reasons[0]?.text ?? "No layout was found for the answers so far.") : null;
  const base = { scene, layout, seats: i.step === "ceremony" ? rows : i.step === "guests" || i.step === "meal" ? meal : null };
  switch (i.step) {
    case "guests":
    case "meal": return { ...base, sentence: mealSentence(i) };
    case "ceremony": {
      if (!rows) return { ...base, sentence: stuck ?? "How many the rows seat is being counted." };
      const where = roomName(i.venue, rows.room);
      return { ...base, sentence: i.guests === 0 ? `Rows in the ${where} seat ${rows.comfort} in comfort, ${rows.most} at the most.` : i.guests <= rows.comfort ? `Rows in the ${where} seat all ${i.guests} of you in comfort.` : i.guests <= rows.most ? `Rows in the ${where} seat all ${i.guests} of you, closer than comfort.` : `Rows in the ${where} seat ${rows.most} of your ${i.guests} at the most.` };
    }
    case "music": return { ...base, sentence: stuck ?? (layout ? musicSentence(layout, i.venue) : "Once we know how many you are, the dance floor is drawn here.") };
    case "displays": return { ...base, sentence: stuck ?? (layout ? placedSentence(layout, i.venue, { roles: ["welcome", "cards", "guest-book", "photographs", "cake", "seating-plan", "favours"], one: "a display", many: "displays" }) : "Once we know how many you are, each of them is drawn in its place here.") };
    case "extras": return { ...base, sentence: stuck ?? (layout ? placedSentence(layout, i.venue, { roles: ["photo-booth", "lounge", "cocktail-table", "appetisers", "children", "bar"], one: "an extra", many: "extras" }) : "Once we know how many you are, each of them is drawn in its place here.") };
  }
}

type GapWords = { readonly comfort: string; readonly most: string };
/** How far apart tables or rows stand at each of the two counts. */
function gapWords(venue: Venue, rows: boolean): GapWords {
  const v = ruleValues(venue);
  const say = (mm: number): string => sayLength(mm, venue.lengths);
  return rows
    ? { comfort: `${say(v.comfort.rowPitch)} from row to row: one can pass before those who sit.`, most: `${say(v.most.rowPitch)} from row to row: those who sit must turn their knees.` }
    : { comfort: `${say(v.comfort.tableGap)} between tables: one can pass behind a seated guest.`, most: `${say(v.most.tableGap)} between tables: chairs come near when both are pushed back.` };
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

export function effectView(effect: Effect, { step, venue, guests }: Pick<EffectInput, "step" | "venue" | "guests">): EffectView {
  const rows = step === "ceremony";
  const scene = effect.layout?.scenes.find((s) => s.id === effect.scene)?.title ?? null;
  const quote = effect.layout?.quote;
  return { sentence: effect.sentence, seats: effect.seats, guests, rows, gaps: gapWords(venue, rows), scene, fees: quote ? { quote, locale: venue.locale, tax: { name: venue.tax.name, included: venue.tax.included } } : null };
}
