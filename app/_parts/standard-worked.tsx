import type { ReactNode } from "react";
import type { ArrangeResult, Layout } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import { DrawingSheet } from "@/components/plan/drawing";
import { seatsAt } from "@/components/plan/layouts";
import type { FieldError } from "@/components/ui/error-of";
import { TextField } from "@/components/ui/field";
import { Pairs } from "@/components/ui/pairs";

type Props = {
  readonly venue: Venue; readonly action: string; readonly at: ReactNode; readonly offered: readonly { readonly layout: Layout; readonly svg: string }[];
  readonly result: ArrangeResult; readonly guests: number; readonly pack: string; readonly errors: readonly FieldError[];
};

/** What was worked out from the venue alone, to choose from; or why nothing was found. */
export function Worked({ venue, action, at, offered, result, guests, pack, errors }: Props) {
  if (offered.length === 0) {
    return <div className="mt-6"><p className="lead" role="status">No layout was found for {guests}.</p><ul className="findings mt-3">{result.reasons.map((f, i) => <li key={i}>{f.text}</li>)}{result.instead.map((one) => <li key={one.text}>{one.text}</li>)}</ul></div>;
  }
  return (
    <form method="post" action={action} noValidate className="mt-6">{at}
      <input type="hidden" name="guests" value={guests} /><input type="hidden" name="package" value={pack} />
      <fieldset><legend className="hidden-words">Which one is the standard layout</legend>
        <div className={`layouts layouts-${offered.length}`}>{offered.map(({ layout, svg }, i) => (
          <section key={layout.id} aria-labelledby={`layout-${layout.id}`}>
            <h3 id={`layout-${layout.id}`}>{layout.title}</h3>
            <DrawingSheet svg={svg} />
            <Pairs pairs={[{ name: "Places", value: <b>{seatsAt(layout)}</b> }, { name: "Findings", value: `${layout.findings.filter((f) => f.level === "should").length} should` }]} />
            <label className="pick"><input id={i === 0 ? "layout" : undefined} type="radio" name="layout" value={layout.id} defaultChecked={i === 0} aria-describedby={`layout-${layout.id}`} /><span className="when-chosen">This one</span><span className="when-open">Take this one</span></label>
          </section>
        ))}</div>
      </fieldset>
      <div className="max-w-[34rem]"><TextField name="title" label="What it is called" value={venue.standardLayout?.title ?? "The house’s own"} errors={errors} maxLength={120} /></div>
      <div className="go-row"><button className="btn btn-go" type="submit">Make it the standard layout</button></div>
    </form>
  );
}
