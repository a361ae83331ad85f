import { adjustDrawing, type Actor, type AdjustView, type House } from "@/lib/service";
import { toSvg } from "@/lib/drawing";
import type { Item, Scene } from "@/lib/layout";
import { asked, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { textOf } from "@/app/_server/form";
import { holdBoth, type TwoWidths } from "@/components/plan/markup";
import { Adjust } from "@/components/plan/hand/adjust";
import { isDrawing, pickedMarks } from "@/components/plan/hand/marks";
import { toldOf } from "@/components/plan/hand/told";
import { handVoice, handVoiceOf, type HandVoice } from "@/lib/words/hand";

type Props = {
  readonly house: House; readonly actor: Actor; readonly view: AdjustView; readonly search: Search; readonly side: "couple" | "desk"; readonly page: string;
  /** Whose typing is held for this page. */
  readonly owner: string;
};
type Draw = Pick<Props, "house" | "actor" | "view"> & { readonly scene: Scene; readonly item: Item | undefined };

const WIDTHS = [["wide", 760], ["narrow", 340]] as const;

/** The plan as it stands, the chosen piece marked on it, painted for a page without scripts at either width. */
async function painted({ house, actor, view, scene, item }: Draw): Promise<TwoWidths> {
  const drawn = await adjustDrawing(house, actor, { reference: view.reference, scene: scene.id, pixelWidths: WIDTHS.map(([, px]) => px) });
  const [wide = "", narrow = ""] = WIDTHS.map(([name, pixelWidth], i) => {
    const drawing = drawn.ok ? drawn.value[i]?.drawing : undefined;
    if (!isDrawing(drawing)) return "";
    const marks = item ? pickedMarks({ drawing, venue: view.venue, item }, scene, view.held.includes(item.id)) : [];
    return toSvg({ ...drawing, marks: [...drawing.marks, ...marks] }, { theme: "css", pixelWidth, idPrefix: `${name}-hand-`, reads: "image" });
  });
  return holdBoth({ wide, narrow });
}

/** What the last deed came to, for the line that tells it. */
function outcome(view: AdjustView, did: string, say: HandVoice): string {
  const weigh = (level: "must" | "should"): number => view.layout.findings.filter((f) => f.level === level).length;
  const found = `${weigh("must") === 0 ? say("Nothing that must change") : say("{n} that must change", { n: weigh("must") })}, ${say("{n} that should", { n: weigh("should") })}.`;
  switch (did) {
    case "undo": return `${say("Undone.")} ${found}`;
    case "again": return `${say("Back to the start.")} ${found}`;
    case "mend": return `${view.undo ?? say("Nothing had to be moved")}. ${found}`;
    case "mend-left": return `${view.undo ?? say("Nothing was moved")}. ${say("No way was found to put all of it right round what is held.")} ${found}`;
    default: return `${view.undo ?? say("Done")}. ${found}`;
  }
}

/** The page on which a layout is adjusted by hand, the same for couple and desk. */
export async function AdjustPage({ house, actor, view, search, side, page, owner }: Props) {
  const part = await asked(search, "part"), wanted = await asked(search, "piece"), did = await asked(search, "did");
  const scene = view.layout.scenes.find((s) => s.id === part) ?? view.layout.scenes.find((s) => s.id === "meal") ?? view.layout.scenes[0];
  if (!scene) return null;
  const item = scene.items.find((i) => i.id === wanted);
  const kept = heldFor(await asked(search, "kept"), "adjust", owner);
  const typed = kept ? Object.fromEntries(Object.keys(kept.values).map((name) => [name, textOf(kept.values, name)])) : {};
  const draw = { house, actor, view, scene, item };
  return (
    <Adjust
      view={view} told={toldOf({ venue: view.venue, layout: view.layout, scene: scene.id, was: view.was })} part={scene.id} picked={item?.id ?? null}
      svg={await painted(draw)} page={page} side={side} said={did ? outcome(view, did, side === "desk" ? handVoice("en-GB") : handVoiceOf(view.venue.locale)) : null}
      errors={kept?.errors ?? []} typed={kept?.stale ? {} : typed} stale={kept?.stale ? typed : null}
    />
  );
}
