import type { Metadata } from "next";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import { browserOf, lookAtLink, theHouse } from "@/lib/service";
import { face } from "@/app/_server/face";
import { Frame } from "@/components/ui/frame";

type Props = { readonly params: Promise<{ readonly key: string }> };

export async function generateMetadata(): Promise<Metadata> {
  return { title: `Open the desk – ${(await face()).name}` };
}

/** Looking at the link uses nothing up; the button signs in. */
export default async function DeskLinkPage({ params }: Props) {
  const { key } = await params;
  const shown = await face();
  const house = await theHouse(), seen = await lookAtLink(house, { key, browser: browserOf(house, (await headers()).get("cookie")) });
  if (!seen.ok && seen.error.code === "link" && seen.error.why === "elsewhere") redirect("/desk/open?why=elsewhere");
  if (!seen.ok || seen.value.purpose !== "desk") redirect("/desk/open?why=link");
  return (
    <Frame house={shown}>
      <h1 className="mt-4">The desk of {seen.value.venueName}</h1>
      <p className="lead measure mt-4">The queue of bookings, their proposals, and the venue’s own facts. The link signs you in on this browser.</p>
      <form method="post" action="/desk/open/enter" className="go-row">
        <input type="hidden" name="key" value={key} />
        <button className="btn btn-go" type="submit">Open the desk</button>
      </form>
    </Frame>
  );
}
