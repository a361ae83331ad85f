import type { Actor, FormValues, House, Outcome } from "@/lib/service";
import { keep } from "./kept";
import { see } from "./form";
import { post } from "./post";

type DeskActor = Extract<Actor, { kind: "desk" }>;
type Act = {
  readonly request: Request;
  readonly reference: string;
  /** The word of what was done, for the line on the page that follows. */
  readonly done: string;
  /** A page of the booking's own that the form stands on: what is amiss is told there. */
  readonly page?: string;
  /** The page of the booking's that follows; left out: the booking itself. */
  readonly then?: string;
  readonly run: (p: { readonly house: House; readonly actor: DeskActor; readonly values: FormValues }) => Promise<Outcome<unknown>>;
};

/** One act of the desk on a booking: it leads back to the booking, saying what was done or what is amiss. */
export async function deskAct({ request, reference, done, page, then, run }: Act): Promise<Response> {
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const base = `/desk/bookings/${encodeURIComponent(reference)}`;
    const outcome = await run({ house, actor, values });
    if (outcome.ok) return see(`${base}${then === undefined ? "" : `/${then}`}?done=${done}`);
    if (outcome.error.code === "invalid") return see(`${base}${page === undefined ? "" : `/${page}`}?kept=${keep({ form: done === "returned" ? "return" : done, owner: actor.person, values, errors: outcome.error.errors })}`);
    if (outcome.error.code === "taken") return see(`${base}?${new URLSearchParams({ done: "taken", by: outcome.error.by, rooms: outcome.error.rooms.join(", ") }).toString()}`);
    return see(outcome.error.code === "not-found" || outcome.error.code === "not-allowed" ? "/desk" : `${base}?done=moved`);
  });
}
