import { Choices, type Option } from "../../ui/choices";
import { NumberField } from "../../ui/field";
import { oneOf } from "../values";
import { UNSURE, type Asked, type Asking } from "./ask";

export const BY: readonly Option[] = [
  { value: "dj", name: "A DJ", why: "A table, two loudspeakers, power at hand." },
  { value: "band", name: "A band", why: "More floor, and more power." },
  { value: "playlist", name: "A playlist", why: "Over the house’s own loudspeakers." },
  { value: "none", name: "No music" },
  UNSURE,
];

/** What is played, how many dance, and whether it plays the ceremony too. */
export function askMusic({ values, errors, guests }: Asking): Asked {
  const heads = (share: number): string | undefined => (guests > 0 ? `About ${Math.ceil((guests * share) / 100)} of you on the floor at once.` : undefined);
  const shares: readonly Option[] = [
    { value: "0", name: "No dance floor" },
    { value: "30", name: "Some of us", why: heads(30) },
    { value: "40", name: "A good many of us", why: heads(40) },
    { value: "50", name: "Half of us", why: heads(50) },
    { ...UNSURE, why: "No floor is drawn until you say." },
  ];
  const said = oneOf(values, "dancing");
  const own = said !== "" && said !== "unsure" && !shares.some((s) => s.value === said);
  return {
    first: <Choices name="by" legend="Who plays?" options={BY} chosen={[oneOf(values, "by")]} errors={errors} />,
    rest: (
      <>
        <fieldset className="ask">
          <legend>If it is a band</legend>
          <NumberField name="players" label="Players" hint="Leave it empty if there is no band, or you are not sure yet." value={oneOf(values, "players")} errors={errors} />
        </fieldset>
        <Choices
          name="dancing" legend="How many of you dance at once?" two errors={errors} chosen={[said]}
          options={own ? [{ value: said, name: `${said} in a hundred of us` }, ...shares] : shares}
        />
        <Choices
          name="atCeremony" legend="Do they play for the ceremony as well?" two errors={errors} chosen={[oneOf(values, "atCeremony")]}
          hint="Then they must see the aisle from where they stand; if they cannot, we say so."
          options={[{ value: "yes", name: "Yes" }, { value: "no", name: "No" }, UNSURE]}
        />
      </>
    ),
  };
}
