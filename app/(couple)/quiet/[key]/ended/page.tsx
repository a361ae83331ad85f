import type { Metadata } from "next";
import { face } from "@/app/_server/face";
import { Frame } from "@/components/ui/frame";

export const metadata: Metadata = { title: "No more reminders" };

export default async function EndedPage() {
  return (
    <Frame house={await face()}>
      <h1>No more reminders will be sent</h1>
      <p className="lead measure mt-4">Your layout is still due by its day. The link in your other mails opens it, as before.</p>
    </Frame>
  );
}
