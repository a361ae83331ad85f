import { fail, fitTo, type Problem, type Result } from "../../base";
import { layoutFacts, venueFacts } from "../facts";
import { venueSchema, type Room, type Venue } from "../schema";
import { faultsLeft, fieldOf, formOf, type Amiss, type Form, type Part, type Typed } from "./form";
import { houseParts, readHouse } from "./house";
import { withDoorsBothSides } from "./mirror";
import { chargeParts, packageParts, readCharges, readPackages } from "./money";
import { placeParts, readPlaces } from "./places";
import { planParts, readPlan } from "./plan";
import { readRoom, roomParts } from "./room";
import { drapeParts, readDrapes, readRules, readStock, ruleParts, stockParts } from "./stock";

export const SECTIONS = ["plan", "house", "stock", "places", "packages", "charges", "drapes", "rules"] as const;
export type SectionId = (typeof SECTIONS)[number];
/** One page of the editor: a section of the venue, or one of its rooms. */
export type Place = { readonly section: SectionId } | { readonly room: string };
export const SECTION_TITLES: Readonly<Record<SectionId, string>> = { plan: "Plan of the house", house: "House, contact and crew", stock: "Stock", places: "Places", packages: "Packages", charges: "Charges and tax", drapes: "Drapes", rules: "Rules" };

const HOW: Readonly<Record<SectionId, { readonly parts: (venue: Venue) => readonly Part[]; readonly read: (form: Form, venue: Venue, faults: Amiss[]) => Partial<Venue> }>> = {
  plan: { parts: planParts, read: readPlan }, places: { parts: placeParts, read: readPlaces },
  house: { parts: houseParts, read: readHouse }, stock: { parts: stockParts, read: readStock }, packages: { parts: packageParts, read: readPackages },
  charges: { parts: chargeParts, read: readCharges }, drapes: { parts: drapeParts, read: readDrapes }, rules: { parts: ruleParts, read: readRules },
};

const roomOf = (venue: Venue, id: string): Room | undefined => venue.rooms.find((r) => r.id === id);

/** The form of one page, filled with what stands. Undefined where the venue has no such room. */
export function partsOf(venue: Venue, place: Place): readonly Part[] | undefined {
  if ("section" in place) return HOW[place.section].parts(venue);
  const room = roomOf(venue, place.room);
  return room && roomParts(venue, room, venue.rooms.indexOf(room));
}

/** The room as far as it can be read from what is typed: for the drawing beside the form. */
export function roomTyped(venue: Venue, room: Room, typed: Typed): Room {
  const parts = roomParts(venue, room, Math.max(0, venue.rooms.findIndex((r) => r.id === room.id)));
  return readRoom(formOf(parts, typed, { venue, faults: [] }), venue, room);
}

/** The venue with one page of it as typed, its facts checked; or what is amiss, each at its field. As a draft it need only be readable. */
export function venueTyped(venue: Venue, place: Place, typed: Typed, asDraft = false): Result<Venue, readonly Amiss[]> {
  const parts = partsOf(venue, place), faults: Amiss[] = [];
  if (!parts) return fail([{ field: "", message: "This room is not there any more." }]);
  const form = formOf(parts, typed, { venue, faults });
  const next = nextOf(venue, place, { form, faults });
  const left = faultsLeft(faults, asDraft);
  if (left.length > 0) return fail(left);
  return factsAt(next, { parts, form, asDraft });
}

function nextOf(venue: Venue, place: Place, { form, faults }: { readonly form: Form; readonly faults: Amiss[] }): Venue {
  if ("section" in place) return { ...venue, ...HOW[place.section].read(form, venue, faults) };
  const before = roomOf(venue, place.room);
  if (!before) return venue;
  const room = readRoom(form, venue, before);
  return withDoorsBothSides({ ...venue, rooms: venue.rooms.map((r) => (r === before ? room : r)) }, room, before);
}

type Asked = { readonly parts: readonly Part[]; readonly form: Form | null; /** Only that it can be read is asked; its facts may contradict each other yet. */ readonly asDraft?: boolean };

/** A venue as its file would be read: left-out fields gone, schema and facts asked. */
export function factsAt(next: Venue, { parts, form, asDraft = false }: Asked): Result<Venue, readonly Amiss[]> {
  const bare: unknown = JSON.parse(JSON.stringify(next));
  const read = fitTo(venueSchema, bare);
  const problems = !read.ok ? read.error : asDraft ? [] : factsOf(read.value);
  if (read.ok && problems.length === 0) return read;
  return fail(problems.map((one) => ({ field: fieldAt(parts, form, one.path), message: saidIn(next, one) })));
}

const factsOf = (venue: Venue): readonly Problem[] => [...venueFacts(venue), ...(venue.standardLayout ? layoutFacts(venue, venue.standardLayout, ["standardLayout"]) : [])];

/** What keeps a venue from being whole, in words, and the page of the editor where each is mended. */
export function factsAmiss(venue: Venue): readonly { readonly page: string; readonly message: string }[] {
  return factsOf(venue).map((one) => ({ page: pageAt(venue, one.path), message: saidIn(venue, one) }));
}

/** A problem as a sentence that says where it lies. */
const saidIn = (venue: Venue, { path, message }: Problem): string => `${whereIn(venue, path)}: ${message}.`.replace(/\.\.$/, ".");

function pageAt(venue: Venue, path: string): string {
  const room = /^rooms\[(\d+)\](\.outline)?/.exec(path), word = /^\w+/.exec(path)?.[0] ?? "";
  if (room) return room[2] ? "plan" : `rooms/${venue.rooms[Number(room[1])]?.id ?? ""}`;
  if (word === "standardLayout") return "standard";
  return word === "tax" ? "charges" : (SECTIONS.find((s) => s === word) ?? "house");
}

/** The field in which a place of the file was typed; the form as a whole where it is on another page. */
function fieldAt(parts: readonly Part[], form: Form | null, path: string): string {
  const part = [...parts].filter((p) => p.at === "" ? !/[.[]/.test(path) : path === p.at || path.startsWith(`${p.at}.`) || path.startsWith(`${p.at}[`)).sort((a, b) => b.at.length - a.at.length)[0];
  if (!part || !form) return "save";
  const rest = path.slice(part.at.length).replace(/^\./, ""), read = part.one === undefined ? null : /^\[(\d+)\]\.?(.*)$/.exec(rest);
  const word = (read?.[2] ?? rest).replace(/\[\d+\]/g, "");
  const name = part.words?.[word] ?? part.words?.[word.split(".")[0] ?? ""] ?? (part.fields.some((f) => f.name === word) ? word : part.key);
  const index = read ? (form.rows(part.id)[Number(read[1])]?.index ?? 0) : 0;
  return fieldOf(part, index, part.fields.some((f) => f.name === name) ? name : (part.fields[0]?.name ?? ""));
}

/** A path of the file in words: the names of rooms and of rows in place of their numbers. */
function whereIn(venue: Venue, path: string): string {
  return path.replace(/^rooms\[(\d+)\]\.?/, (_, n: string) => `${venue.rooms[Number(n)]?.name ?? "room"}, `).replace(/\[(\d+)\]/g, (_, n: string) => ` ${Number(n) + 1}`).replaceAll(".", ", ").replace(/, $/, "").replace(/^standardLayout/, "standard layout");
}
