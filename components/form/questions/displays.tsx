import { Choices, type Option } from "../../ui/choices";
import { AreaField } from "../../ui/field";
import { manyOf, oneOf } from "../values";
import { spokenAll, type Asked, type Asking, type Choice } from "./ask";
import { DISPLAY_OPTIONS, EXTRA_OPTIONS } from "./shown";

export const WISH_OPTIONS: readonly Choice[] = [
  { value: "cake in-sight-of top", name: "The cake in sight of our table" },
  { value: "cake near feature", name: "The cake before the handsomest wall" },
  { value: "top near window", name: "Our table by a window" },
  { value: "top in-sight-of dance-floor", name: "Our table in sight of the dance floor" },
  { value: "dj away-from top", name: "The music away from our table" },
  { value: "photo-booth near bar", name: "The photo booth near the bar" },
];
const plain = (wish: string): string => wish.replace(/-/g, " ").replace(/^./, (c) => c.toUpperCase());

/** Small tables and easels. */
export function askDisplays({ values, errors, say }: Asking): Asked {
  const wished = manyOf(values, "wishes");
  const own = wished.filter((w) => !WISH_OPTIONS.some((o) => o.value === w)).map((value): Option => ({ value, name: plain(value) }));
  return {
    first: (
      <Choices name="displays" legend={say("What would you like on show?")} many options={spokenAll(DISPLAY_OPTIONS, say)} chosen={manyOf(values, "displays")} errors={errors}
        hint={say("Each is given the place that suits it in the house. Tick none if you are not sure yet.")} />
    ),
    rest: <Choices name="wishes" legend={say("Has any of it a place you wish for?")} many two options={[...spokenAll(WISH_OPTIONS, say), ...own]} chosen={wished} errors={errors}
      hint={say("We come as near to each as the rooms allow, and say where we cannot.")} />,
  };
}

/** What else takes floor, and words to the coordinator. */
export function askExtras({ values, errors, say }: Asking): Asked {
  return {
    first: <Choices name="extras" legend={say("What else will there be?")} many options={spokenAll(EXTRA_OPTIONS, say)} chosen={manyOf(values, "extras")} errors={errors} hint={say("Tick none if you are not sure yet.")} />,
    rest: (
      <fieldset className="ask">
        <legend>{say("Anything we should know?")}</legend>
        <AreaField name="notes" label={say("In your own words (optional)")} value={oneOf(values, "notes")} errors={errors} rows={6}
          hint={say("Who should sit near the door, what you bring yourselves, what must not be forgotten. The desk reads this. 10,000 characters at the most.")} />
      </fieldset>
    ),
  };
}
