import { health, theHouse } from "@/lib/service";

/** Whether what the pages stand on is there: the store, its migrations, the mail. */
export async function GET(): Promise<Response> {
  const state = await health(await theHouse());
  return Response.json(state, { status: state.ok ? 200 : 503, headers: { "Cache-Control": "no-store" } });
}
