import type { StepId } from "@/lib/brief/draft";
import type { Say } from "@/lib/words/pages";
import { Choices } from "../ui/choices";
import type { Apart } from "./two";

type Props = { readonly step: StepId; readonly revision: number; /** The key under which what was typed is held. */ readonly kept: string; readonly apart: readonly Apart[]; readonly back: boolean; readonly say: Say };

/** Field by field what stands and what was typed: one of them is chosen, and then saved. */
export function TwoVersions({ step, revision, kept, apart, back, say }: Props) {
  return (
    <form method="post" action={`/request/${step}/both/save`} noValidate className="two-versions mt-8 max-w-[50rem]">
      <input type="hidden" name="revision" value={revision} />
      <input type="hidden" name="kept" value={kept} />
      {back && <input type="hidden" name="back" value="send" />}
      {apart.map((one) => (
        <Choices
          key={one.field} name={one.field} legend={one.name} two chosen={[]}
          options={[
            { value: "theirs", name: one.theirs, why: say("Stands now") }, { value: "mine", name: one.mine, why: say("Yours, not saved yet") },
            ...(one.joins ? [{ value: "both", name: say("Both together"), why: say("Everything that either of you ticked.") }] : []),
          ]}
        />
      ))}
      <div className="go-row">
        <button className="btn btn-go" type="submit" name="take" value="chosen">{say("Save what is chosen")}</button>
        <button className="btn-quiet" type="submit" name="take" value="theirs">{say("Keep all that stands")}</button>
        <button className="btn-quiet" type="submit" name="take" value="mine">{say("Save all of mine")}</button>
      </div>
    </form>
  );
}
