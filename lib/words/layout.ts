import type { ArrangeResult, Finding, Item, Layout, Scene, Told } from "../layout";
import type { Venue } from "../venue";
import { labelIn, toldText } from "./engine";
import { findingText, saidWithoutData } from "./findings";
import type { Say } from "./pages/say";

/** The venue as its reader has it (locale and lengths are the reader's), and the reader's voice. */
type How = { readonly venue: Venue; readonly say: Pick<Say, "language"> };

const itemIn = (item: Item, { say }: How): Item => ({ ...item, label: labelIn(item.label, say.language) });
const sceneIn = (scene: Scene, how: How): Scene => ({ ...scene, title: labelIn(scene.title, how.say.language), items: scene.items.map((item) => itemIn(item, how)) });

/** Sentences said from what was told of them; where nothing was (a layout made by hand, or by an engine before this one), as they were written. */
function saidFrom(texts: readonly string[], told: readonly Told[] | undefined, { venue, say }: How): readonly string[] {
  if (told?.length !== texts.length) return texts;
  return texts.map((text, i) => { const one = told[i]; return (one && toldText(one, { venue, language: say.language })) ?? text; });
}

/** A layout in a reader's words: titles, reasons, labels and findings are said anew; nothing that is measured, priced or placed is touched. */
export function layoutIn(layout: Layout, how: How): Layout {
  const { told } = layout, scenes = layout.scenes.map((scene) => sceneIn(scene, how)), wet = layout.wet?.scenes.map((scene) => sceneIn(scene, how)) ?? [];
  const found = (list: readonly Finding[], of: Pick<Layout, "scenes">): readonly Finding[] => list.map((one) => findingIn(one, how, of));
  return {
    ...layout, scenes, title: saidFrom([layout.title], told?.title && [told.title], how)[0] ?? layout.title, why: saidFrom(layout.why, told?.why, how),
    ...(layout.givesUp ? { givesUp: saidFrom(layout.givesUp, told?.givesUp, how) } : {}), findings: found(layout.findings, { scenes }),
    wet: layout.wet && { ...layout.wet, scenes: wet, findings: found(layout.wet.findings, { scenes: wet }) },
  };
}

/** A finding is made again from its data; one that has none, or no sentence in the catalogue, stays as it was written. */
function findingIn(finding: Finding, { venue }: How, of: Pick<Layout, "scenes">): Finding {
  const made = finding.data === undefined && !saidWithoutData(finding.code) ? finding.code : findingText(finding, { venue, layout: of });
  return made === finding.code ? finding : { ...finding, text: made };
}

/** The engine's whole answer in a reader's words. */
export function resultIn(result: ArrangeResult, how: How): ArrangeResult {
  // What the closest attempt lacks names its pieces.
  const closest = result.closest && layoutIn(result.closest, how);
  return {
    ...result, layouts: result.layouts.map((one) => layoutIn(one, how)), reasons: result.reasons.map((one) => findingIn(one, how, { scenes: closest?.scenes ?? [] })), ...(closest ? { closest } : {}),
    instead: result.instead.map((one) => ({ ...one, text: saidFrom([one.text], one.told && [one.told], how)[0] ?? one.text })),
  };
}

/** Labels of a layout's pieces as the same layout has them in a reader's words. */
export function labelsIn(labels: readonly string[], layout: Layout, said: Layout): readonly string[] {
  const items = (one: Layout): readonly Item[] => one.scenes.flatMap((scene) => scene.items);
  const to = items(said);
  const known = new Map(items(layout).map((item, i) => [item.label, to[i]?.label ?? item.label]));
  return labels.map((label) => known.get(label) ?? label);
}
