import { Choices, type Option } from "../../ui/choices";
import { oneOf } from "../values";
import { orAny, spokenAll, UNSURE, type Asked, type Asking, type Choice } from "./ask";

export const HERE: readonly Choice[] = [
  { value: "yes", name: "Yes, here" },
  { value: "no", name: "No, elsewhere", why: "Your guests come to us afterwards." },
  { ...UNSURE, why: "We keep the rows in the plan." },
];
export const SEATING: readonly Choice[] = [
  { value: "rows", name: "Straight rows", why: "Seats the most, and is laid quickest." },
  { value: "curve", name: "Curved rows", why: "Everyone turned towards you; takes more floor." },
  { value: "standing", name: "Standing", why: "A short ceremony, with a few chairs for those who need them." },
  { value: "at-tables", name: "At the laid tables", why: "Nobody moves afterwards, and the room need not be turned over." },
  { ...UNSURE, why: "We draw straight rows." },
];
export const AISLE: readonly Choice[] = [
  { value: "centre", name: "Down the middle" },
  { value: "sides", name: "Along both sides" },
  { value: "none", name: "None" },
  UNSURE,
];

/** Where and how the ceremony is held. */
export function askCeremony({ values, errors, rooms, say }: Asking): Asked {
  const fit = rooms.filter((r) => r.uses.includes("ceremony"));
  const options: readonly Option[] = [
    ...fit.map((r) => ({ value: r.id, name: r.name, why: r.outdoor ? say("Outdoors; the day needs a dry room as well.") : undefined })),
    ...spokenAll([{ value: "any", name: "Whichever suits best" }], say),
  ];
  return {
    first: <Choices name="here" legend={say("Is the ceremony at the venue?")} options={spokenAll(HERE, say)} chosen={[oneOf(values, "here")]} errors={errors} />,
    rest: (
      <>
        <Choices name="seating" legend={say("How do your guests watch it?")} options={spokenAll(SEATING, say)} chosen={[oneOf(values, "seating")]} errors={errors} two />
        <Choices name="aisle" legend={say("Where is the aisle?")} options={spokenAll(AISLE, say)} chosen={[oneOf(values, "aisle")]} errors={errors} two />
        {fit.length > 1 && <Choices name="room" legend={say("In which room?")} options={options} chosen={[orAny(oneOf(values, "room"))]} errors={errors} two />}
        {fit.length === 1 && <p className="not-offered">{say("Of the rooms in your package only the {room} takes a ceremony.", { room: fit[0]?.name ?? "" })}</p>}
        {fit.length === 0 && <p className="not-offered">{say("None of the rooms in your package takes a ceremony.")}</p>}
      </>
    ),
  };
}
