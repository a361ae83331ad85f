import { Strip, scaleOf } from "../../plan/band";
import { Choices, type Option } from "../../ui/choices";
import { oneOf } from "../values";
import type { Say } from "@/lib/words/pages/say";
import { orAny, spoken, spokenAll, UNSURE, type Asked, type Asking, type Choice } from "./ask";
import { bestOf, seatsOf, type StyleSeats } from "./seats";

export const TOP: readonly Choice[] = [
  { value: "pair", name: "A table for two", why: "Seen by as many tables as can be." },
  { value: "one-sided", name: "A top table, one side", why: "You and those beside you face the room." },
  { value: "round", name: "At one of the tables", why: "Among your guests." },
  { value: "none", name: "No table of our own" },
  UNSURE,
];
export const SERVICE: readonly Choice[] = [
  { value: "plated", name: "Brought to each place" },
  { value: "buffet", name: "Buffet", why: "Guests go to it table by table." },
  { value: "sharing", name: "Sharing boards", why: "Set down along the middle of each table." },
  { value: "stations", name: "Several stands", why: "Guests wander from one to the next." },
  { value: "none", name: "No sit-down meal" },
  UNSURE,
];
export const CLOSENESS: readonly Choice[] = [
  { value: "comfort", name: "In comfort", why: "One can pass behind a seated guest." },
  { value: "most", name: "As many as fit", why: "Chairs touch when two are pushed back." },
  { ...UNSURE, why: "We keep to comfort as far as it goes." },
];
export const FORMS = [
  { value: "grid", name: "Tables apart" }, { value: "spine", name: "A spine down the middle" }, { value: "diagonal", name: "Tables on the slant" }, { value: "u", name: "Horseshoe", style: "u" },
  { value: "e", name: "Comb of three arms", style: "e" }, { value: "t", name: "T", style: "t" }, { value: "hollow-square", name: "Hollow square", style: "hollow-square" },
] as const;

export const TABLES: readonly Choice[] = [
  { value: "rounds", name: "Round tables only" }, { value: "mixed", name: "Round and long tables together" }, { value: "long", name: "Long tables only" },
  { value: "any", name: "Whichever suits the room", why: "You see different layouts and choose between them." },
  { ...UNSURE, why: "We draw what suits the room best; you can change it when you see your layout." },
];

function whyOf(seats: StyleSeats | null, guests: number, say: Say): string | undefined {
  if (!seats) return undefined;
  if (guests === 0) return say("They seat {comfort} in comfort.", { comfort: seats.comfort });
  if (guests <= seats.comfort) return say("All {guests} of you in comfort.", { guests });
  if (guests <= seats.most) return say("All {guests} of you, closer than comfort.", { guests });
  return say("At the most {most} of your {guests}; {n} would have no place.", { most: seats.most, guests, n: guests - seats.most });
}

/** What they sit at, with the measure of places beside each answer. */
export function askMeal({ values, errors, venue, rooms, capacity, guests, turnoverInPackage, say }: Asking): Asked {
  const drapes = oneOf(values, "drape") !== "no";
  const of = { rounds: seatsOf(capacity, "rounds", rooms, drapes), long: seatsOf(capacity, "long", rooms, drapes), mixed: seatsOf(capacity, "mixed", rooms, drapes) };
  const all = bestOf(Object.values(of));
  const scale = scaleOf(Object.values(of).flatMap((s) => (s ? [s] : [])), guests);
  const strip = (id: string, s: StyleSeats | null) => (s ? <Strip id={id} seats={s} guests={guests} scale={scale} say={say} /> : null);
  const tables = TABLES.map((o): Option => {
    if (o.value !== "rounds" && o.value !== "mixed" && o.value !== "long") return spoken(o, say);
    return { ...spoken(o, say), why: whyOf(of[o.value], guests, say), more: strip(o.value, of[o.value]) };
  });
  const counted = FORMS.map((f) => ({ ...f, seats: "style" in f ? seatsOf(capacity, f.style, rooms, drapes) : all }));
  const wanting = counted.filter((f) => "style" in f && guests > 0 && f.seats !== null && f.seats.most < guests);
  const forms: readonly Option[] = [
    ...counted.filter((f) => !wanting.includes(f)).map((f) => ({ value: f.value, name: say(f.name), why: "style" in f && f.seats ? say("Seats {comfort} in comfort, {most} at the most.", { comfort: f.seats.comfort, most: f.seats.most }) : undefined })),
    ...spokenAll([{ value: "any", name: "Whichever suits" }], say),
  ];
  const dining = rooms.filter((r) => r.uses.includes("dining"));
  return {
    first: (
      <Choices
        name="tables" legend={say("What would you like to sit at?")} options={tables} chosen={[oneOf(values, "tables")]} errors={errors}
        hint={guests > 0 ? say("The line across the bars is the {guests} of you, the two of you among them.", { guests }) : say("Once we know how many you are, a line across the bars shows it.")}
      />
    ),
    rest: (
      <>
        <Choices name="top" legend={say("Where do the two of you sit?")} options={spokenAll(TOP, say)} chosen={[oneOf(values, "top")]} errors={errors} two />
        <Choices name="service" legend={say("How is the meal served?")} options={spokenAll(SERVICE, say)} chosen={[oneOf(values, "service")]} errors={errors} two />
        <Choices name="perTable" legend={say("How close may it be?")} options={spokenAll(CLOSENESS, say)} chosen={[oneOf(values, "perTable")]} errors={errors} />
        <Choices
          name="form" legend={say("Has it a shape of its own?")} options={forms} chosen={[orAny(oneOf(values, "form"))]} errors={errors} two
          notOffered={wanting.length > 0 && say("Not offered for {guests}, as the rooms of your package seat too few that way: {shapes}.", { guests, shapes: wanting.map((f) => say("{shape} ({most} at the most)", { shape: say(f.name), most: f.seats?.most ?? 0 })).join(", ") })}
        />
        {dining.length > 1 && (
          <Choices name="room" legend={say("In which room?")} two errors={errors} chosen={[orAny(oneOf(values, "room"))]}
            options={[...dining.map((r) => ({ value: r.id, name: r.name })), ...spokenAll([{ value: "any", name: "Whichever suits best" }], say)]} />
        )}
        {turnoverInPackage
          ? <Choices name="turnover" legend={say("May the room be turned over after the ceremony?")} two errors={errors} chosen={[oneOf(values, "turnover")]}
              hint={say("The crew clear and lay it again while you are at drinks elsewhere.")}
              options={spokenAll([{ value: "yes", name: "Yes" }, { value: "no", name: "No" }, UNSURE], say)} />
          : <p className="not-offered">{say("Turning the room over between ceremony and meal is not in your package, so both must stand ready from the start.")}</p>}
        {venue.drapes.length > 0 && (
          <Choices name="drape" legend={say("May we draw a drape to borrow floor from the next room?")} two errors={errors} chosen={[oneOf(values, "drape")]}
            options={spokenAll([{ value: "any", name: "If it helps" }, { value: "yes", name: "Yes" }, { value: "no", name: "No" }, UNSURE], say)} />
        )}
      </>
    ),
  };
}
