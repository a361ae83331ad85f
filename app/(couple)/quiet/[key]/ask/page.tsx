import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { lookAtQuiet, theHouse } from "@/lib/service";
import { face } from "@/app/_server/face";
import { Frame } from "@/components/ui/frame";

type Props = { readonly params: Promise<{ readonly key: string }> };
export const metadata: Metadata = { title: "No more reminders" };

/** Looking changes nothing; the button ends the reminders. */
export default async function QuietPage({ params }: Props) {
  const { key } = await params;
  const seen = await lookAtQuiet(await theHouse(), { key });
  if (seen.ok && seen.value.already) redirect(`/quiet/${encodeURIComponent(key)}/ended`);
  return (
    <Frame house={await face()}>
      {seen.ok ? (
        <>
          <h1>No more reminders?</h1>
          <p className="lead measure mt-4">We remind you by mail some days before your layout is due. You can have these stopped. The due date stays, and mails about what you send still come.</p>
          <form method="post" action={`/quiet/${key}`} className="go-row">
            <input type="hidden" name="from" value="page" />
            <button className="btn btn-go" type="submit">Send no more reminders</button>
          </form>
        </>
      ) : (
        <>
          <h1>This link does nothing any more</h1>
          <p className="lead measure mt-4">It has run out, or a part of it was lost on the way from the mail. Write to the venue if you want no more reminders.</p>
        </>
      )}
    </Frame>
  );
}
