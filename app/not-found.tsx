import type { Metadata } from "next";
import { face } from "./_server/face";
import { Frame } from "@/components/ui/frame";

export const metadata: Metadata = { title: "No such page" };

export default async function NotFound() {
  const shown = await face();
  return (
    <Frame house={shown}>
      <h1 className="mt-4">There is no page at this address</h1>
      <div className="prose mt-4">
        <p className="lead">It may have been typed with a slip, or belong to a booking that is not yours.</p>
        <p>Nothing you answered is lost. Go back with your browser, to <a href="/request">your day</a>, or to <a href="/">the first page</a>.</p>
      </div>
    </Frame>
  );
}
