import { changesOf } from "@/lib/drawing";
import { letterFindings } from "@/lib/drawing/plan/findings";
import type { Layout, Level, Quote, SceneId } from "@/lib/layout";
import type { Venue } from "@/lib/venue";

/** A finding as it is told beside the plan: by its letter where it is marked on it. */
export type ToldFinding = { readonly letter: string; readonly level: Level; readonly text: string; readonly source: string; readonly items: readonly string[] };
/** What follows from where everything stands, for one part of the day. */
export type Told = {
  readonly findings: readonly ToldFinding[];
  /** Weights over the whole day. */
  readonly musts: number; readonly shoulds: number;
  readonly places: number;
  readonly quote?: Quote;
  /** Against the version before; by the numbers on the plan where that is drawn with its changes. */
  readonly changes: readonly { readonly number: number; readonly text: string }[];
  /** Parts of the day, this one left out, in which something changed. */
  readonly elsewhere: readonly { readonly scene: SceneId; readonly title: string; readonly count: number }[];
};

type About = { readonly venue: Venue; readonly layout: Layout; readonly scene: SceneId; readonly was: Pick<Layout, "scenes"> };

export function toldOf({ venue, layout, scene: id, was }: About): Told {
  const scene = layout.scenes.find((s) => s.id === id);
  const letters = new Map(letterFindings(layout, id).map(({ letter, finding }) => [finding, letter]));
  const here = layout.findings.filter((f) => f.scene === undefined || f.scene === id);
  const count = (level: Level): number => layout.findings.filter((f) => f.level === level).length;
  const changed = (s: Layout["scenes"][number]) => changesOf(venue, was.scenes.find((w) => w.id === s.id), s);
  return {
    findings: here.map((f) => ({ letter: letters.get(f) ?? "", level: f.level, text: f.text, source: f.source, items: f.items })),
    musts: count("must"), shoulds: count("should"), places: scene?.seats ?? 0,
    ...(layout.quote ? { quote: layout.quote } : {}),
    changes: scene ? changed(scene).map(({ number, text }) => ({ number, text })) : [],
    elsewhere: layout.scenes.filter((s) => s.id !== id).map((s) => ({ scene: s.id, title: s.title, count: changed(s).length })).filter((s) => s.count > 0),
  };
}
