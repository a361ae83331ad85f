import type { Display, Extra } from "@/lib/brief";
import { Choices, type Option } from "../../ui/choices";
import { AreaField } from "../../ui/field";
import { manyOf, oneOf } from "../values";
import { spokenAll, type Asked, type Asking, type Choice } from "./ask";

type Named<T extends string> = Choice & { readonly value: T };

export const DISPLAY_OPTIONS: readonly Named<Display>[] = [
  { value: "welcome", name: "Welcome table", why: "Where your guests come in." },
  { value: "seating-plan", name: "Seating plan", why: "Where people can stand and read it." },
  { value: "cards", name: "Cards and gifts", why: "On the way in, not beside an unwatched outer door." },
  { value: "guest-book", name: "Guest book", why: "With room for two to write." },
  { value: "photographs", name: "Photographs", why: "Along the way in." },
  { value: "cake", name: "Cake", why: "Before a good wall, in view of the tables, out of the sun." },
  { value: "favours", name: "Favours", why: "A table of their own, near the way to the tables." },
];
export const EXTRA_OPTIONS: readonly Named<Extra>[] = [
  { value: "photo-booth", name: "Photo booth", why: "At a plain wall, with power." },
  { value: "lounge", name: "A lounge corner", why: "Settles and chairs between bar and dance floor." },
  { value: "cocktail-tables", name: "High tables", why: "For glasses, at the drinks and beside the dance floor." },
  { value: "appetisers", name: "A table of small bites", why: "At a wall, out of the way of the door." },
  { value: "children-corner", name: "A corner for the children", why: "Away from the loudspeakers." },
  { value: "second-bar", name: "A second bar", why: "Shorter queues; it takes floor." },
];
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
