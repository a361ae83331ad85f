import { cookies } from "next/headers";
import { keepWords } from "@/lib/service";
import { isLanguage, isLengthSystem } from "@/lib/words/pages";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";
import { WORDS } from "@/app/_server/words";

const YEAR = 365 * 86_400;
/** Only our own pages, and never an address of someone else's that is dressed as one. */
const isOurs = (path: string): boolean => /^\/(?![/\\])[\w/?=&.-]*$/.test(path);

export async function POST(request: Request): Promise<Response> {
  return post(request, "couple", async ({ house, actor, values }) => {
    const jar = await cookies();
    const how = { httpOnly: true, sameSite: "lax", secure: house.origin.startsWith("https:"), path: "/", maxAge: YEAR } as const;
    const language = textOf(values, "language"), lengths = textOf(values, "lengths"), from = textOf(values, "from");
    if (isLanguage(language)) jar.set(WORDS.language, language, how);
    if (isLengthSystem(lengths)) jar.set(WORDS.lengths, lengths, how);
    // Their mails and papers, and their pages on another device, follow.
    if (actor.kind === "couple") {
      const chosen = { ...(isLanguage(language) ? { language } : {}), ...(isLengthSystem(lengths) ? { lengths } : {}) };
      await keepWords(house, actor, { reference: actor.reference, chosen });
    }
    return see(isOurs(from) ? from : "/request");
  });
}
