import type { Metadata } from "next";
import { face } from "./_server/face";
import { Frame } from "@/components/ui/frame";

export async function generateMetadata(): Promise<Metadata> {
  return { title: `Layouts for the day – ${(await face()).name}` };
}

export default async function HomePage() {
  const shown = await face();
  return (
    <Frame house={shown}>
      <h1 className="mt-4">The room, laid for your day</h1>
      <div className="prose mt-5">
        <p className="lead">Couples who have booked {shown.name} say here what their day needs, see which layouts fit, drawn to scale and priced, and send the one they choose.</p>
        <p>If you have booked: open the link in the mail we sent you. <a href="/open">The mail is gone?</a></p>
        <p>If you work here: <a href="/desk">go to the desk</a>.</p>
        {shown.demo && <p className="sec">This is a demonstration. Its mails go nowhere: they stand in the <a href="/desk/mailbox">mailbox on the desk</a>.</p>}
      </div>
    </Frame>
  );
}
