import { larkspur, tidewheel } from "../../../lib/demo";
import { venueSchema } from "../../../lib/venue";
import { fieldOf, partsOf, type Place } from "../../../lib/venue/edit";
import type { Facts, Role, Stand } from "./facts";

/**
 * What an answer is to be: its status, and where it leads. "+": besides, something that the house keeps changes; without it nothing
 * may. "own": couple B acts on their own booking, and nothing of couple A's moves.
 */
export type Cell = string;
type Cells = readonly [coupleA: Cell, coupleB: Cell, family: Cell, deskLook: Cell, desk: Cell, manager: Cell, nobody: Cell];
export type Row = {
  readonly cells: Cells;
  /** The address, where it is more than the route with its names filled in. */
  readonly query?: (facts: Facts) => string;
  readonly stand?: Stand;
  /** What its own page would send. */
  readonly body?: (facts: Facts) => Readonly<Record<string, string | readonly string[]>>;
  /** A file, where the form sends one. */
  readonly file?: () => { readonly name: string; readonly text: string };
};

export const cellOf = (row: Row, role: Role): Cell => {
  const [a, b, family, look, desk, manager, nobody] = row.cells;
  return { "couple A": a, "couple B": b, family, "desk look": look, desk, manager, nobody }[role];
};

const all = (cell: Cell): Cells => [cell, cell, cell, cell, cell, cell, cell];
/** A couple's own pages: each couple sees its own. */
const couples = (cell: Cell, refused = "307 /open"): Cells => [cell, cell, refused, refused, refused, refused, refused];
const family = (cell: Cell, refused = "307 /open?why=look"): Cells => [refused, refused, cell, refused, refused, refused, refused];
const DOOR = "307 /desk/open";
const looks = (cell: Cell): Cells => [DOOR, DOOR, DOOR, cell, cell, cell, DOOR];
const works = (cell: Cell, looker: Cell, manager = cell): Cells => [DOOR, DOOR, DOOR, looker, cell, manager, DOOR];
const ref = ({ reference }: Facts): string => `?ref=${reference}`;

/** Every address that is looked at, for everyone who may come. */
export const GETS: Readonly<Record<string, Row>> = {
  "/": { cells: all("200") },
  "/open": { cells: all("200") },
  "/open/[key]": { cells: all("200") },
  "/words": { cells: all("200") },
  "/quiet/[key]": { cells: all("303 /quiet/…") },
  "/quiet/[key]/ask": { cells: all("200") },
  "/quiet/[key]/ended": { cells: all("200") },
  "/desk/open": { cells: all("200") },
  "/desk/open/[key]": { cells: all("200") },
  "/api/health/live": { cells: all("200") },
  "/api/health/ready": { cells: all("200") },

  "/request": { cells: couples("200") },
  "/request/[step]": { cells: couples("200") },
  "/request/[step]/both": { cells: couples("307 /request/guests") },
  "/request/layout": { cells: couples("200"), stand: "chosen" },
  "/request/layout/[layout]": { cells: couples("200"), stand: "chosen" },
  "/request/layout/adjust": { cells: couples("200"), stand: "chosen" },
  "/request/revision/[number]": { cells: couples("200"), stand: "sent" },
  "/request/send": { cells: couples("200"), stand: "chosen" },
  "/request/sent": { cells: couples("200"), stand: "sent" },
  "/request/share": { cells: couples("200") },
  "/look": { cells: family("200") },

  "/desk": { cells: looks("200") },
  "/desk/fits": { cells: looks("200") },
  "/desk/venue": { cells: looks("200") },
  "/desk/venue/new": { cells: looks("200") },
  "/desk/venue/[venue]/[page]": { cells: looks("200") },
  "/desk/venue/[venue]/file": { cells: ["303 /desk/open", "303 /desk/open", "303 /desk/open", "200", "200", "200", "303 /desk/open"] },
  "/desk/venue/[venue]/standard": { cells: looks("200") },
  // The mill has no standard layout to move about yet: its manager is led to where one is made.
  "/desk/venue/[venue]/standard/adjust": { cells: looks("307 /desk/venue/tidewheel-mill/standard") },
  "/desk/venue/[venue]/new-room": { cells: looks("200") },
  "/desk/venue/[venue]/rooms/[room]": { cells: looks("200") },
  "/desk/bookings/new": { cells: looks("200") },
  "/desk/bookings/paste": { cells: looks("200") },
  "/desk/bookings/[ref]": { cells: looks("200"), stand: "sent" },
  "/desk/bookings/[ref]/adjust": { cells: works("200", "307 /desk/bookings/…"), stand: "sent" },
  "/desk/bookings/[ref]/change": { cells: works("200", "307 /desk/bookings/…"), stand: "changed" },
  "/desk/bookings/[ref]/draft": { cells: works("200", "307 /desk/bookings/…"), stand: "chosen" },
  "/desk/mailbox": { cells: works("200", "404") },
  "/desk/mailbox/[id]": { cells: works("200", "404") },
  "/desk/people": { cells: works("404", "404", "200") },

  "/api/answers.json": { cells: couples("200", "404") },
  // Nothing is being worked out just now.
  "/api/arranging.json": { cells: all("404") },
  "/api/own.json": { cells: couples("200", "403") },
  "/api/plan.json": { cells: ["200", "404", "200", "200", "200", "200", "404"], stand: "chosen", query: (f) => `${ref(f)}&scene=meal` },
  "/api/plan.svg": { cells: ["200", "404", "200", "200", "200", "200", "404"], stand: "chosen", query: ref },
  "/api/proposal.pdf": { cells: ["200", "404", "404", "200", "200", "200", "404"], stand: "chosen", query: ref },
  "/api/sheets.pdf": { cells: ["404", "404", "404", "200", "200", "200", "404"], stand: "agreed", query: ref },
  "/api/calendar.ics": { cells: ["404", "404", "404", "200", "200", "200", "404"], stand: "agreed", query: ref },
};

/** Couple A's own forms: couple B sends the same to their own booking. */
const ours = (cell: Cell): Cells => [cell, "own", ...refusedTo("303 /open?why=ended")];
const refusedTo = (cell: Cell): readonly [Cell, Cell, Cell, Cell, Cell] => [cell, cell, cell, cell, cell];
const AWAY = "303 /desk/open";
/** The desk's forms: who works, who only looks, who manages. */
const desks = (cell: Cell, looker: Cell, manager = cell): Cells => [AWAY, AWAY, AWAY, looker, cell, manager, AWAY];
const done = (word: string): Cell => `303 /desk/bookings/…?done=${word} +`;
const acted = (word: string): Cells => desks(done(word), "303 /desk");
/** The venue is the managers' to change. */
const managed = (cell: Cell): Cells => desks("303 /desk/venue?done=not-yours", "303 /desk/venue?done=not-yours", cell);

const mill = venueSchema.parse(tidewheel);
/** A page of the venue's editor as it is shown, with one field typed anew. */
const typed = (place: Place, changes: Readonly<Record<string, string>>): Readonly<Record<string, string | readonly string[]>> => ({
  ...Object.fromEntries((partsOf(mill, place) ?? []).flatMap((part) => part.shown.flatMap((row, i) => Object.entries(row).filter(([, v]) => v.length > 0).map(([name, v]) => [fieldOf(part, i, name), v] as const)))), ...changes,
});
const pasted = ({ email }: Facts): string => `Couple,E-Mail,Wedding date,Package\nAna & Bo,pasted.${email},2031-06-12,Dry hire`;
const BEGUN = {
  "house.name": "Old Tithe Hall", "house.lengths": "metric", "house.locale": "en-GB", "house.currency": "gbp", "house.timeZone": "Europe/London", "room.name": "Hall", "room.width": "12", "room.depth": "8 m",
  "doors.0.wall": "C", "doors.0.start": "2", "doors.0.width": "1.8", "doors.1.wall": "A", "doors.1.start": "9", "doors.1.width": "1.2", "tables.rounds": "8", "tables.across": "1.68", "tables.chairs": "80",
  "package.name": "Hire", "package.due": "42",
};

/** Every form, with what its own page would send. */
export const POSTS: Readonly<Record<string, Row>> = {
  "/open/ask": { cells: all("303 /open?why=mailed +"), body: ({ email }) => ({ email }) },
  "/open/enter": { cells: all("303 /request +"), body: (f) => ({ key: f.coupleKey }) },
  "/desk/open/ask": { cells: all("303 /desk/open?why=mailed +"), body: (f) => ({ email: f.leaving }) },
  "/desk/open/code": { cells: all("303 /desk/open?why=code"), body: () => ({ person: "desk@mill.example", code: "AAAA-AAAA" }) },
  "/desk/open/enter": { cells: all("303 /desk +"), body: (f) => ({ key: f.deskKey }) },
  // What they read is kept with a couple's booking; of everyone else with the browser alone.
  "/words/choose": { cells: ["303 /words +", "own", ...refusedTo("303 /words")], body: () => ({ language: "es", from: "/words" }) },
  "/quiet/[key]": { cells: all("303 /quiet/… +"), body: () => ({ from: "page" }) },

  "/request/[step]/save": { cells: ours("303 /request/ceremony +"), body: (f) => ({ adults: "30", revision: f.revision }) },
  "/request/[step]/both/save": { cells: ours("303 /request/guests"), body: (f) => ({ take: "mine", kept: "x", revision: f.revision }) },
  "/request/ask": { cells: ours("303 /request?asked=draft +"), body: () => ({ what: "draft", words: "Please." }) },
  "/request/layout/choose": { cells: ours("303 /request/send +"), stand: "chosen", body: (f) => ({ layout: "b", revision: f.revision }) },
  "/request/layout/stop": { cells: ours("303 /request/layout"), stand: "chosen" },
  "/request/layout/adjust/do": { cells: ours("303 /request/layout/adjust… +"), stand: "chosen", body: (f) => ({ ...f.bench, act: "quarter" }) },
  "/request/numbers": { cells: ours("303 /request#numbers +"), stand: "agreed", body: () => ({ adults: "38", children: "0", suppliers: "2" }) },
  "/request/send/go": { cells: ours("303 /request/sent +"), stand: "chosen", body: (f) => ({ revision: f.revision, notes: "" }) },
  "/request/share/make": { cells: ours("303 /request/share?made=… +"), body: () => ({ label: "Uncle", email: "" }) },
  "/request/share/withdraw": { cells: ours("303 /request/share +"), body: (f) => ({ link: f.lookId }) },
  "/leave": { cells: ["303 / +", "own", ...refusedTo("303 /")] },
  "/look/leave": { cells: ["303 /", "303 /", "303 / +", "303 /", "303 /", "303 /", "303 /"] },

  "/desk/bookings/new/add": { cells: desks("303 /desk/bookings/…?done=added +", "303 /desk/bookings/new?kept=…"), body: () => ({ names: "Cleo & Cas", email: "c@example.org", package: "dry-hire", date: "2031-05-03", mail: "yes" }) },
  "/desk/bookings/paste/look": { cells: desks("303 /desk/bookings/paste?kept=…", "303 /desk/bookings/paste?kept=…"), body: (f) => ({ list: pasted(f) }) },
  "/desk/bookings/paste/add": { cells: desks("303 /desk?added=1 +", "303 /desk/bookings/paste?kept=…"), body: (f) => ({ list: pasted(f), good: "1", mail: "no" }) },
  "/desk/bookings/[ref]/address": { cells: acted("address"), body: () => ({ email: "new@example.org" }) },
  "/desk/bookings/[ref]/mail": { cells: acted("mailed") },
  "/desk/bookings/[ref]/remind": { cells: acted("reminded") },
  "/desk/bookings/[ref]/close": { cells: acted("closed"), body: () => ({ closing: "" }) },
  "/desk/bookings/[ref]/erase": { cells: acted("erased"), stand: "closed" },
  // Its due date is still to come.
  "/desk/bookings/[ref]/standard": { cells: desks("303 /desk/bookings/…?kept=…", "303 /desk") },
  "/desk/bookings/[ref]/numbers": { cells: acted("numbers"), stand: "agreed", body: () => ({ adults: "38", children: "0", suppliers: "2" }) },
  "/desk/bookings/[ref]/agree": { cells: acted("agreed"), stand: "sent", body: (f) => ({ number: "1", fingerprint: f.fingerprint }) },
  "/desk/bookings/[ref]/return": { cells: acted("returned"), stand: "sent", body: () => ({ number: "1", reason: "The band needs a wall." }) },
  "/desk/bookings/[ref]/adjust/do": { cells: desks("303 /desk/bookings/…/adjust… +", "303 /desk/bookings/…"), stand: "sent", body: (f) => ({ ...f.bench, act: "quarter" }) },
  "/desk/bookings/[ref]/draft/count": { cells: desks(`303 /desk/bookings/…/draft?done=counted +`, "303 /desk"), body: (f) => ({ revision: f.revision, adults: "40" }) },
  "/desk/bookings/[ref]/draft/offer": { cells: acted("drafted"), stand: "chosen", body: (f) => ({ revision: f.revision, layout: "a", words: "" }) },
  "/desk/bookings/[ref]/change/work": { cells: desks("303 /desk/bookings/…/change?done=worked +", "303 /desk"), stand: "agreed", body: () => ({ adults: "42" }) },
  "/desk/bookings/[ref]/change/take": { cells: acted("changed"), stand: "changed", body: (f) => ({ seen: f.change }) },
  "/desk/bookings/[ref]/change/drop": { cells: acted("dropped"), stand: "changed" },

  "/desk/venue/new/begin": { cells: managed("303 /desk/venue?done=1 +"), body: () => BEGUN },
  "/desk/venue/import": { cells: [AWAY, AWAY, AWAY, "303 /desk/venue?kept=…", "303 /desk/venue?kept=…", "303 /desk/venue?done=… +", AWAY], file: () => ({ name: "barn.json", text: JSON.stringify(larkspur) }) },
  // There is no draft to let go.
  "/desk/venue/[venue]/draft/drop": { cells: managed("303 /desk/venue?done=let-go") },
  "/desk/venue/[venue]/standard/choose": { cells: managed("303 /desk/venue/tidewheel-mill/standard?done=… +"), stand: "sent", body: (f) => ({ version: f.venueVersion, revision: `${f.reference}/1`, title: "As it mostly stands" }) },
  "/desk/venue/[venue]/standard/adjust/do": { cells: desks("303 /desk/venue/tidewheel-mill/standard", "303 /desk/venue/tidewheel-mill/standard", "303 /desk/venue/tidewheel-mill/standard/adjust?…"), body: () => ({ scene: "meal", act: "undo", seen: "an older one" }) },
  "/desk/venue/[venue]/standard/drop": { cells: managed("303 /desk/venue/tidewheel-mill/standard?done=… +"), body: (f) => ({ version: f.venueVersion }) },
  "/desk/venue/[venue]/add-room": { cells: managed("303 /desk/venue/tidewheel-mill/rooms/…?done=… +"), body: (f) => ({ version: f.venueVersion, name: "Shed", width: "4", depth: "5" }) },
  "/desk/venue/[venue]/[page]/save": { cells: managed("303 /desk/venue/tidewheel-mill/house?done=… +"), body: (f) => typed({ section: "house" }, { version: f.venueVersion, "crew.size": "5" }) },
  "/desk/venue/[venue]/rooms/[room]/save": { cells: managed("303 /desk/venue/tidewheel-mill/rooms/…?done=… +"), body: (f) => typed({ room: "wheel-room" }, { version: f.venueVersion, "room.name": "The Wheel Room" }) },
  "/desk/venue/[venue]/rooms/[room]/remove": { cells: managed("303 /desk/venue?done=… +"), body: (f) => ({ version: f.venueVersion }) },
  "/desk/people/invite": { cells: desks("303 /desk", "303 /desk", "303 /desk/people?done=invited +"), body: () => ({ email: "new@mill.example", role: "desk-look" }) },
  "/desk/people/revoke": { cells: desks("303 /desk/people", "303 /desk/people", "303 /desk/people?done=gone +"), body: (f) => ({ email: f.leaving }) },
  "/desk/leave": { cells: [AWAY, AWAY, AWAY, `${AWAY} +`, `${AWAY} +`, `${AWAY} +`, AWAY] },
};
