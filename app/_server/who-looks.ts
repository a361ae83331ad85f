import { currentActor, theHouse, type Actor, type House } from "@/lib/service";

/** Who asks for a drawing of a booking: its couple if it is theirs, or else the desk, where this browser is signed in to both. */
export async function whoLooks(request: Request, reference: string): Promise<{ readonly house: House; readonly actor: Actor }> {
  const house = await theHouse();
  const cookie = request.headers.get("cookie");
  const asCouple = await currentActor(house, { cookie, side: "couple" });
  const actor = asCouple.kind === "couple" && asCouple.reference === reference ? asCouple : await currentActor(house, { cookie, side: "desk" });
  return { house, actor };
}
