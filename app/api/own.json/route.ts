import { currentActor, ownData, theHouse } from "@/lib/service";
import { fileAnswer, refuse } from "../../_server/file-answer";

/** What is kept of a couple, for themselves. */
export async function GET(request: Request): Promise<Response> {
  const house = await theHouse();
  const actor = await currentActor(house, { cookie: request.headers.get("cookie"), side: "couple" });
  if (actor.kind !== "couple") return refuse(403);
  return fileAnswer(await ownData(house, actor, { reference: actor.reference }), { type: "application/json; charset=utf-8", as: "attachment", body: ({ text }) => text });
}
