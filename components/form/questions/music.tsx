import { Choices, type Option } from "../../ui/choices";
import { NumberField } from "../../ui/field";
import { oneOf } from "../values";
import { spoken, spokenAll, UNSURE, type Asked, type Asking, type Choice } from "./ask";

export const BY: readonly Choice[] = [
  { value: "dj", name: "A DJ", why: "A table, two loudspeakers, power at hand." },
  { value: "band", name: "A band", why: "More floor, and more power." },
  { value: "playlist", name: "A playlist", why: "Over the house’s own loudspeakers." },
  { value: "none", name: "No music" },
  UNSURE,
];

/** How many dance at once, by the share of them in hundredths. */
export const SHARES = [{ value: "30", name: "Some of us" }, { value: "40", name: "A good many of us" }, { value: "50", name: "Half of us" }] as const satisfies readonly Choice[];

/** What is played, how many dance, and whether it plays the ceremony too. */
export function askMusic({ values, errors, guests, say }: Asking): Asked {
  const heads = (share: number): string | undefined => (guests > 0 ? say("About {n} of you on the floor at once.", { n: Math.ceil((guests * share) / 100) }) : undefined);
  const shares: readonly Option[] = [
    spoken({ value: "0", name: "No dance floor" }, say),
    ...SHARES.map(({ value, name }): Option => ({ value, name: say(name), why: heads(Number(value)) })),
    spoken({ ...UNSURE, why: "No floor is drawn until you say." }, say),
  ];
  const said = oneOf(values, "dancing");
  const own = said !== "" && said !== "unsure" && !shares.some((s) => s.value === said);
  return {
    first: <Choices name="by" legend={say("Who plays?")} options={spokenAll(BY, say)} chosen={[oneOf(values, "by")]} errors={errors} />,
    rest: (
      <>
        <fieldset className="ask">
          <legend>{say("If it is a band")}</legend>
          <NumberField name="players" label={say("Players")} hint={say("Leave it empty if there is no band, or you are not sure yet.")} value={oneOf(values, "players")} errors={errors} />
        </fieldset>
        <Choices
          name="dancing" legend={say("How many of you dance at once?")} two errors={errors} chosen={[said]}
          options={own ? [{ value: said, name: say("{share} in a hundred of us", { share: said }) }, ...shares] : shares}
        />
        <Choices
          name="atCeremony" legend={say("Do they play for the ceremony as well?")} two errors={errors} chosen={[oneOf(values, "atCeremony")]}
          hint={say("Then they must see the aisle from where they stand; if they cannot, we say so.")}
          options={spokenAll([{ value: "yes", name: "Yes" }, { value: "no", name: "No" }, UNSURE], say)}
        />
      </>
    ),
  };
}
