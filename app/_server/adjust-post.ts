import { adjust, adjusting, adjustTurn, putRight, takeAdjusted, type Actor, type AdjustView, type FormValues, type House, type Outcome } from "@/lib/service";
import { keep } from "./kept";
import { see, textOf } from "./form";

type Ask = {
  readonly house: House; readonly actor: Actor; readonly reference: string; readonly values: FormValues; readonly owner: string;
  /** The page's own address, and where it leads once the layout is taken. */
  readonly page: string; readonly then: string;
  /** Asked by a script, which draws the answer itself. */
  readonly script: boolean;
  /** The view in the words of who asks; left out: as it is. */
  readonly say?: (view: AdjustView) => AdjustView;
};
type Done = { readonly view: AdjustView; readonly did: string };

async function run({ house, actor, reference, values }: Ask, act: string): Promise<Outcome<Done>> {
  const seen = textOf(values, "seen");
  if (act === "mend") {
    const done = await putRight(house, actor, { reference, seen });
    return done.ok ? { ok: true, value: { view: done.value.view, did: done.value.left.length > 0 ? "mend-left" : "mend" } } : done;
  }
  const done = act === "undo" || act === "redo" || act === "again" ? await adjustTurn(house, actor, { reference, seen, way: act }) : await adjust(house, actor, { reference, seen, values });
  return done.ok ? { ok: true, value: { view: done.value, did: act || "done" } } : done;
}

const json = (body: unknown, status = 200): Response => new Response(JSON.stringify(body), { status, headers: { "Content-Type": "application/json", "Cache-Control": "no-store" } });

/** The piece that the page goes on with: the one just brought in, or the one that was meant if it still stands. */
function goesOn({ view, did }: Done, values: FormValues): string {
  const part = textOf(values, "scene"), items = view.layout.scenes.find((s) => s.id === part)?.items ?? [];
  if (did === "add") return items.at(-1)?.id ?? "";
  const piece = textOf(values, "piece");
  return items.some((i) => i.id === piece) ? piece : "";
}

/** One deed on a layout under the hand. A script is told how it stands then; else the page is shown anew. */
export async function adjustPost(ask: Ask): Promise<Response> {
  const { house, actor, reference, values, page, owner, script, say = (view) => view } = ask;
  const act = textOf(values, "act");
  if (act === "take") return take(ask);
  const done = await run(ask, act);
  const part = textOf(values, "scene");
  const at = (query: Readonly<Record<string, string>>, hash = ""): string => `${page}?${new URLSearchParams({ ...(part ? { part } : {}), ...Object.fromEntries(Object.entries(query).filter(([, v]) => v !== "")) }).toString()}${hash}`;
  if (done.ok) {
    const piece = goesOn(done.value, values);
    return script ? json({ ok: true, ...done.value, view: say(done.value.view), piece }) : see(at({ piece, did: done.value.did }, "#hand-plan"));
  }
  const { error } = done;
  if (error.code !== "invalid" && error.code !== "stale") return script ? json({ ok: false, code: error.code, errors: [] }, 409) : see(ask.then);
  if (script) {
    const now = await adjusting(house, actor, { reference });
    return json({ ok: false, code: error.code, errors: error.code === "invalid" ? error.errors : [], ...(now.ok ? { view: say(now.value) } : {}) }, error.code === "stale" ? 412 : 422);
  }
  const kept = keep({ form: "adjust", owner, values, errors: error.code === "invalid" ? error.errors : [], ...(error.code === "stale" ? { stale: true } : {}) });
  return see(at({ piece: textOf(values, "piece"), kept }, error.code === "stale" ? "#stale-head" : "#piece-head"));
}

async function take({ house, actor, reference, values, page, owner, then }: Ask): Promise<Response> {
  const taken = await takeAdjusted(house, actor, { reference, seen: textOf(values, "seen") });
  if (taken.ok) return see(then);
  return taken.error.code === "stale" ? see(`${page}?kept=${keep({ form: "adjust", owner, values, errors: [], stale: true })}#stale-head`) : see(then);
}
