import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { listMailbox } from "@/lib/service";
import { desk } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { Scroll } from "@/components/ui/scroll";
import { sayMoment, type Speech } from "@/components/ui/say";
import { hallSpeech } from "@/app/_server/speech";

export async function generateMetadata(): Promise<Metadata> {
  return { title: `Mailbox – ${(await face()).name}` };
}

const WORD = { queued: "Waiting to go", sent: "Delivered here", failed: "Failed" } as const;

/** The demonstration's mailbox: what would have gone out, newest first. */
export default async function MailboxPage() {
  const { house, actor } = await desk();
  const seen = await listMailbox(house, actor, {});
  if (!seen.ok) notFound();
  const speech: Speech = await hallSpeech(house, actor);
  return (
    <DeskFrame person={actor.person} here="mailbox">
      <h1 className="mt-4">Mailbox</h1>
      <p className="lead measure mt-3">Every mail of this demonstration ends here instead of going out.</p>
      {seen.value.length === 0 ? <p className="mt-5">No mail yet. Add a booking, and its link appears here.</p> : (
        <Scroll label="Mails"><table className="stacked mt-5">
          <thead><tr><th scope="col">To</th><th scope="col">About</th><th scope="col">When</th><th scope="col">State</th></tr></thead>
          <tbody>{seen.value.map((m) => (
            <tr key={m.id}>
              <td className="wide">{m.to}</td>
              <th scope="row"><a href={`/desk/mailbox/${m.id}`}>{m.subject}</a></th>
              <td className="whitespace-nowrap">{sayMoment(m.sentAt ?? m.queuedAt, speech)}</td>
              <td className={m.why ? undefined : "whitespace-nowrap"}>{WORD[m.state]}{m.why ? `: ${m.why}` : ""}</td>
            </tr>
          ))}</tbody>
        </table></Scroll>
      )}
    </DeskFrame>
  );
}
