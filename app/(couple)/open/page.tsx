import type { Metadata } from "next";
import { asked, type Search } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { Frame } from "@/components/ui/frame";
import { TextField } from "@/components/ui/field";

export async function generateMetadata(): Promise<Metadata> {
  return { title: `Your link – ${(await face()).name}` };
}

/** For anyone who comes to the couple's pages without a visit that is open. */
export default async function OpenAskPage({ searchParams }: { readonly searchParams: Search }) {
  const shown = await face();
  const why = await asked(searchParams, "why");
  return (
    <Frame house={shown}>
      <h1 className="mt-4">{why === "ended" ? "Your visit has ended" : why === "mailed" ? "Look in your mail" : "Open the link in your mail"}</h1>
      <div className="prose mt-4">
        {why === "ended" && <p className="lead">What you last typed is held for a day in this browser. Open the link in your mail, here, and it is shown again.</p>}
        {why === "mailed" && <p className="lead" role="status">If the booking is known, a fresh link is on its way to the address that stands in it. It takes a minute or two; look among unwanted mail as well.</p>}
        {why !== "ended" && why !== "mailed" && <p className="lead">These pages belong to one booking. The link in the mail from {shown.name} opens them.</p>}
      </div>
      <form method="post" action="/open/ask" noValidate className="section max-w-[34rem]">
        <h2>The mail is gone?</h2>
        <TextField name="email" type="email" inputMode="email" autoComplete="email" label="Your mail address" hint="The one you gave when you booked. We mail a fresh link to it if it belongs to a booking." errors={[]} />
        <div className="go-row"><button className="btn" type="submit">Mail a fresh link</button></div>
      </form>
    </Frame>
  );
}
