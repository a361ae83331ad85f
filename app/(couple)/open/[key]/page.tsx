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
  const { name, say } = await face();
  return { title: `${say("Open the link")} – ${name}` };
}

/** The mailed link: looking at it changes nothing and uses nothing up. The button opens it. */
export default async function OpenPage({ params }: Props) {
  const { key } = await params;
  const shown = await face();
  const { say } = shown;
  const seen = await lookAtLink(await theHouse(), { key });
  // The desk's door knows which browser asked for a link.
  if (!seen.ok && seen.error.code === "link" && seen.error.why === "elsewhere") redirect(`/desk/open/${key}`);
  if (!seen.ok) return <Frame house={shown} say={say} choose="/words?from=/open"><LinkEnded say={say} why={seen.error.code === "link" && seen.error.why !== "elsewhere" ? seen.error.why : "unknown"} linkKey={key} /></Frame>;
  if (seen.value.purpose === "desk") redirect(`/desk/open/${key}`);
  const { names, venueName, date, dueDate, purpose } = seen.value;
  return (
    <Frame house={{ ...shown, name: venueName }} say={say} choose={`/words?from=/open/${encodeURIComponent(key)}`}>
      {date && <p className="step-line">{sayDay(date, shown.locale)}</p>}
      <h1>{names.length > 0 ? <Names names={names} locale={shown.locale} /> : say("The layout of your day")}</h1>
      {purpose === "look" ? (
        <div className="prose mt-5">
          <p className="lead">{say("They would like you to see how their day at {venue} is laid: the plans, and what they have answered. You can look as often as you like, and change nothing.", { venue: venueName })}</p>
        </div>
      ) : (
      <div className="prose mt-5">
        <p className="lead">{say("Here you tell {venue} how your day should be laid, and see at once what fits: tables, aisle, dance floor and all, drawn to scale.", { venue: venueName })}</p>
        {dueDate && <p>{say("We need your layout by {day}.", { day: sayDay(dueDate, shown.locale) })}</p>}
        <ul>
          <li>{say("Eight short steps, about twenty minutes in all. You need a rough count of your guests; nothing else.")}</li>
          <li>{say("Each step is saved when you press its button. Stop after any of them; the link in your mail brings you back, on any device.")}</li>
          <li>{say("“Not sure yet” is an answer. You see up to three layouts, with what each costs, before anything is sent.")}</li>
          <li>{say("We keep your answers with your booking, to plan this one day. The desk at {venue} reads them, and whoever you give a link to; nobody else does.", { venue: venueName })}</li>
        </ul>
      </div>
      )}
      <form method="post" action="/open/enter" className="go-row">
        <input type="hidden" name="key" value={key} />
        <button className="btn btn-go" type="submit">{purpose === "look" ? say("Look at their day") : say("Open our day")}</button>
      </form>
      <p className="note sec mt-3 measure">{say("Opening it puts one cookie in this browser, which keeps you signed in. Nothing else is stored there unless you choose a language.")}</p>
    </Frame>
  );
}
