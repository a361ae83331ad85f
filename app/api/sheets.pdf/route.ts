import { currentActor, sheetsPdfFor, theHouse } from "@/lib/service";
import { askedFor, pdfAnswer, refuse } from "../../_server/file-answer";

/** The day's sheets of a booking as PDF, for the desk. */
export async function GET(request: Request): Promise<Response> {
  const asked = askedFor(request);
  if (!asked) return refuse(404);
  const house = await theHouse();
  const actor = await currentActor(house, { cookie: request.headers.get("cookie"), side: "desk" });
  return pdfAnswer(await sheetsPdfFor(house, actor, asked));
}
