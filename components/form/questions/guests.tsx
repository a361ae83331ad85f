import { NumberField } from "../../ui/field";
import type { Phrase } from "@/lib/words/pages/say";
import { oneOf } from "../values";
import type { Asked, Asking } from "./ask";

/** Counts: any of them may stay empty, which is "not sure yet". */
export function askGuests({ values, errors, say }: Asking): Asked {
  const field = (name: string, label: Phrase, hint: Phrase) => (
    <NumberField name={name} label={say(label)} hint={say(hint)} value={oneOf(values, name)} errors={errors} />
  );
  return {
    first: (
      <fieldset className="ask">
        <legend>{say("How many of you will there be?")}</legend>
        <p className="ask-hint">{say("Your best guess today will do; it may change later. Leave a line empty where you are not sure yet.")}</p>
        {field("adults", "Adults", "The two of you are among them.")}
        {field("children", "Children", "Everyone who needs a place of their own and is under eighteen.")}
      </fieldset>
    ),
    rest: (
      <>
        <fieldset className="ask">
          <legend>{say("Who needs something of their own?")}</legend>
          <div className="fields-row">
          {field("highChairs", "High chairs", "For the smallest of the children; each takes a chair’s place at a table.")}
          {field("wheelchairs", "Wheelchair places", "On the short, wide way from the door; not all at the back.")}
          {field("quiet", "Away from the loudspeakers", "Guests who would rather talk: older ones, small children.")}
          {field("suppliers", "People who work that day", "Photographers, players. They eat too, and are not among your guests.")}
          </div>
        </fieldset>
        <fieldset className="ask">
          <legend>{say("If the numbers change through the day")}</legend>
          <p className="ask-hint">{say("Leave these empty when everyone stays from first to last.")}</p>
          <div className="fields-row">
          {field("ceremony", "At the ceremony", "All who watch it, the two of you among them.")}
          {field("evening", "In the evening", "All who are there once the dancing begins.")}
          </div>
        </fieldset>
      </>
    ),
  };
}
