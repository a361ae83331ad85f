import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Fragment } from "react";
import { listMailbox } from "@/lib/service";
import { desk } from "@/app/_server/asking";
import { hallSpeech } from "@/app/_server/speech";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { Pairs } from "@/components/ui/pairs";
import { sayMoment } from "@/components/ui/say";

type Props = { readonly params: Promise<{ readonly id: string }> };

export const metadata: Metadata = { title: "One mail – Mailbox" };

/** Addresses in the words become links; those to this house lose the host, so that they open where the page was opened. */
function Linked({ text, origin }: { readonly text: string; readonly origin: string }) {
  return <>{text.split(/(https?:\/\/[^\s<>"]+)/).map((part, i) => (i % 2 === 1 ? <a key={i} href={part.startsWith(`${origin}/`) ? part.slice(origin.length) : part}>{part}</a> : <Fragment key={i}>{part}</Fragment>))}</>;
}

/** The formatted half of a mail, told as words: nothing of it is run. */
const wordsOf = (html: string): string =>
  html.replace(/<(style|head)[\s\S]*?<\/\1>/gi, "").replace(/<a\s[^>]*href="([^"]+)"[^>]*>([\s\S]*?)<\/a>/gi, "$2 ($1)").replace(/<(br|\/p|\/tr|\/h\d|\/li|\/div)[^>]*>/gi, "\n").replace(/<[^>]+>/g, "")
    .replace(/&nbsp;/g, " ").replace(/&lt;/g, "<").replace(/&gt;/g, ">").replace(/&quot;/g, "\"").replace(/&#39;|&apos;/g, "'").replace(/&amp;/g, "&").replace(/[ \t]+/g, " ").replace(/\n\s*\n+/g, "\n\n").trim();

export default async function MailPage({ params }: Props) {
  const { house, actor } = await desk();
  const { id } = await params;
  const seen = await listMailbox(house, actor, {});
  const mail = seen.ok ? seen.value.find((m) => String(m.id) === id) : undefined;
  if (!mail) notFound();
  const speech = await hallSpeech(house, actor);
  return (
    <DeskFrame person={actor.person} here="mailbox" back={{ href: "/desk/mailbox", text: "Mailbox" }}>
      <h1 className="mt-2">{mail.subject}</h1>
      <div className="max-w-[44rem] mt-4"><Pairs pairs={[{ name: "To", value: mail.to }, { name: "When", value: sayMoment(mail.sentAt ?? mail.queuedAt, speech) }]} /></div>
      <div className="sheet max-w-[44rem] mt-4"><div><p className="mail-text"><Linked text={mail.text} origin={house.origin} /></p></div></div>
      <details className="act max-w-[44rem] mt-4"><summary>The formatted half, as words</summary><p className="mail-text pb-4"><Linked text={wordsOf(mail.html)} origin={house.origin} /></p></details>
    </DeskFrame>
  );
}
