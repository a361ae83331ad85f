import type { ColumnType, Generated, Selectable } from "kysely";
import type { DeskRole, State } from "../booking";
import type { BriefFile } from "../brief";
import type { Draft } from "../brief/draft";
import type { ArrangeResult, Capacity, Finding, Layout, Quote } from "../layout";
import type { Work } from "../hand";
import type { VenueFile } from "../venue";

/** JSON goes in as text made by us, and comes out read. */
type Json<T> = ColumnType<T, string, string>;
/** A moment: ISO 8601 in UTC both ways. A day: YYYY-MM-DD. */
type Moment = string;
type Day = string;

/** What a couple may ask of the desk: a change of what is agreed, a draft to begin from, or that what is kept of them be erased. */
export type AskedOfDesk = { readonly what: "change" | "draft" | "erase"; readonly words: string; readonly at: Moment };

/** How many come, told for good: suppliers eat too. */
export type FinalGuests = { readonly adults: number; readonly children: number; readonly suppliers?: number };

export type Database = {
  readonly venueVersions: {
    venue: string; version: number; file: Json<VenueFile>; hash: string; savedAt: Moment; staff: number | null;
  };
  readonly bookings: {
    reference: string; venue: string; names: Json<readonly string[]>; email: string; package: string; eventDate: Day; dueDate: Day;
    state: State; revision: number; draft: Json<Draft>;
    chosen: ColumnType<Layout | null, string | null, string | null>; chosenKey: string | null;
    /** Set by the venue when nothing had come by the due date; not agreed. */
    setLayout: ColumnType<Layout | null, string | null, string | null>; setVersion: number | null; setAt: Moment | null;
    asked: ColumnType<AskedOfDesk | null, string | null, string | null>; createdAt: Moment; changedAt: Moment;
    /** When its names went; why it was closed, in the desk's own words. */
    erasedAt: Moment | null; closedReason: string | null;
    finalGuests: ColumnType<FinalGuests | null, string | null, string | null>; finalAt: Moment | null;
    /** Since when they want no more reminders. */
    quietAt: Moment | null;
    /** What they chose to read, a BCP 47 tag and a system of lengths; null where the venue's own does. */
    language: string | null; lengths: "metric" | "imperial" | null;
  };
  readonly revisions: {
    booking: string; number: number; brief: Json<BriefFile>; layout: Json<Layout>; quote: Json<Quote>; findings: Json<readonly Finding[]>;
    venueVersion: number; fingerprint: string; sentAt: Moment; returnedAt: Moment | null; agreedAt: Moment | null; reason: string | null; pieces: ColumnType<readonly string[] | null, string | null, string | null>;
    /** SHA-256 of the whole, names and all, and its salt; null in revisions sent before it was kept. */
    whole: string | null; salt: string | null; erasedAt: Moment | null;
  };
  readonly links: {
    hash: string; purpose: "couple" | "desk" | "look" | "quiet"; booking: string | null; person: string | null; once: boolean;
    /** For whom a look-only link was made, as the couple put it. */
    label: string | null;
    /** The hash of the mark of the browser that asked for it, where it opens in that one alone. */
    browser: string | null;
    madeAt: Moment; expiresAt: Moment; usedAt: Moment | null; revokedAt: Moment | null;
  };
  readonly sessions: {
    hash: string; side: "couple" | "desk" | "look"; booking: string | null; person: string | null;
    /** The look-only link that opened it: it ends with that link. */
    link: string | null; madeAt: Moment; seenAt: Moment; endedAt: Moment | null;
  };
  readonly mails: {
    id: Generated<number>; kind: string; booking: string | null; recipient: string; fromName: string; subject: string; bodyText: string; bodyHtml: string;
    messageId: string; replyTo: string | null; onceKey: string | null; unsubscribe: string | null; state: "queued" | "sending" | "sent" | "failed"; why: string | null; attempts: number;
    dueAt: Moment; queuedAt: Moment; sentAt: Moment | null;
  };
  readonly history: {
    id: Generated<number>; booking: string | null; at: Moment; who: string; /** Who of the desk it was. */ staff: number | null; what: string; data: Json<Readonly<Record<string, unknown>>>;
  };
  /** The rooms that agreed bookings hold; times are the venue's own, without a zone. */
  readonly heldRooms: { booking: string; venue: string; room: string; starts: string; ends: string };
  /** `staff`: who let them in. */
  readonly people: { email: string; role: DeskRole; invitedAt: Moment; staff: number | null };
  /** Everyone who ever did something at the desk; the address goes when they leave. */
  readonly staff: { id: Generated<number>; email: string | null; leftAt: Moment | null };
  readonly lateChanges: { booking: string; number: number; brief: Json<BriefFile>; result: Json<ArrangeResult>; madeAt: Moment; madeBy: string };
  /** Kept by the database itself as bookings change. */
  readonly bookingCounts: { venue: string; state: State; n: number };
  readonly bookingSearch: { booking: string; foundBy: string; grams: readonly string[] };
  readonly venueDrafts: { venue: string; base: number; number: number; file: Json<VenueFile>; savedAt: Moment; staff: number | null };
  readonly lateWorks: {
    booking: string; number: number; brief: Json<BriefFile>; askedAt: Moment; askedBy: string; tries: number; /** Claimed until then. */ until: Moment | null;
    /** Why it could not be worked out, after the last try. */
    fault: string | null;
  };
  /** Links asked for at the door, and not answered yet. */
  readonly linkAsks: { id: Generated<number>; side: "couple" | "desk"; address: string | null; booking: string | null; askedAt: Moment; browser: string | null };
  readonly counts: { key: string; result: Json<Capacity>; madeAt: Moment };
  /** `start`, `taken`: hashes of the layout that it began from, and of what was taken of it last. */
  readonly adjustments: {
    booking: string; revision: number; start: string; taken: string | null; base: Json<Layout>; work: Json<Work>; changedAt: Moment; changedBy: string;
  };
  readonly arrangements: { key: string; result: Json<ArrangeResult>; madeAt: Moment };
};

export type BookingRow = Selectable<Database["bookings"]>;
export type AdjustmentRow = Selectable<Database["adjustments"]>;
export type RevisionRow = Selectable<Database["revisions"]>;
export type MailRow = Selectable<Database["mails"]>;
export type LinkRow = Selectable<Database["links"]>;
export type SessionRow = Selectable<Database["sessions"]>;
export type PersonRow = Selectable<Database["people"]>;
export type LateChangeRow = Selectable<Database["lateChanges"]>;
export type VenueDraftRow = Selectable<Database["venueDrafts"]>;
export type LinkAskRow = Selectable<Database["linkAsks"]>;
export type LateWorkRow = Selectable<Database["lateWorks"]>;
export type HistoryRow = Selectable<Database["history"]>;
