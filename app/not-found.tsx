import type { Metadata } from "next";
import { face } from "./_server/face";
import { Frame } from "@/components/ui/frame";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await face()).say("No such page") };
}

export default async function NotFound() {
  const shown = await face();
  const { say } = shown;
  return (
    <Frame house={shown} say={say} choose="/words?from=/">
      <h1 className="mt-4">{say("There is no page at this address")}</h1>
      <div className="prose mt-4">
        <p className="lead">{say("It may have been typed with a slip, or belong to a booking that is not yours.")}</p>
        <p>{say("Nothing you answered is lost. Go back with your browser, or to one of these:")} <a href="/request">{say("your day")}</a>, <a href="/">{say("the first page")}</a>.</p>
      </div>
    </Frame>
  );
}
