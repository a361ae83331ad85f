import type { QueueRow } from "@/lib/service";
import { Days, DaysHead, spanOf } from "@/components/desk/days";
import { StateTag } from "@/components/desk/lozenge";
import { Names } from "@/components/ui/names";
import { sayDay, sayLeft, sayShortDay } from "@/components/ui/say";

type Group = { readonly head: string; readonly rows: readonly QueueRow[] };
type Props = { readonly groups: readonly Group[]; readonly rows: readonly QueueRow[]; readonly today: string; readonly locale: string; /** Name each booking's venue. */ readonly venues: boolean };

/** What happened last, in a line; a mail that did not arrive outweighs the rest. */
function lastOf(row: QueueRow): string {
  if (row.mail?.state === "failed") return `Their mail did not arrive${row.mail.why ? `: ${row.mail.why}` : ""}.`;
  return row.last ?? (row.mail?.state === "queued" ? "Their link is about to be mailed." : "");
}

function todoOf(row: QueueRow): { readonly href: string; readonly text: string } | null {
  if (row.mail?.state === "failed") return { href: `/desk/bookings/${row.reference}#mail`, text: "Mail again" };
  if (row.asked === "change") return { href: `/desk/bookings/${row.reference}/change`, text: "Answer their change" };
  if (row.asked === "erase" && row.state !== "closed") return { href: `/desk/bookings/${row.reference}#asked-head`, text: "Erase what they ask for" };
  if (row.asked === "draft") return { href: `/desk/bookings/${row.reference}/draft`, text: "Draft for them" };
  if (row.state === "invited" && !row.mail) return { href: `/desk/bookings/${row.reference}#mail`, text: "Mail their link" };
  if (row.state === "sent") return { href: `/desk/bookings/${row.reference}`, text: "Review" };
  return null;
}

export function QueueTable({ groups, rows, today, locale, venues }: Props) {
  const open = rows.filter((r) => r.state !== "closed");
  const span = spanOf(open.map((r) => ({ today, due: r.dueDate, day: r.date })), today);
  return (
    <table className="queue">
      <caption className="hidden-words">Bookings by the day their layout is due</caption>
      <colgroup><col className="c-due" /><col className="c-who" /><col className="c-guests" /><col className="c-days" /><col /><col className="c-todo" /></colgroup>
      <thead>
        <tr>
          <th scope="col">Due</th><th scope="col">Couple and day</th><th scope="col" className="figures">Guests</th>
          <th scope="col" className="days"><span className="hidden-words">From due date to day</span><DaysHead span={span} today={today} /></th>
          <th scope="col">State, and what happened last</th><th scope="col">Yours to do</th>
        </tr>
      </thead>
      {groups.map((g) => (
        <tbody key={g.head}>
          <tr className="group"><th scope="rowgroup" colSpan={6}>{g.head}<span className="n">{g.rows.length}</span></th></tr>
          {g.rows.map((r) => {
            const settled = r.state === "agreed" || r.state === "closed";
            const todo = todoOf(r);
            return (
              <tr key={r.reference}>
                <td className="due"><b>{sayShortDay(r.dueDate, locale)}</b> <span className="sec">{settled || (r.daysLeft < 0 && !r.overdue) ? "" : sayLeft(r.daysLeft)}</span></td>
                <td className="who"><a href={`/desk/bookings/${r.reference}`}><Names names={r.names} locale={locale} /></a><span className="sec">{sayDay(r.date, locale)}, {r.packageName}{venues ? `, ${r.venueName}` : ""}</span></td>
                <td className="figures">{r.guests !== undefined && <><b>{r.guests}</b><span className="hidden-words"> guests</span></>}</td>
                <td className="days">{settled ? null : <Days span={span} today={today} due={r.dueDate} day={r.date} />}</td>
                <td><StateTag state={r.state} /><span className="sec">{lastOf(r)}</span></td>
                <td className="todo">{todo ? <a href={todo.href}>{todo.text}<span className="hidden-words">: {r.names.join(", ")}</span></a> : settled ? null : <span className="sec">with them</span>}</td>
              </tr>
            );
          })}
        </tbody>
      ))}
    </table>
  );
}
