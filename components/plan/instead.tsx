import type { ArrangeResult } from "@/lib/layout";
import type { Say } from "@/lib/words/pages/say";
import { isStep, stepTitle, type StepName } from "@/components/form/steps";

/** The steps whose answers a change of the brief belongs to, each once. */
export const stepsOfChange = (change: Readonly<Record<string, unknown>>): readonly StepName[] => [...new Set(Object.keys(change).map(stepOf))];

function stepOf(path: string): StepName {
  if (path === "turnover" || path === "drape") return "meal";
  if (path === "notes" || path.startsWith("brought")) return "extras";
  const head = path.split(".")[0] ?? "";
  return isStep(head) ? head : "guests";
}

/** No layout: what stands in the way, in words, and the smallest changes that were tried and work. */
export function NoLayout({ result, say }: { readonly result: ArrangeResult; readonly say: Say }) {
  const proved = result.status === "impossible";
  return (
    <>
      <p className="lead measure mt-4">
        {proved ? say("These answers cannot all be met in these rooms. The reason can be counted:") : say("We have not found a layout for these answers. It has not been shown that there is none.")}
      </p>
      {result.closest && <p className="measure mt-3">{say("What the closest that was found lacks:")}</p>}
      <ul className="findings measure mt-3">
        {result.reasons.map((r, i) => <li key={`${r.code}-${i}`}><span className="text-body">{r.text}</span><span className="source">{say.given(r.source)}</span></li>)}
      </ul>
      <section className="section max-w-[50rem]" aria-labelledby="instead-head">
        <h2 id="instead-head">{say("What would do instead")}</h2>
        {result.instead.length === 0
          ? <p className="mt-3 measure">{say("No single change was found that does. The venue can help: whom to ask stands at the foot of this page.")}</p>
          : (
            <>
              <p className="small sec mt-3">{say("Each of these was tried, and a layout was found. The smallest comes first.")}</p>
              <ul className="ruled mt-3">
                {result.instead.map((x, i) => (
                  <li key={i} className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1 py-3 border-b border-rule">
                    <span className="measure">{x.text}</span>
                    <span className="flex flex-wrap gap-x-4">
                      {stepsOfChange(x.change).map((step, _, { length }) => <a key={step} href={`/request/${step}`}>{length === 1 ? say("Change this answer") : stepTitle(step, say)}<span className="hidden-words">: {x.text}</span></a>)}
                    </span>
                  </li>
                ))}
              </ul>
            </>
          )}
      </section>
    </>
  );
}
