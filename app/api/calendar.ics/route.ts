import { calendarFor, currentActor, theHouse } from "@/lib/service";
import { fileAnswer, refuse } from "../../_server/file-answer";

/** The calendar file of a booking, for the desk. */
export async function GET(request: Request): Promise<Response> {
  const reference = new URL(request.url).searchParams.get("ref") ?? "";
  if (!reference) return refuse(404);
  const house = await theHouse();
  const actor = await currentActor(house, { cookie: request.headers.get("cookie"), side: "desk" });
  return fileAnswer(await calendarFor(house, actor, { reference }), { type: "text/calendar; charset=utf-8", as: "attachment", body: ({ text }) => text });
}
