import { z } from "zod";
import { fail, ok, type Result } from "../base";
import { LIMITS } from "../base/schema";
import { DISPLAYS, EXTRAS, WISH_WHAT, WISH_WHERE, type BriefFile } from "./schema";

/** The couple's answers on their way to a brief: one entry a step that was saved, "not sure yet" left out of it. */

const whole = (most: number, message: string) =>
  z.preprocess(
    (raw) => (typeof raw === "string" && /^\s*\d{1,9}\s*$/.test(raw) ? Number(raw) : unsure(raw) ? undefined : raw),
    z.number(message).int(message).min(0, message).max(most, message).optional(),
  );
const count = whole(LIMITS.guests, `Type a whole number from 0 to ${LIMITS.guests}, or leave it empty if you are not sure yet.`);
const adults = whole(LIMITS.guests, `Type a whole number from 1 to ${LIMITS.guests}, or leave it empty if you are not sure yet.`);
const percent = whole(100, "Type a share from 0 to 100, or leave it empty if you are not sure yet.");

const oneOf = <const T extends readonly [string, ...string[]]>(values: T) =>
  z.preprocess((raw) => (unsure(raw) ? undefined : raw), z.enum(values, "Choose one of the answers shown.").optional());
const yesNo = z.preprocess(
  (raw) => (raw === "yes" ? true : raw === "no" ? false : unsure(raw) ? undefined : raw),
  z.boolean("Choose yes, no, or not sure yet.").optional(),
);
const roomId = z.preprocess((raw) => (unsure(raw) ? undefined : raw), z.string().max(80).regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "Choose one of the rooms shown.").optional());
const many = <const T extends readonly [string, ...string[]]>(values: T) =>
  z.preprocess((raw) => [...new Set(raw === undefined || raw === "" ? [] : Array.isArray(raw) ? raw.filter((one) => one !== "") : [raw])],
    z.array(z.enum(values, "Choose from the list shown.")).readonly());
const perTable = z.preprocess(
  (raw) => (typeof raw === "string" && /^\s*\d{1,3}\s*$/.test(raw) ? Number(raw) : unsure(raw) ? undefined : raw),
  z.union([z.enum(["comfort", "most"]), z.number().int().min(1).max(100)], "Choose comfort or most, or type a number from 1 to 100.").optional(),
);

const wish = z.string().transform((text, ctx) => {
  const [put, how, where, more] = text.trim().split(/\s+/);
  const subject = WISH_WHAT.find((one) => one === put);
  const object = WISH_WHERE.find((one) => one === where);
  if (subject && object && more === undefined) {
    if (how === "near") return { put: subject, near: object };
    if (how === "away-from") return { put: subject, "away-from": object };
    if (how === "in-sight-of") return { put: subject, "in-sight-of": object };
  }
  ctx.addIssue({ code: "custom", message: "Choose from the wishes shown." });
  return z.NEVER;
});
const wishes = z.preprocess(
  (raw) => (raw === undefined ? [] : Array.isArray(raw) ? raw : [raw]).filter((one) => !unsure(one)),
  z.array(wish).max(50).readonly(),
).optional();

/** Line ends as one sign; control characters, which come with pasting and can be neither drawn nor printed, dropped. */
function printable(raw: string): string {
  return raw.replace(/\r\n?/g, "\n").replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, "").trim();
}

function unsure(raw: unknown): boolean {
  return raw === undefined || raw === null || raw === "unsure" || (typeof raw === "string" && raw.trim() === "");
}

/** The fields of each step's form, by name; an empty field or the word `unsure` means "not sure yet". */
export const STEP_SCHEMAS = {
  guests: z.object({
    adults: adults.refine((n) => n === undefined || n >= 1, "There must be at least one adult."),
    children: count, highChairs: count, wheelchairs: count, suppliers: count, quiet: count, ceremony: count, evening: count,
  }).superRefine((g, ctx) => {
    const issue = (path: string, message: string) => ctx.addIssue({ code: "custom", path: [path], message });
    const children = g.children ?? 0;
    if ((g.highChairs ?? 0) > children) issue("highChairs", "High chairs cannot outnumber the children.");
    if (g.adults === undefined) return;
    const all = g.adults + children;
    if (all > LIMITS.guests) issue("children", `Adults and children together can be at most ${LIMITS.guests}.`);
    if ((g.wheelchairs ?? 0) > all) issue("wheelchairs", "Wheelchair places cannot outnumber the guests.");
    if ((g.quiet ?? 0) > all) issue("quiet", "Quiet places cannot outnumber the guests.");
  }),
  ceremony: z.object({
    here: yesNo, room: roomId,
    seating: oneOf(["rows", "curve", "standing", "at-tables"]), aisle: oneOf(["centre", "sides", "none"]),
  }),
  meal: z.object({
    service: oneOf(["plated", "buffet", "sharing", "stations", "none"]),
    tables: oneOf(["rounds", "long", "mixed", "any"]),
    form: oneOf(["grid", "u", "e", "t", "hollow-square", "spine", "diagonal", "any"]),
    top: oneOf(["pair", "one-sided", "round", "none"]),
    perTable, room: roomId, turnover: yesNo, drape: oneOf(["any", "yes", "no"]),
  }),
  /** `dancing` is typed as a share of the guests in hundredths, 0 to 100. */
  music: z.object({
    by: oneOf(["dj", "band", "playlist", "none"]), players: whole(100, "Type a whole number from 0 to 100."),
    dancing: percent, atCeremony: yesNo,
  }),
  /** A wish is written "cake near window", "dj away-from door", "top in-sight-of dance-floor"; as many as are sent under the one name. */
  displays: z.object({ displays: many(DISPLAYS), wishes }),
  extras: z.object({
    extras: many(EXTRAS),
    notes: z.preprocess((raw) => (typeof raw === "string" ? printable(raw) : raw ?? ""), z.string().max(10_000, "Keep the notes under 10,000 characters.")),
  }),
} as const;

/** The steps that ask something, in their order; "layout" and "check" follow them. */
export const ANSWER_STEPS = ["guests", "ceremony", "meal", "music", "displays", "extras"] as const;
export type StepId = (typeof ANSWER_STEPS)[number];
export const isStep = (text: string): text is StepId => ANSWER_STEPS.some((step) => step === text);

export type Draft = { readonly [S in StepId]?: z.output<(typeof STEP_SCHEMAS)[S]> };
/** What a form sends: text by field name, a list where several boxes share a name. */
export type FormValues = Readonly<Record<string, string | readonly string[] | undefined>>;
export type FieldError = { readonly field: string; readonly message: string };

/** Reads one step's form. Errors name the field. */
export function readStep<S extends StepId>(step: S, values: FormValues): Result<Draft[S], readonly FieldError[]> {
  const read = STEP_SCHEMAS[step].safeParse(values);
  if (read.success) return ok(read.data as Draft[S]);
  return fail(read.error.issues.map((issue) => ({ field: String(issue.path[0] ?? ""), message: issue.message })));
}

/** What a draft needs from the booking to become a brief. */
export type DraftFacts = { readonly package: string; readonly date: string; readonly couple: readonly string[]; readonly reference: string };

/** The answers so far as a BRIEF file, with nothing taken that was not said; undefined until the number of adults is known. */
export function briefFileOfDraft(draft: Draft, facts: DraftFacts): BriefFile | undefined {
  const { guests, ceremony, meal, music, displays, extras } = draft;
  if (guests?.adults === undefined) return undefined;
  const { turnover, drape, ...laid } = meal ?? {};
  const { dancing, ...played } = music ?? {};
  const file: BriefFile = {
    format: "marquetry.brief/1", package: facts.package, date: facts.date, reference: facts.reference,
    couple: facts.couple.length > 0 ? facts.couple.slice(0, 4) : undefined,
    guests: { ...guests, adults: guests.adults }, ceremony, meal: meal && laid, turnover, drape: drape ?? undefined,
    music: music && { ...played, dancing: dancing === undefined ? undefined : dancing / 100 },
    displays: displays?.displays, wishes: displays?.wishes?.length ? displays.wishes : undefined,
    extras: extras?.extras, notes: extras?.notes || undefined,
  };
  return withoutGaps(file);
}

/** Leaves out every undefined field, at every depth: an answer that is not there is not there in the file either. */
function withoutGaps<T>(value: T): T {
  if (Array.isArray(value) || value === null || typeof value !== "object") return value;
  const kept = Object.entries(value).filter(([, one]) => one !== undefined).map(([key, one]) => [key, withoutGaps(one)]);
  return Object.fromEntries(kept) as T;
}
