import type { Metadata } from "next";
import { listQueue, type QueueFilter, type QueueRow } from "@/lib/service";
import { asked, desk, type Search } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { QueueTable } from "@/app/_parts/queue-table";
import { DaysKey } from "@/components/desk/days";
import { counted, inWords, capital } from "@/components/ui/say";

export async function generateMetadata(): Promise<Metadata> {
  return { title: `Queue – ${(await face()).name}` };
}

const FILTERS: readonly { readonly id: QueueFilter; readonly text: string }[] = [
  { id: "all", text: "All" }, { id: "waiting", text: "Yours to do" }, { id: "overdue", text: "Late" }, { id: "invited", text: "Invited" }, { id: "started", text: "Started" },
  { id: "sent", text: "Sent" }, { id: "returned", text: "Returned" }, { id: "agreed", text: "Agreed" }, { id: "closed", text: "Closed" },
];
const isFilter = (text: string | undefined): text is QueueFilter => FILTERS.some((f) => f.id === text);

const EMPTY: Readonly<Record<QueueFilter, string>> = {
  all: "No bookings yet. Add the first one, and its link is mailed to the couple.",
  waiting: "Nothing waits for you. What couples send next appears here.",
  overdue: "Nobody is late.", invited: "Everyone who was invited has begun.", started: "Nobody is in the middle of their answers.",
  sent: "Nothing is sent and not yet answered.", returned: "Nothing is back with a couple.", agreed: "Nothing is agreed yet.", closed: "No booking is closed.",
};

const settled = (r: QueueRow): boolean => r.state === "agreed" || r.state === "closed";

/** Late, due within a week, later; what is settled last. What came in is not late any more, whatever the date. */
function groupsOf(rows: readonly QueueRow[]) {
  const open = rows.filter((r) => !settled(r));
  return [
    { head: "Late", rows: open.filter((r) => r.overdue) },
    { head: "Came in, and past the due date", rows: open.filter((r) => r.daysLeft < 0 && !r.overdue) },
    { head: "Due this week", rows: open.filter((r) => r.daysLeft >= 0 && r.daysLeft <= 7) },
    { head: "Later", rows: open.filter((r) => r.daysLeft > 7) },
    { head: "Agreed, nothing to do", rows: rows.filter((r) => r.state === "agreed") },
    { head: "Closed", rows: rows.filter((r) => r.state === "closed") },
  ].filter((g) => g.rows.length > 0);
}

export default async function QueuePage({ searchParams }: { readonly searchParams: Search }) {
  const { house, actor } = await desk();
  const { locale } = await face();
  const wanted = await asked(searchParams, "show");
  const filter: QueueFilter = isFilter(wanted) ? wanted : "all";
  const search = (await asked(searchParams, "find"))?.trim().slice(0, 200) ?? "";
  const at = (await asked(searchParams, "venue"))?.slice(0, 80);
  const sort = (await asked(searchParams, "sort")) === "day" ? "day" : "due";
  const added = Number(await asked(searchParams, "added"));
  const seen = await listQueue(house, actor, { filter, search: search || undefined, venue: at, sort, from: await asked(searchParams, "from") });
  if (!seen.ok) return <DeskFrame person={actor.person} here="queue"><h1 className="mt-4">Queue</h1><p className="lead mt-4">The queue cannot be read just now.</p></DeskFrame>;
  const { rows, counts, today, venues, earlier, later, found } = seen.value;
  const lead = counts.waiting === 0 && counts.overdue === 0
    ? "Nothing waits for you."
    : `${counts.waiting === 0 ? "Nothing waits" : `${capital(inWords(counts.waiting))} ${counts.waiting === 1 ? "waits" : "wait"}`} for your review; ${counts.overdue === 0 ? "nobody is late" : `${inWords(counts.overdue)} ${counts.overdue === 1 ? "is" : "are"} late`}.`;
  const address = (id: QueueFilter, venue = at, more: { readonly from?: string; readonly sort?: "due" | "day" } = {}): string => {
    const by = more.sort ?? sort;
    const q = new URLSearchParams({ ...(venue ? { venue } : {}), ...(id === "all" ? {} : { show: id }), ...(search ? { find: search } : {}), ...(by === "day" ? { sort: "day" } : {}), ...(more.from ? { from: more.from } : {}) }).toString();
    return q ? `/desk?${q}` : "/desk";
  };
  return (
    <DeskFrame person={actor.person} here="queue">
      <div className="queue-head"><h1>Queue</h1><p className="lead">{lead}</p></div>
      {added > 0 && <p className="mb-4" role="status">{counted(added, "booking is", "bookings are")} added.</p>}
      {venues.length > 1 && (
        <nav className="scenes-of mt-3" aria-label="Venue">
          <a href={address(filter, "")} aria-current={at ? undefined : "true"}>All venues</a>
          {venues.map((v) => <a key={v.id} href={address(filter, v.id)} aria-current={at === v.id ? "true" : undefined}>{v.name}</a>)}
        </nav>
      )}
      <div className="filters">
        <nav aria-label="Show">
          <ul>{FILTERS.filter((f) => f.id === "all" || f.id === filter || counts[f.id] > 0).map((f) => <li key={f.id}><a href={address(f.id)} aria-current={f.id === filter ? "true" : undefined}>{f.text} <span>{counts[f.id]}</span></a></li>)}</ul>
        </nav>
        <form className="find" role="search" method="get" action="/desk">
          {at && <input type="hidden" name="venue" value={at} />}
          {filter !== "all" && <input type="hidden" name="show" value={filter} />}
          {sort === "day" && <input type="hidden" name="sort" value="day" />}
          <label htmlFor="find">Find</label>
          <input id="find" name="find" type="search" defaultValue={search} aria-describedby="find-hint" autoComplete="off" />
          <span id="find-hint" className="hidden-words">A name, a reference or a mail address</span>
          <button className="btn" type="submit">Find</button>
        </form>
      </div>
      {search && <p className="small sec" role="status">{found === "too many" ? `More bookings than can be shown are found for “${search}”: type more of the name.` : `${counted(counts[filter], "booking", "bookings")} for “${search}”.`} <a href={at ? `/desk?venue=${encodeURIComponent(at)}` : "/desk"}>Show all again</a></p>}
      {rows.length === 0
        ? <p className="lead measure mt-6">{search ? "No booking has that name, reference or address." : EMPTY[filter]} {filter === "all" && !search && <a href="/desk/bookings/new">Add a booking</a>}</p>
        : <><QueueTable groups={groupsOf(rows)} rows={rows} today={today} locale={locale} venues={venues.length > 1 && !at} />
          {(earlier ?? later) && (
            <nav className="pages-of" aria-label="Pages of the queue">
              {earlier && <a href={address(filter, at)}>First</a>}
              {earlier && <a href={address(filter, at, { from: earlier })} rel="prev">Earlier</a>}
              <span>{rows.length} of {counts[filter]}</span>
              {later && <a href={address(filter, at, { from: later })} rel="next">Later</a>}
              {later && <a href={address(filter, at, { from: "last" })}>Last</a>}
            </nav>
          )}
          <p className="note sec mt-5">{sort === "due" ? <>By due date. <a href={address(filter, at, { sort: "day" })}>Sort by the day itself</a></> : <>By the day itself. <a href={address(filter, at, { sort: "due" })}>Sort by due date</a></>}</p>
          <DaysKey /></>}
    </DeskFrame>
  );
}
