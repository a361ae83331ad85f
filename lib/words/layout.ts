import type { ArrangeResult, Finding, Item, Layout, Scene } from "../layout";
import type { Venue } from "../venue";
import { engineIn } from "./engine";
import { findingText } from "./findings";
import type { Say } from "./pages/say";

/** The venue as its reader has it (locale and lengths are the reader's), and the reader's voice. */
type How = { readonly venue: Venue; readonly say: Say };

const itemIn = (item: Item, speak: (text: string) => string): Item => ({ ...item, label: speak(item.label) });
const sceneIn = (scene: Scene, speak: (text: string) => string): Scene => ({ ...scene, title: speak(scene.title), items: scene.items.map((item) => itemIn(item, speak)) });

/** A layout in a reader's words: titles, reasons, labels and findings are said anew; nothing that is measured, priced or placed is touched. */
export function layoutIn(layout: Layout, { venue, say }: How): Layout {
  const speak = engineIn({ say, lengths: venue.lengths, locale: venue.locale });
  const scenes = layout.scenes.map((scene) => sceneIn(scene, speak));
  const found = (list: readonly Finding[], of: Pick<Layout, "scenes">): readonly Finding[] => list.map((one) => findingIn(one, { venue, say, of, speak }));
  return {
    ...layout, scenes, title: speak(layout.title), why: layout.why.map(speak), givesUp: layout.givesUp?.map(speak), findings: found(layout.findings, { scenes }),
    quote: layout.quote && { ...layout.quote, lines: layout.quote.lines.map((line) => ({ ...line, text: speak(line.text), of: line.of === undefined ? undefined : speak(line.of) })) },
    wet: layout.wet && { ...layout.wet, scenes: layout.wet.scenes.map((scene) => sceneIn(scene, speak)), findings: found(layout.wet.findings, layout.wet) },
  };
}

type FindingHow = How & { readonly of: Pick<Layout, "scenes">; readonly speak: (text: string) => string };
/** A finding is made again from its data; one of the engine's own, which has no sentence in the catalogue, is said from its words. */
function findingIn(finding: Finding, { venue, of, speak, say }: FindingHow): Finding {
  const made = findingText(finding, { venue, layout: of });
  return { ...finding, text: made === finding.code || (say.language !== "es" && finding.data === undefined) ? speak(finding.text) : made };
}

/** The engine's whole answer in a reader's words. */
export function resultIn(result: ArrangeResult, how: How): ArrangeResult {
  const speak = engineIn({ say: how.say, lengths: how.venue.lengths, locale: how.venue.locale });
  return {
    ...result, layouts: result.layouts.map((one) => layoutIn(one, how)),
    reasons: result.reasons.map((one) => findingIn(one, { ...how, of: { scenes: result.closest?.scenes ?? [] }, speak })), instead: result.instead.map((one) => ({ ...one, text: speak(one.text) })),
  };
}

/** Labels of a layout's pieces as the same layout has them in a reader's words. */
export function labelsIn(labels: readonly string[], layout: Layout, said: Layout): readonly string[] {
  const items = (one: Layout): readonly Item[] => one.scenes.flatMap((scene) => scene.items);
  const to = items(said);
  const known = new Map(items(layout).map((item, i) => [item.label, to[i]?.label ?? item.label]));
  return labels.map((label) => known.get(label) ?? label);
}
