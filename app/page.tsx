import type { Metadata } from "next";
import { face } from "./_server/face";
import { Frame } from "@/components/ui/frame";

export async function generateMetadata(): Promise<Metadata> {
  const { name, say } = await face();
  return { title: `${say("Layouts for the day")} – ${name}` };
}

export default async function HomePage() {
  const shown = await face();
  const { say } = shown;
  return (
    <Frame house={shown} say={say} choose="/words?from=/">
      <h1 className="mt-4">{say("The room, laid for your day")}</h1>
      <div className="prose mt-5">
        <p className="lead">{say("Couples who have booked {venue} say here what their day needs, see which layouts fit, drawn to scale and priced, and send the one they choose.", { venue: shown.name })}</p>
        <p>{say("If you have booked: open the link in the mail we sent you.")} <a href="/open">{say("The mail is gone?")}</a></p>
        <p>{say("If you work here:")} <a href="/desk">{say("go to the desk")}</a>.</p>
        {shown.demo && <p className="sec">{say("This is a demonstration. Its mails go nowhere: they stand at the desk, in the")} <a href="/desk/mailbox">{say("mailbox")}</a>.</p>}
      </div>
    </Frame>
  );
}
