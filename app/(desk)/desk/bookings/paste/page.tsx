import type { Metadata } from "next";
import { listVenues, lookAtPasted, type PastedRow } from "@/lib/service";
import { asked, desk, type Search } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { heldFor } from "@/app/_server/kept";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { Checked } from "@/components/form/page/checked";
import { oneOf } from "@/components/form/values";
import { Choices } from "@/components/ui/choices";
import { AreaField } from "@/components/ui/field";
import { Names } from "@/components/ui/names";
import { Scroll } from "@/components/ui/scroll";
import { counted, sayDay } from "@/components/ui/say";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { actor } = await desk();
  const kept = heldFor(await asked(searchParams, "kept"), "paste", actor.person);
  return { title: `${kept && kept.errors.length > 0 ? "Error: " : ""}Paste a list – ${(await face()).name}` };
}

/** Many bookings at once: pasted, looked at row by row, then added all together. */
export default async function PastePage({ searchParams }: Props) {
  const { house, actor } = await desk();
  const { locale } = await face();
  const kept = heldFor(await asked(searchParams, "kept"), "paste", actor.person);
  const text = oneOf(kept?.values ?? {}, "list");
  const seen = text === "" ? null : await lookAtPasted(house, actor, { text });
  const pasted = seen?.ok ? seen.value : null;
  const venues = await listVenues(house, actor, {});
  const packages = (venues.ok ? venues.value : []).flatMap((v) => v.venue.packages.map((p) => p.name));
  return (
    <DeskFrame person={actor.person} here="new" back={{ href: "/desk/bookings/new", text: "Add a booking" }}>
      <Checked errors={kept?.errors ?? []}>
        <h1 className="mt-2">Paste a list of bookings</h1>
        <p className="lead measure mt-4">From a spreadsheet, with its heading row. You see what each row would add before anything is added or mailed.</p>
        {pasted && (
          <section className="section" aria-labelledby="seen-head">
            <h2 id="seen-head">{pasted.good === 0 ? "No row can be added yet" : `${counted(pasted.good, "booking", "bookings")} can be added`}{pasted.rows.length > pasted.good ? `; ${counted(pasted.rows.length - pasted.good, "row needs", "rows need")} another look` : ""}</h2>
            {pasted.left.length > 0 && <p className="small sec mt-3">Columns left out: {pasted.left.join(", ")}.</p>}
            <Scroll label="Rows of the list"><table className="stacked mt-4">
              <thead><tr><th scope="col">Line</th><th scope="col">Couple</th><th scope="col">Day, and when the layout is due</th><th scope="col">Package</th><th scope="col" className="figures">Guests</th><th scope="col">What happens</th></tr></thead>
              <tbody>{[...pasted.rows].sort((a, b) => Number(a.good !== undefined) - Number(b.good !== undefined) || a.line - b.line).map((r) => <RowOf key={r.line} row={r} locale={locale} />)}</tbody>
            </table></Scroll>
          </section>
        )}
        {pasted && pasted.good > 0 && (
          <form method="post" action="/desk/bookings/paste/add" className="max-w-[44rem]">
            <input type="hidden" name="list" value={text} /><input type="hidden" name="good" value={pasted.good} />
            <div className="mt-8"><Choices name="mail" legend="Mail their links" chosen={["yes"]} two options={[{ value: "yes", name: "Now" }, { value: "no", name: "Later, from each booking" }]} /></div>
            <div className="go-row"><button className="btn btn-go" type="submit">Add {counted(pasted.good, "booking", "bookings")}</button></div>
          </form>
        )}
        <section className="section max-w-[50rem]"><h2>{pasted ? "The list" : "Your list"}</h2>
          <form method="post" action="/desk/bookings/paste/look" noValidate>
            <AreaField name="list" label="The rows, with their headings" value={text} errors={kept?.errors ?? []} rows={12}
              hint={<>Columns: names, mail, date, package and, if you have them, guests. Commas, semicolons or tabs between. Packages: {packages.join(", ")}.</>} />
            <div className="go-row"><button className={pasted && pasted.good > 0 ? "btn" : "btn btn-go"} type="submit">{pasted ? "Look at it again" : "Look at what it would add"}</button></div>
          </form>
        </section>
      </Checked>
    </DeskFrame>
  );
}

function RowOf({ row, locale }: { readonly row: PastedRow; readonly locale: string }) {
  const { good, cells } = row;
  return (
    <tr>
      <td>{row.line}</td>
      <th scope="row">{good ? <Names names={good.names} locale={locale} /> : (cells.names ?? "–")}<span className="sec block small font-normal">{good?.email ?? cells.email ?? ""}</span></th>
      <td>{good ? <>{sayDay(good.date, locale)}<span className="sec block small">due {sayDay(good.dueDate, locale)}</span></> : (cells.date ?? "–")}</td>
      <td>{good?.packageName ?? cells.package ?? "–"}</td>
      <td className="figures">{good ? (good.guests ?? "") : (cells.guests ?? "")}</td>
      <td>{good ? "Is added" : row.faults.map((f) => <span key={f.field + f.message} className="field-error">{f.message}</span>)}</td>
    </tr>
  );
}
