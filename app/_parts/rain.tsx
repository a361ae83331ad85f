import { couple } from "@/app/_server/asking";
import { plansOf } from "@/app/_server/plans";
import { Day } from "@/components/plan/day";
import { rainWords } from "@/components/plan/layouts";
import type { Layout } from "@/lib/layout";
import type { Venue } from "@/lib/venue";

type Props = { readonly layout: Layout; readonly venue: Venue; readonly reference: string; /** It is one of those offered, and not the one chosen. */ readonly offered?: boolean };

/** The same day with every outdoor room shut by rain: what moves, and those parts drawn. */
export async function Rain({ layout, venue, reference, offered = false }: Props) {
  const { house, actor, say } = await couple();
  const { wet } = layout;
  if (!wet) return layout.findings.some((f) => f.code === "wet-twin") ? <p className="not-offered">{layout.findings.find((f) => f.code === "wet-twin")?.text}</p> : null;
  const moved = wet.scenes.filter((one) => [...one.rooms].sort().join() !== [...(layout.scenes.find((dry) => dry.id === one.id)?.rooms ?? [])].sort().join());
  const scenes = moved.length > 0 ? moved : wet.scenes;
  const twin: Layout = { ...layout, scenes, turnovers: wet.turnovers };
  const plans = await plansOf(house, actor, { reference, layout: twin, offered, wet: true });
  const query = `ref=${encodeURIComponent(reference)}${offered ? `&layout=${encodeURIComponent(layout.id)}` : ""}&wet`;
  return (
    <section className="section" aria-labelledby="rain-head">
      <h2 id="rain-head">{say("If it rains")}</h2>
      <p className="measure mt-3">{say("Everything is then held under the roof.")} {rainWords(layout, venue, say)}.</p>
      <Day layout={twin} venue={venue} plans={plans} prefix="rain" say={say} query={query} />
    </section>
  );
}
