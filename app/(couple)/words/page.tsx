import type { Metadata } from "next";
import { asked, type Search } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { Choices } from "@/components/ui/choices";
import { Frame } from "@/components/ui/frame";
import { speechFor } from "@/app/_server/words";

type Props = { readonly searchParams: Search };

export async function generateMetadata(): Promise<Metadata> {
  const { name, say } = await face();
  return { title: `${say("Language and lengths")} – ${name}` };
}

/** What is read, and in which lengths: kept in this browser. */
export default async function WordsPage({ searchParams }: Props) {
  const shown = await face();
  const { say, language, lengths } = await speechFor(shown);
  const from = (await asked(searchParams, "from")) ?? "/request";
  return (
    <Frame house={shown} say={say}>
      <h1 className="mt-4">{say("Language and lengths")}</h1>
      <form method="post" action="/words/choose" className="mt-8 max-w-[34rem]">
        <input type="hidden" name="from" value={from} />
        <Choices name="language" legend={say("Which language do you read?")} chosen={[language]} options={[
          { value: "en-GB", name: <span lang="en-GB">English</span> }, { value: "en-US", name: <span lang="en-US">American English</span> }, { value: "es", name: <span lang="es">Español</span> },
        ]} />
        <Choices name="lengths" legend={say("How do you measure?")} chosen={[lengths]} options={[
          { value: "metric", name: say("In metres") }, { value: "imperial", name: say("In feet and inches") },
        ]} />
        <p className="note sec mt-4">{say("Kept in this browser by two cookies. The venue’s own texts, names and prices stay as the venue wrote them.")}</p>
        <div className="go-row"><button className="btn btn-go" type="submit">{say("Use these")}</button></div>
      </form>
    </Frame>
  );
}
