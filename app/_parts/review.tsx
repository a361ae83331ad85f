import { ANSWER_STEPS } from "@/lib/brief/draft";
import type { BookingView, HistoryView } from "@/lib/service";
import { StateTag } from "@/components/desk/lozenge";
import { Answers } from "@/components/form/answers";
import { saidShown } from "@/components/form/said";
import { isStep, stepTitle } from "@/components/form/steps";
import { shownValues } from "@/components/form/values";
import { sayDay, sayFingerprint, sayLeft, sayMoment } from "@/components/ui/say";

/** Who, when, how many, where it stands: one line under the names. */
export function reviewFacts(b: BookingView) {
  const { venue } = b;
  const last = b.revisions.at(-1);
  const guests = b.brief ? b.brief.guests.adults + b.brief.guests.children : null;
  const settled = b.state === "agreed" || b.state === "closed";
  return (
    <div className="review-facts">
      <p>
        {sayDay(b.date, venue.locale)}, {b.package.name}.{guests !== null && <> <b>{guests} guests.</b></>}
        {last && <> Revision {last.number} sent {sayMoment(last.sentAt, venue)}.</>} {!settled && <>Due {sayDay(b.dueDate, venue.locale)}{b.daysLeft >= 0 || b.overdue ? `, ${sayLeft(b.daysLeft)}` : ""}.</>}
      </p>
      <div className="flex flex-wrap items-baseline gap-x-5 mt-1"><StateTag state={b.state} /><span>Reference <b>{b.reference}</b></span>
        {last && <span>Fingerprint <span className="fingerprint">{sayFingerprint(last.fingerprint)}</span></span>}
      </div>
    </div>
  );
}

/** All answers, folded: the plan says most of it. */
export function BriefInWords({ booking }: { readonly booking: BookingView }) {
  return (
    <section className="section"><h2>Their answers</h2>
      {ANSWER_STEPS.map((step) => (
        <details className="act" key={step} open={booking.revisions.length === 0 && booking.answered.includes(step)}>
          <summary>{stepTitle(step)}{booking.answered.includes(step) ? "" : ": not answered yet"}</summary>
          <Answers answers={saidShown(step, shownValues(booking.draft, step), booking.venue)} />
        </details>
      ))}
    </section>
  );
}

const text = (h: HistoryView, key: string): string => { const v = h.data[key]; return typeof v === "string" || typeof v === "number" ? String(v) : ""; };

/** One deed in words. A word that is not known here is shown as it is kept. */
function deed(h: HistoryView): string {
  const number = text(h, "number") || text(h, "revision");
  switch (h.what) {
    case "added": return "Added to the queue";
    case "link-mailed": return "Link mailed";
    case "opened": return "Opened their link";
    case "saved": { const step = text(h, "step"); return `Answered “${isStep(step) ? stepTitle(step) : step}”`; }
    case "chosen": return `Chose the layout “${text(h, "title")}”`;
    case "sent": return `Sent revision ${number}`;
    case "returned": return `Returned revision ${number}`;
    case "agreed": return `Agreed revision ${number}`;
    case "link-asked": return "Asked for a fresh link";
    case "reminded": return `Reminded, ${Number(text(h, "days")) < 0 ? "" : "due "}${sayLeft(Number(text(h, "days")))}`;
    case "overdue": return "Nothing had come by the due date";
    case "set-by-venue": return `Nothing had come by the due date: “${text(h, "title")}” was set by the venue, not agreed`;
    case "closed": return "Closed";
    case "drafted": return `Made a draft for them: “${text(h, "title")}”`;
    case "guests-set": return `Put in ${text(h, "adults")} adults, for a draft`;
    case "changed": return `Changed what was agreed: revision ${number}`;
    case "amended": return `Adjusted what was sent: revision ${number}`;
    case "adjusted": return `Adjusted “${text(h, "title")}” by hand`;
    case "numbers-told": return `Final numbers: ${text(h, "guests")}`;
    case "numbers-asked": return "Asked for final numbers";
    case "address-changed": return "Changed the mail address";
    case "change-asked": return "Asked for a change of what is agreed";
    case "draft-asked": return "Asked for a draft";
    case "erasure-asked": return "Asked for what is kept of them to be erased";
    case "look-link-made": return "Made a look-only link";
    case "look-link-withdrawn": return "Withdrew a look-only link";
    case "quiet": return "Want no more reminders";
    case "erased": return "Names and words erased";
    default: return h.what.replace(/[-_]/g, " ").replace(/^./, (c) => c.toUpperCase());
  }
}

/** Who did it: of the desk by name, while they are there. */
function doerOf({ who, by }: HistoryView): string {
  if (who === "desk") return by ?? "someone who has left the desk";
  return who === "couple" ? "the couple" : who === "clock" ? "by itself" : who;
}

/** Who did what, newest first. */
export function History({ booking }: { readonly booking: BookingView }) {
  // The same deed many times over, as when a step is saved again and again, is told once, by its last time.
  const rows = [...booking.history].reverse().filter((h, i, all) => i === 0 || deed(h) !== deed(all[i - 1] ?? h) || doerOf(h) !== doerOf(all[i - 1] ?? h));
  return (
    <section className="section"><h2>History</h2>
      {rows.length === 0 ? <p className="small sec mt-3">Nothing yet.</p> : (
        <ol className="history">
          {rows.map((h, i) => (
            <li key={`${h.at}-${i}`}><span>{deed(h)}</span><span className="by"><time dateTime={h.at}>{sayMoment(h.at, booking.venue)}</time>, {doerOf(h)}</span></li>
          ))}
        </ol>
      )}
    </section>
  );
}
