import type { BriefFile } from "../brief";

export type DemoState = "invited" | "started" | "sent" | "returned" | "agreed" | "closed";

/** What a couple has answered, without what the booking itself holds. */
export type DemoAnswers = Omit<BriefFile, "format" | "package" | "date" | "couple" | "reference" | "today">;

/** One invented booking: enough to walk it through the use cases into its state. */
export type DemoBooking = {
  readonly reference: string;
  readonly venue: "tidewheel-mill" | "larkspur-barn";
  readonly couple: readonly [string, string];
  readonly email: string;
  readonly package: string;
  readonly date: string;
  /** Guests as the desk knew them when the booking was made. */
  readonly expected: number;
  readonly state: DemoState;
  /** Absent while nothing has been answered. */
  readonly answers?: DemoAnswers;
  /** The desk's words, where it returned the layout. */
  readonly returned?: string;
  /** Days that the couple let pass between opening their link and choosing, past the usual three. */
  readonly pause?: number;
};

type Row = Omit<DemoBooking, "date" | "reference" | "venue"> & { readonly venue?: DemoBooking["venue"]; readonly weeks: number };

const ROWS: readonly Row[] = [
  {
    // Rows and tables for so many stand on the Grain Floor only one after the other: the room is turned over.
    couple: ["Ines Calloway", "Theo Brandt"], email: "ines.and.theo@calloway.example", package: "hosted-day", weeks: 9, expected: 92, state: "sent",
    answers: {
      guests: { adults: 86, children: 6, highChairs: 2, wheelchairs: 1, suppliers: 4 },
      ceremony: { here: true, seating: "rows", aisle: "centre" },
      meal: { service: "buffet", tables: "mixed", top: "pair", perTable: "comfort" },
      music: { by: "dj", dancing: 0.4, atCeremony: true },
      displays: ["welcome", "cards", "guest-book", "photographs", "cake", "seating-plan"], extras: ["cocktail-tables"], turnover: true,
      wishes: [{ put: "cake", near: "feature" }], notes: "Theo’s grandmother would like to sit where she can see the band of swallows on the beam.",
    },
  },
  {
    // So many sit down to dinner on the Grain Floor only with the drape drawn.
    couple: ["Niamh Ó Dálaigh", "Łukasz Żurawski"], email: "niamh@odalaigh.example", package: "hosted-weekend", weeks: 7, expected: 122, state: "sent",
    answers: {
      guests: { adults: 122 }, meal: { service: "plated", tables: "any" }, music: { by: "dj", dancing: 0.25 }, displays: ["cake", "welcome", "cards"], drape: "any",
    },
  },
  {
    couple: ["Ελένη Παπαδάκη", "Marc Dufour"], email: "eleni@papadaki.example", package: "dry-hire", weeks: 8, expected: 64, state: "started",
    answers: { guests: { adults: 60, children: 4 }, ceremony: { here: false }, meal: { service: "sharing", tables: "long" }, music: { by: "playlist", dancing: 0.3 } },
  },
  { couple: ["Оксана Мельник", "Daniel Achterberg"], email: "oksana@melnyk.example", package: "hosted-day", weeks: 14, expected: 80, state: "invited" },
  {
    couple: ["Yusra al-Khatib (يسرى الخطيب)", "Omar Haddad (عمر حداد)"], email: "yusra@alkhatib.example", package: "hosted-weekend", weeks: 6, expected: 100, state: "returned",
    answers: {
      guests: { adults: 90, children: 10, wheelchairs: 2 }, meal: { service: "plated", tables: "any", perTable: "most", top: "pair" }, music: { by: "dj", dancing: 0.3 },
      displays: ["welcome", "cards", "cake"], drape: "yes",
    },
    returned: "With 100 guests the terrace cannot hold everyone while the Grain Floor is laid. May the drinks begin in the Wheel Room as well?",
  },
  {
    couple: ["Noa Lev (נועה לב)", "Samuel Pereira"], email: "noa@lev.example", package: "dry-hire", weeks: 10, expected: 48, state: "agreed",
    answers: {
      guests: { adults: 46, children: 2 }, ceremony: { here: true, seating: "standing", aisle: "none" }, meal: { service: "sharing", tables: "rounds", top: "round" },
      music: { by: "playlist", dancing: 0.4 }, displays: ["welcome", "guest-book"], extras: ["lounge"],
    },
  },
  { couple: ["佐藤 美咲 (Misaki Sato)", "Oliver Penrose"], email: "misaki@sato.example", package: "hosted-day", weeks: 20, expected: 70, state: "invited" },
  {
    couple: ["Aarti Deshmukh (आरती देशमुख)", "Kiran Rao"], email: "aarti@deshmukh.example", package: "hosted-weekend", weeks: 5, expected: 98, state: "agreed",
    answers: {
      guests: { adults: 86, children: 12, highChairs: 3 }, meal: { service: "buffet", tables: "mixed", top: "one-sided" }, music: { by: "dj", dancing: 0.35 },
      displays: ["welcome", "cards", "photographs", "cake"],
    },
  },
  {
    // Its due date has gone by: 42 days before the day are more than four weeks.
    couple: ["Hamish Farquhar", "Rowan Tyndall"], email: "hamish@farquhar.example", package: "dry-hire", weeks: 4, expected: 56, state: "started",
    answers: { guests: { adults: 56 }, meal: { service: "buffet" } },
  },
  {
    // Sent two days ago, ten days or so after the layout was due.
    couple: ["Zoë Straightforth", "Zadie Straightforth"], email: "z.and.z@straightforth.example", package: "dry-hire", weeks: 4, expected: 40, state: "sent", pause: 22,
    answers: {
      guests: { adults: 40 }, ceremony: { here: false }, meal: { service: "sharing", tables: "long", top: "none" }, music: { by: "playlist", dancing: 0.3 }, displays: ["cake"],
    },
  },
  {
    couple: ["Mihaela Ionescu", "Gethin Prys"], email: "mihaela@ionescu.example", package: "hosted-day", weeks: 6, expected: 88, state: "returned",
    answers: {
      guests: { adults: 82, children: 6, suppliers: 5 }, meal: { service: "plated", tables: "mixed", top: "one-sided" }, music: { by: "band", players: 2, dancing: 0.3 },
      displays: ["welcome", "cake", "seating-plan"], extras: ["photo-booth"],
    },
    returned: "The photo booth stands where the band will unload. Would the parlour suit it as well?",
  },
  {
    couple: ["Amara Okonjo", "Felix Grünwald"], email: "amara@okonjo.example", package: "hosted-day", weeks: -3, expected: 76, state: "closed",
    answers: { guests: { adults: 72, children: 4 }, meal: { service: "plated", tables: "any" }, music: { by: "dj", dancing: 0.4 }, displays: ["welcome", "cake"] },
  },
  {
    venue: "larkspur-barn", couple: ["June Abernethy", "Caleb Whitlock"], email: "june@abernethy.example", package: "barn-only", weeks: 8, expected: 112, state: "sent",
    answers: {
      guests: { adults: 104, children: 8, wheelchairs: 2 }, meal: { service: "buffet", tables: "any", top: "pair" }, music: { by: "band", players: 4, dancing: 0.3 },
      displays: ["welcome", "cards", "cake"], extras: ["second-bar"],
    },
  },
  {
    venue: "larkspur-barn", couple: ["Xiomara Peña", "Đặng Minh Anh"], email: "xiomara@pena.example", package: "full-service", weeks: 12, expected: 96, state: "started",
    answers: { guests: { adults: 90, children: 6 }, ceremony: { here: true, room: "porch" } },
  },
];

const DAY = 86_400_000;
const SATURDAY = 6;

/** The Saturday on or after a day that lies so many weeks from the base day; `base` and answer as YYYY-MM-DD. */
function saturday(base: string, weeks: number): string {
  const start = Date.parse(`${base}T00:00:00Z`) + weeks * 7 * DAY;
  const shift = (SATURDAY - new Date(start).getUTCDay() + 7) % 7;
  return new Date(start + shift * DAY).toISOString().slice(0, 10);
}

/** Fourteen invented couples in every state, their days counted from `base` (YYYY-MM-DD). */
export const demoBookings = (base: string): readonly DemoBooking[] =>
  ROWS.map(({ weeks, venue = "tidewheel-mill", ...row }, i) => ({
    ...row, venue, date: saturday(base, weeks), reference: `${venue === "tidewheel-mill" ? "TM" : "LB"}-${101 + i}`,
  }));
