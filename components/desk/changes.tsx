import { changesOf } from "@/lib/drawing";
import type { Layout, Scene } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import { counted } from "@/components/ui/say";

type Props = {
  readonly venue: Venue;
  readonly was: Pick<Layout, "scenes">;
  readonly now: Pick<Layout, "scenes">;
  readonly scene: Scene;
  readonly since: number;
  /** The address of the page with another part of the day drawn. */
  readonly hrefOf: (scene: string) => string;
};

/** What changed in one part of the day since an earlier revision, by the numbers that stand on its plan; and where else to look. */
export function Changes({ venue, was, now, scene, since, hrefOf }: Props) {
  const of = (one: Scene) => changesOf(venue, was.scenes.find((s) => s.id === one.id), one);
  const changes = of(scene);
  const elsewhere = now.scenes.filter((s) => s.id !== scene.id).map((s) => ({ scene: s, count: of(s).length })).filter((one) => one.count > 0);
  const gone = was.scenes.filter((s) => !now.scenes.some((n) => n.id === s.id));
  return (
    <section className="section" aria-labelledby="changes-head">
      <h2 id="changes-head">Changed since revision {since}</h2>
      {changes.length === 0
        ? <p className="small sec mt-3">{scene.title}: nothing stands elsewhere than in revision {since}.</p>
        : <ol className="changes" aria-label={`${scene.title}: changes by their numbers on the plan`}>{changes.map((c) => <li key={c.number} value={c.number}><span className="n" aria-hidden="true">{c.number}</span><span>{c.text}</span></li>)}</ol>}
      {elsewhere.length > 0 && (
        <p className="small mt-3">
          {elsewhere.map((one, i) => <span key={one.scene.id}>{i > 0 ? "; " : ""}<a href={hrefOf(one.scene.id)}>{one.scene.title}</a>: {counted(one.count, "change", "changes")}</span>)}.
        </p>
      )}
      {gone.length > 0 && <p className="small sec mt-3">No longer part of the day: {gone.map((s) => s.title).join(", ")}.</p>}
    </section>
  );
}
