import type { FieldError, Draft, FormValues, StepId } from "../brief/draft";
import type { CookieToSet } from "../access";
import type { FinalGuests } from "../store";
import type { DeskRole, State } from "../booking";
import type { Result } from "../base";
import type { Brief } from "../brief";
import type { ArrangeResult, Finding, Layout, Quote } from "../layout";
import type { Venue } from "../venue";
import type { Chosen } from "../words/pages";

export type { DeskRole, Draft, FieldError, FormValues, State, StepId };

/** Who asks. A couple speaks for one booking; the desk for all of them; whom a couple gave a look-only link looks at one, and does nothing. */
export type Actor =
  | { readonly kind: "nobody" }
  | { readonly kind: "look"; readonly reference: string }
  | { readonly kind: "couple"; readonly reference: string }
  | { readonly kind: "desk"; readonly person: string; readonly role: DeskRole };

/** Every expected "no" of a use case. Pages turn it into words; `not-allowed` and `not-found` look alike to a visitor. */
export type Refusal =
  | { readonly code: "not-allowed" }
  | { readonly code: "not-found" }
  /** Someone saved meanwhile: show what stands now, at this revision. */
  | { readonly code: "stale"; readonly revision: number }
  | { readonly code: "invalid"; readonly errors: readonly FieldError[] }
  | { readonly code: "wrong-state"; readonly state: State }
  /** What must be known first: "guests", "layout" (none chosen), "layout-outdated" (answers changed since it was chosen). */
  | { readonly code: "incomplete"; readonly missing: readonly ("guests" | "layout" | "layout-outdated")[] }
  /** Another booking has agreed to these rooms for that time. */
  | { readonly code: "taken"; readonly rooms: readonly string[]; readonly by: string }
  /** The engine is still at it, longer than was waited for: ask again. */
  | { readonly code: "working" }
  /** The link is unknown, run out, used up or withdrawn. */
  | { readonly code: "link"; readonly why: "unknown" | "expired" | "used" | "revoked" | "elsewhere" };

export type Outcome<T> = Result<T, Refusal>;

export type { CookieToSet };

export type RevisionView = {
  readonly number: number;
  readonly brief: Brief;
  readonly layout: Layout;
  readonly quote: Quote;
  readonly findings: readonly Finding[];
  readonly venueVersion: number;
  /** SHA-256, 64 hex digits, over the canonical JSON of what was sent. */
  readonly fingerprint: string;
  /** ISO 8601 in UTC. */
  readonly sentAt: string;
  readonly returnedAt?: string;
  readonly agreedAt?: string;
  /** The coordinator's words when it was returned, and the labels of the pieces that they speak of. */
  readonly reason?: string;
  readonly pieces?: readonly string[];
};

export type HistoryView = {
  readonly at: string; readonly who: string;
  /** Who of the desk it was, by their address; told to the desk alone, and gone once they have left. */
  readonly by?: string;
  readonly what: string; readonly data: Readonly<Record<string, unknown>>;
};

export type MailView = {
  readonly id: number; readonly to: string; readonly subject: string; readonly kind: string; readonly reference?: string;
  readonly text: string; readonly html: string;
  readonly state: "queued" | "sent" | "failed"; readonly why?: string; readonly attempts: number;
  readonly queuedAt: string; readonly sentAt?: string;
};

export type ChosenView = {
  readonly layout: Layout;
  /** True: the answers or the venue changed since it was chosen; choose again before sending. */
  readonly outdated: boolean;
};

export type BookingView = {
  readonly reference: string;
  readonly names: readonly string[];
  readonly email: string;
  readonly venue: Venue;
  readonly venueVersion: number;
  readonly package: { readonly id: string; readonly name: string; readonly coordinator: boolean };
  /** The day, YYYY-MM-DD. */
  readonly date: string;
  /** The layout is due by the end of this day in the venue's zone, YYYY-MM-DD. */
  readonly dueDate: string;
  /** Whole days from today (venue's zone) to the due date; negative once it is past. */
  readonly daysLeft: number;
  readonly overdue: boolean;
  readonly state: State;
  /** Answers and layout may still be changed by the couple: neither sent, agreed nor closed. */
  readonly open: boolean;
  /** Counts every save: hand it back with the next one. */
  readonly revision: number;
  /** When anything about it last changed, ISO 8601 in UTC. */
  readonly savedAt: string;
  /** What they chose to read; what was left open goes by their venue. */
  readonly reads: Chosen;
  readonly draft: Draft;
  /** Why it was closed, where the desk said so. */
  readonly closedReason?: string;
  /** When names and words were erased, ISO 8601. */
  readonly erasedAt?: string;
  /** Steps that have been saved once, even as "not sure yet". */
  readonly answered: readonly StepId[];
  /** The answers as a brief; absent until the number of adults is known. */
  readonly brief?: Brief;
  readonly chosen?: ChosenView;
  /** The venue's own standard layout, put down when nothing had come by the due date. It holds, unagreed, until a layout is sent. */
  readonly setByVenue?: { readonly layout: Layout; readonly at: string };
  /** How many sit down in the end: when that is due, and what was told. Absent where the package asks none. */
  readonly finalNumbers?: { readonly dueDate: string; readonly daysLeft: number; readonly told?: FinalGuests; readonly toldAt?: string };
  /** What the couple last asked of the desk, until something is sent or agreed after it. */
  readonly asked?: { readonly what: "change" | "draft" | "erase"; readonly words: string; readonly at: string };
  /** Oldest first. */
  readonly revisions: readonly RevisionView[];
  /** Couples see their own; `mails` is empty for a couple. */
  readonly history: readonly HistoryView[];
  readonly mails: readonly MailView[];
};

export type QueueFilter = "all" | "overdue" | "waiting" | State;
export type QueueRow = {
  readonly reference: string; readonly names: readonly string[]; readonly email: string; readonly venueName: string; readonly packageName: string;
  readonly date: string; readonly dueDate: string; readonly daysLeft: number; readonly overdue: boolean;
  readonly state: State; readonly guests?: number; readonly mail?: { readonly state: MailView["state"]; readonly why?: string };
  /** What they asked of the desk, and what is not answered yet. */
  readonly asked?: "change" | "draft" | "erase";
  /** What happened last, in a line, and when. */
  readonly last?: string;
  readonly lastAt: string;
};
export type QueueView = {
  readonly rows: readonly QueueRow[];
  readonly counts: Readonly<Record<QueueFilter, number>>;
  /** Where the page before and the page after this one begin; left out where there is none. */
  readonly earlier?: string; readonly later?: string;
  /** A search that found too many tells some of them. */
  readonly found: "all" | "too many";
  readonly today: string;
  /** All venues of the desk. */
  readonly venues: readonly { readonly id: string; readonly name: string }[];
};

export type Arranged = { readonly brief: Brief; readonly result: ArrangeResult; readonly venue: Venue; readonly venueVersion: number };
