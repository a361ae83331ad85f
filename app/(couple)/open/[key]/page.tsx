import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { lookAtLink, theHouse } from "@/lib/service";
import { face } from "@/app/_server/face";
import { LinkEnded } from "@/app/_parts/link-ended";
import { Frame } from "@/components/ui/frame";
import { Names } from "@/components/ui/names";
import { sayDay } from "@/components/ui/say";

type Props = { readonly params: Promise<{ readonly key: string }> };

export async function generateMetadata(): Promise<Metadata> {
  return { title: `Open the link – ${(await face()).name}` };
}

/** The mailed link: looking at it changes nothing and uses nothing up. The button opens it. */
export default async function OpenPage({ params }: Props) {
  const { key } = await params;
  const shown = await face();
  const seen = await lookAtLink(await theHouse(), { key });
  if (!seen.ok) return <Frame house={shown}><LinkEnded why={seen.error.code === "link" ? seen.error.why : "unknown"} linkKey={key} /></Frame>;
  if (seen.value.purpose === "desk") redirect(`/desk/open/${key}`);
  const { names, venueName, date, dueDate } = seen.value;
  return (
    <Frame house={{ ...shown, name: venueName }}>
      {date && <p className="step-line">{sayDay(date, shown.locale)}</p>}
      <h1>{names.length > 0 ? <Names names={names} locale={shown.locale} /> : "The layout of your day"}</h1>
      <div className="prose mt-5">
        <p className="lead">Here you tell {venueName} how your day should be laid, and see at once what fits: tables, aisle, dance floor and all, drawn to scale.</p>
        {dueDate && <p>We need your layout by <b>{sayDay(dueDate, shown.locale)}</b>.</p>}
        <ul>
          <li>Eight short steps, about twenty minutes in all. You need a rough count of your guests; nothing else.</li>
          <li>Each step is saved by itself. Close the page whenever you like; the link in your mail brings you back, on any device.</li>
          <li>“Not sure yet” is an answer. You see up to three layouts, with what each costs, before anything is sent.</li>
          <li>We keep your answers with your booking, to plan this one day. The desk at {venueName} reads them; nobody else does.</li>
        </ul>
      </div>
      <form method="post" action="/open/enter" className="go-row">
        <input type="hidden" name="key" value={key} />
        <button className="btn btn-go" type="submit">Open our day</button>
      </form>
      <p className="note sec mt-3 measure">Opening it puts one cookie in this browser, which keeps you signed in. Nothing else is stored there.</p>
    </Frame>
  );
}
