import { composePlan } from "@/lib/drawing";
import { settle } from "@/lib/engine/settle";
import { applyEdit } from "@/lib/hand";
import type { Layout } from "@/lib/layout";
import { checker, type Checker } from "@/lib/rules";
import type { FromHand, ToHand } from "./messages";
import { toldOf } from "./told";

/** Check, fees and drawing on a thread of the browser's own: while they are worked out, the piece goes on moving. */
let about: Extract<ToHand, { kind: "about" }> | null = null;
let shown: { readonly layout: Layout; readonly held: readonly string[] } | null = null;
/** Knows what it has judged: of a piece that moves only that is judged again which its place decides. */
let checked: Checker | null = null;
const tell = (message: FromHand): void => { self.postMessage(message); };

self.addEventListener("message", ({ data }: MessageEvent<ToHand>) => {
  switch (data.kind) {
    case "about": about = data; checked = null; return tell({ kind: "ready" });
    case "show": return show(data);
    case "try": return attempt(data);
  }
});

function show({ ask, layout, held, scene, width, changes, settle: anew }: Extract<ToHand, { kind: "show" }>): void {
  if (!about) return;
  const { venue, brief, was } = about;
  const whole = anew ? settle(venue, brief, layout) : layout;
  shown = { layout: whole, held };
  checked = checked ? checked.next(whole) : checker(venue, brief, whole);
  const part = whole.scenes.find((s) => s.id === scene);
  const rooms = venue.rooms.filter((r) => part?.rooms.includes(r.id)).map((r) => r.id);
  const drawing = composePlan(venue, whole, scene, { pixelWidth: width, rooms, frame: false, findings: true, ...(changes ? { was } : {}) });
  tell({ kind: "shown", ask, drawing, told: toldOf({ venue, layout: whole, scene, was }) });
}

function attempt({ ask, edit }: Extract<ToHand, { kind: "try" }>): void {
  if (!about || !shown || !checked) return;
  const next = applyEdit(about.venue, shown, edit);
  if (!next.ok) return tell({ kind: "tried", ask, musts: 0, shoulds: 0, first: null });
  const { findings } = checked.next(next.value.layout);
  const count = (level: "must" | "should"): number => findings.filter((f) => f.level === level).length;
  const piece = "piece" in edit ? edit.piece : "";
  tell({ kind: "tried", ask, musts: count("must"), shoulds: count("should"), first: findings.find((f) => f.items.includes(piece))?.text ?? null });
}
