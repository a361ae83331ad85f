/**
 * What the pages may do. Every use case is `verb(house, actor, input)`, checks who asks, and returns a value or a refusal.
 *
 *   const house = await theHouse();
 *   const actor = await currentActor(house, { cookie: (await headers()).get("cookie"), side: "couple" });
 *   const seen = await getBooking(house, actor, { reference });
 *   if (!seen.ok) notFound();
 */
import type { Capacity } from "../layout";
import type { Venue } from "../venue";
import type {
  Actor, Arranged, BookingView, CookieToSet, FormValues, MailView, Outcome, QueueFilter, QueueView, StepId,
} from "./types";

export * from "./types";

export type House = { readonly origin: string; readonly demo: boolean };
type UseCase<I, O> = (house: House, actor: Actor, input: I) => Promise<Outcome<O>>;
const later = (): never => { throw new Error("not written yet"); };

/** Config, store and mail of this process, made once. */
export const theHouse: () => Promise<House> = later;
/** Who the request's cookie speaks for. `side` "either" prefers the desk. */
export const currentActor: (house: House, from: { readonly cookie: string | null | undefined; readonly side: "couple" | "desk" | "either" }) => Promise<Actor> = later;

// ── getting in and out ──
/** For the GET of a mailed link: what the page says before the button. Changes nothing. */
export const lookAtLink: (house: House, input: { readonly key: string }) => Promise<Outcome<{ readonly purpose: "couple" | "desk"; readonly names: readonly string[]; readonly venueName: string; readonly date?: string; readonly dueDate?: string; readonly reference?: string }>> = later;
/** For the POST: opens the session; set the cookie, then go to /request or /desk by `purpose`. */
export const openLink: (house: House, input: { readonly key: string }) => Promise<Outcome<{ readonly purpose: "couple" | "desk"; readonly reference?: string; readonly cookie: CookieToSet }>> = later;
/** Mails a one-time sign-in link if the address belongs to the desk; answers the same either way. */
export const askDeskLink: (house: House, input: { readonly email: string }) => Promise<Outcome<null>> = later;
/** Ends the session; the cookie returned clears it. */
export const signOut: (house: House, from: { readonly cookie: string | null | undefined; readonly side: "couple" | "desk" }) => Promise<CookieToSet> = later;

// ── the desk ──
/** Form fields: names (one a line or split by "&", " and ", ","), email, package, date, venue (id; the first when left out). Mails the link when `mail` is "yes". */
export const addBooking: UseCase<{ readonly values: FormValues }, { readonly reference: string }> = later;
/** Mails the couple a fresh link. */
export const mailLink: UseCase<{ readonly reference: string }, null> = later;
/** By due date; "waiting" = sent and not yet answered; `search` looks in names, reference and address. */
export const listQueue: UseCase<{ readonly filter?: QueueFilter; readonly search?: string }, QueueView> = later;
export const returnRequest: UseCase<{ readonly reference: string; readonly number: number; readonly reason: string }, null> = later;
/** Agrees exactly that revision; `fingerprint` is what the coordinator saw. */
export const agreeRevision: UseCase<{ readonly reference: string; readonly number: number; readonly fingerprint: string }, { readonly fingerprint: string }> = later;
export const closeBooking: UseCase<{ readonly reference: string; readonly reason: string }, null> = later;
/** Everything mailed, newest first. Only while the demo mailbox is on. */
export const listMailbox: UseCase<{ readonly reference?: string }, readonly MailView[]> = later;
export const listVenues: UseCase<Record<string, never>, readonly { readonly id: string; readonly version: number; readonly venue: Venue }[]> = later;
/** The text of a VENUE file; a new version is saved. */
export const importVenue: UseCase<{ readonly json: string }, { readonly id: string; readonly version: number }> = later;

// ── the couple (the desk may look) ──
export const getBooking: UseCase<{ readonly reference: string }, BookingView> = later;
/** Saves one step. `revision` as last seen; refusals: stale, invalid (errors by field), wrong-state. Fields: `STEP_SCHEMAS` of lib/brief/draft. */
export const saveStep: UseCase<{ readonly reference: string; readonly step: StepId; readonly values: FormValues; readonly revision: number }, { readonly revision: number }> = later;
/** Runs the engine on the answers so far (kept while answers and venue stay the same). */
export const arrangeFor: UseCase<{ readonly reference: string }, Arranged> = later;
/** How many fit, by room and style, in the rooms of the booking's package. */
export const capacityFor: UseCase<{ readonly reference: string }, Capacity> = later;
export const chooseLayout: UseCase<{ readonly reference: string; readonly layout: string; readonly revision: number }, { readonly revision: number }> = later;
export const sendRequest: UseCase<{ readonly reference: string; readonly revision: number }, { readonly number: number; readonly fingerprint: string }> = later;
/** One part of the day as SVG: of a layout now offered (`layout`), of a revision sent (`number`), or of the one chosen. First scene when none is named. */
export const planSvg: UseCase<{ readonly reference: string; readonly scene?: string; readonly layout?: string; readonly number?: number; readonly sheet?: boolean }, string> = later;
/** The proposal PDF of a revision, or of what is chosen now when no number is given. */
export const proposalPdfFor: UseCase<{ readonly reference: string; readonly number?: number }, { readonly bytes: Uint8Array; readonly fileName: string }> = later;
