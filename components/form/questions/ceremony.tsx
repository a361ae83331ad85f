import { Choices, type Option } from "../../ui/choices";
import { oneOf } from "../values";
import { UNSURE, type Asked, type Asking } from "./ask";

export const HERE: readonly Option[] = [
  { value: "yes", name: "Yes, here" },
  { value: "no", name: "No, elsewhere", why: "Your guests come to us afterwards." },
  { ...UNSURE, why: "We keep the rows in the plan." },
];
export const SEATING: readonly Option[] = [
  { value: "rows", name: "Straight rows", why: "Seats the most, and is laid quickest." },
  { value: "curve", name: "Curved rows", why: "Everyone turned towards you; takes more floor." },
  { value: "standing", name: "Standing", why: "A short ceremony, with a few chairs for those who need them." },
  { value: "at-tables", name: "At the laid tables", why: "Nobody moves afterwards, and the room need not be turned over." },
  { ...UNSURE, why: "We draw straight rows." },
];
export const AISLE: readonly Option[] = [
  { value: "centre", name: "Down the middle" },
  { value: "sides", name: "Along both sides" },
  { value: "none", name: "None" },
  UNSURE,
];

/** Where and how the ceremony is held. */
export function askCeremony({ values, errors, rooms }: Asking): Asked {
  const fit = rooms.filter((r) => r.uses.includes("ceremony"));
  const options: readonly Option[] = [
    ...fit.map((r) => ({ value: r.id, name: r.name, why: r.outdoor ? "Outdoors; the day needs a dry room as well." : undefined })),
    { value: "any", name: "Whichever suits best" }, UNSURE,
  ];
  return {
    first: <Choices name="here" legend="Is the ceremony at the venue?" options={HERE} chosen={[oneOf(values, "here")]} errors={errors} />,
    rest: (
      <>
        <Choices name="seating" legend="How do your guests watch it?" options={SEATING} chosen={[oneOf(values, "seating")]} errors={errors} two />
        <Choices name="aisle" legend="Where is the aisle?" options={AISLE} chosen={[oneOf(values, "aisle")]} errors={errors} two />
        {fit.length > 1 && <Choices name="room" legend="In which room?" options={options} chosen={[oneOf(values, "room")]} errors={errors} two />}
        {fit.length === 1 && <p className="not-offered">Of the rooms in your package only the {fit[0]?.name} takes a ceremony.</p>}
        {fit.length === 0 && <p className="not-offered">None of the rooms in your package takes a ceremony.</p>}
      </>
    ),
  };
}
