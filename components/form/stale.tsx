import type { FormValues, StepId } from "@/lib/brief/draft";
import type { Venue } from "@/lib/venue";
import { Scroll } from "../ui/scroll";
import { saidIn } from "./said";

type Props = { readonly step: StepId; readonly stands: FormValues; readonly typed: FormValues; readonly venue: Venue };

/** Two saves met: both versions, side by side; nothing is overwritten until one of them is chosen. */
export function StaleNotice({ step, stands, typed, venue }: Props) {
  const mine = saidIn(step, typed, venue);
  const theirs = saidIn(step, stands, venue);
  const apart = mine.filter((m) => theirs.find((t) => t.field === m.field)?.said !== m.said);
  return (
    <div className="errors" role="alert" tabIndex={-1} autoFocus aria-labelledby="stale-head">
      <h2 id="stale-head">Someone saved this booking while you had this page open</h2>
      {apart.length === 0
        ? <p className="small mt-2">What stands on this step is the same as what you answered. Save again, or <a href={`/request/${step}`}>leave it as it stands</a>.</p>
        : (
          <>
            <p className="small mt-2">Yours is not saved yet. Below are your answers: save them to put them in place of what stands, or <a href={`/request/${step}`}>keep what stands</a>.</p>
            <Scroll label="Both versions"><table className="mt-3">
              <thead><tr><th scope="col">Answer</th><th scope="col">Stands now</th><th scope="col">Yours</th></tr></thead>
              <tbody>{apart.map((m) => (
                <tr key={m.field}><th scope="row">{m.name}</th><td>{theirs.find((t) => t.field === m.field)?.said}</td><td><b>{m.said}</b></td></tr>
              ))}</tbody>
            </table></Scroll>
          </>
        )}
    </div>
  );
}
