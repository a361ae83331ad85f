import type { Metadata } from "next";
import { asked, type Search } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { Frame } from "@/components/ui/frame";
import { TextField } from "@/components/ui/field";

export async function generateMetadata(): Promise<Metadata> {
  const { name, say } = await face();
  return { title: `${say("Your link")} – ${name}` };
}

/** For anyone who comes to the couple's pages without a visit that is open. */
export default async function OpenAskPage({ searchParams }: { readonly searchParams: Search }) {
  const shown = await face();
  const { say } = shown;
  const why = await asked(searchParams, "why");
  return (
    <Frame house={shown} say={say} choose="/words?from=/open">
      <h1 className="mt-4">{why === "ended" ? say("Your visit has ended") : why === "mailed" ? say("Look in your mail") : why === "look" ? say("This link shows nothing any more") : say("Open the link in your mail")}</h1>
      <div className="prose mt-4">
        {why === "ended" && <p className="lead">{say("What you last typed is held for a day in this browser. Open the link in your mail, here, and it is shown again.")}</p>}
        {why === "mailed" && <p className="lead" role="status">{say("If the booking is known, a fresh link is on its way to the address that stands in it. It takes a minute or two; look among unwanted mail as well.")}</p>}
        {why === "look" && <p className="lead">{say("The couple have withdrawn it, or it has run out. Ask them for another.")}</p>}
        {why !== "ended" && why !== "mailed" && why !== "look" && <p className="lead">{say("These pages belong to one booking. The link in the mail from {venue} opens them.", { venue: shown.name })}</p>}
      </div>
      <form method="post" action="/open/ask" noValidate className="section max-w-[34rem]">
        <h2>{say("The mail is gone?")}</h2>
        <TextField name="email" type="email" inputMode="email" autoComplete="email" label={say("Your mail address")} hint={say("The one you gave when you booked. We mail a fresh link to it if it belongs to a booking.")} errors={[]} />
        <div className="go-row"><button className="btn" type="submit">{say("Mail a fresh link")}</button></div>
      </form>
    </Frame>
  );
}
