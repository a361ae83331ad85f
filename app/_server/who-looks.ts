import { currentActor, theHouse, type Actor, type House } from "@/lib/service";

/** Who asks for a drawing of a booking: its couple if it is theirs, or else the desk, or who was given a link to look, where this browser is signed in as several. */
export async function whoLooks(request: Request, reference: string): Promise<{ readonly house: House; readonly actor: Actor }> {
  const house = await theHouse();
  const cookie = request.headers.get("cookie");
  const asCouple = await currentActor(house, { cookie, side: "couple" });
  if (asCouple.kind === "couple" && asCouple.reference === reference) return { house, actor: asCouple };
  const asDesk = await currentActor(house, { cookie, side: "desk" });
  if (asDesk.kind === "desk") return { house, actor: asDesk };
  return { house, actor: await currentActor(house, { cookie, side: "look" }) };
}
