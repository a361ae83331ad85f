import { currentActor, proposalPdfFor, theHouse } from "@/lib/service";
import { askedFor, pdfAnswer, refuse } from "../../_server/file-answer";

/** The proposal of a booking as PDF, for those who may see it. */
export async function GET(request: Request): Promise<Response> {
  const asked = askedFor(request);
  if (!asked) return refuse(404);
  const house = await theHouse();
  const cookie = request.headers.get("cookie");
  const asCouple = await currentActor(house, { cookie, side: "couple" });
  const actor = asCouple.kind === "couple" && asCouple.reference === asked.reference ? asCouple : await currentActor(house, { cookie, side: "desk" });
  return pdfAnswer(await proposalPdfFor(house, actor, asked));
}
