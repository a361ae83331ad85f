import { Strip, scaleOf } from "../../plan/band";
import { Choices, type Option } from "../../ui/choices";
import { oneOf } from "../values";
import { UNSURE, type Asked, type Asking } from "./ask";
import { bestOf, seatsOf, type StyleSeats } from "./seats";

export const TOP: readonly Option[] = [
  { value: "pair", name: "A table for two", why: "Seen by as many tables as can be." },
  { value: "one-sided", name: "A top table, one side", why: "You and those beside you face the room." },
  { value: "round", name: "At one of the tables", why: "Among your guests." },
  { value: "none", name: "No table of our own" },
  UNSURE,
];
export const SERVICE: readonly Option[] = [
  { value: "plated", name: "Brought to each place" },
  { value: "buffet", name: "Buffet", why: "Guests go to it table by table." },
  { value: "sharing", name: "Sharing boards", why: "Set down along the middle of each table." },
  { value: "stations", name: "Several stands", why: "Guests wander from one to the next." },
  { value: "none", name: "No sit-down meal" },
  UNSURE,
];
export const CLOSENESS: readonly Option[] = [
  { value: "comfort", name: "In comfort", why: "One can pass behind a seated guest." },
  { value: "most", name: "As many as fit", why: "Chairs touch when two are pushed back." },
  { ...UNSURE, why: "We keep to comfort as far as it goes." },
];
export const FORMS = [
  { value: "grid", name: "Tables apart" }, { value: "spine", name: "A spine down the middle" }, { value: "u", name: "Horseshoe", style: "u" },
  { value: "e", name: "Comb of three arms", style: "e" }, { value: "t", name: "T", style: "t" }, { value: "hollow-square", name: "Hollow square", style: "hollow-square" },
] as const;

export const TABLES: readonly Option[] = [
  { value: "rounds", name: "Round tables only" }, { value: "mixed", name: "Round and long tables together" }, { value: "long", name: "Long tables only" },
  { value: "any", name: "Whichever suits the room", why: "You see different layouts and choose between them." },
  { ...UNSURE, why: "We draw what suits the room best; you can change it when you see your layout." },
];

function whyOf(seats: StyleSeats | null, guests: number): string | undefined {
  if (!seats) return undefined;
  if (guests === 0) return `They seat ${seats.comfort} in comfort.`;
  if (guests <= seats.comfort) return `All ${guests} of you in comfort.`;
  if (guests <= seats.most) return `All ${guests} of you, closer than comfort.`;
  return `At the most ${seats.most} of your ${guests}; ${guests - seats.most} would have no place.`;
}

/** What they sit at, with the measure of places beside each answer. */
export function askMeal({ values, errors, venue, rooms, capacity, guests, turnoverInPackage }: Asking): Asked {
  const drapes = oneOf(values, "drape") !== "no";
  const of = { rounds: seatsOf(capacity, "rounds", rooms, drapes), long: seatsOf(capacity, "long", rooms, drapes), mixed: seatsOf(capacity, "mixed", rooms, drapes) };
  const all = bestOf(Object.values(of));
  const scale = scaleOf(Object.values(of).flatMap((s) => (s ? [s] : [])), guests);
  const strip = (id: string, s: StyleSeats | null) => (s ? <Strip id={id} seats={s} guests={guests} scale={scale} /> : null);
  const tables = TABLES.map((o): Option => {
    if (o.value !== "rounds" && o.value !== "mixed" && o.value !== "long") return o;
    return { ...o, why: whyOf(of[o.value], guests), more: strip(o.value, of[o.value]) };
  });
  const counted = FORMS.map((f) => ({ ...f, seats: "style" in f ? seatsOf(capacity, f.style, rooms, drapes) : all }));
  const wanting = counted.filter((f) => "style" in f && guests > 0 && f.seats !== null && f.seats.most < guests);
  const forms: readonly Option[] = [
    ...counted.filter((f) => !wanting.includes(f)).map((f) => ({ value: f.value, name: f.name, why: "style" in f && f.seats ? `Seats ${f.seats.comfort} in comfort, ${f.seats.most} at the most.` : undefined })),
    { value: "any", name: "Whichever suits" }, UNSURE,
  ];
  const dining = rooms.filter((r) => r.uses.includes("dining"));
  return {
    first: (
      <Choices
        name="tables" legend="What would you like to sit at?" options={tables} chosen={[oneOf(values, "tables")]} errors={errors}
        hint={guests > 0 ? `The line across the bars is the ${guests} of you, the two of you among them.` : "Once we know how many you are, a line across the bars shows it."}
      />
    ),
    rest: (
      <>
        <Choices name="top" legend="Where do the two of you sit?" options={TOP} chosen={[oneOf(values, "top")]} errors={errors} two />
        <Choices name="service" legend="How is the meal served?" options={SERVICE} chosen={[oneOf(values, "service")]} errors={errors} two />
        <Choices name="perTable" legend="How close may it be?" options={CLOSENESS} chosen={[oneOf(values, "perTable")]} errors={errors} />
        <Choices
          name="form" legend="Has it a shape of its own?" options={forms} chosen={[oneOf(values, "form")]} errors={errors} two
          notOffered={wanting.length > 0 && <>Not offered for {guests}, as the rooms of your package seat too few that way: {wanting.map((f) => `${f.name} (${f.seats?.most ?? 0} at the most)`).join(", ")}.</>}
        />
        {dining.length > 1 && (
          <Choices name="room" legend="In which room?" two errors={errors} chosen={[oneOf(values, "room")]}
            options={[...dining.map((r) => ({ value: r.id, name: r.name })), { value: "any", name: "Whichever suits best" }, UNSURE]} />
        )}
        {turnoverInPackage
          ? <Choices name="turnover" legend="May the room be turned over after the ceremony?" two errors={errors} chosen={[oneOf(values, "turnover")]}
              hint="The crew clear and lay it again while you are at drinks elsewhere."
              options={[{ value: "yes", name: "Yes" }, { value: "no", name: "No" }, UNSURE]} />
          : <p className="not-offered">Turning the room over between ceremony and meal is not in your package, so both must stand ready from the start.</p>}
        {venue.drapes.length > 0 && (
          <Choices name="drape" legend="May we draw a drape to borrow floor from the next room?" two errors={errors} chosen={[oneOf(values, "drape")]}
            options={[{ value: "any", name: "If it helps" }, { value: "yes", name: "Yes" }, { value: "no", name: "No" }, UNSURE]} />
        )}
      </>
    ),
  };
}
