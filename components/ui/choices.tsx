"use client";
import type { ReactNode } from "react";
import { errorOf, type FieldError } from "./error-of";
import { useSay } from "../words/speaking";
import { useShown } from "./shown-errors";

export type Option = { readonly value: string; readonly name: ReactNode; readonly why?: ReactNode; readonly more?: ReactNode };
type ChoicesProps = {
  readonly name: string;
  readonly legend: ReactNode;
  readonly hint?: ReactNode;
  readonly options: readonly Option[];
  readonly chosen: readonly string[];
  readonly many?: boolean;
  readonly two?: boolean;
  readonly errors?: readonly FieldError[];
  /** Why something one might look for is not among the choices. */
  readonly notOffered?: ReactNode;
};

/** One question: rows between fine rules. The first row carries the field's id, for the error summary's link. */
export function Choices({ name, legend, hint, options, chosen, many = false, two = false, errors = [], notOffered }: ChoicesProps) {
  const say = useSay();
  const error = errorOf(useShown(errors), name);
  const about = [hint ? `${name}-hint` : null, error ? `${name}-error` : null].filter(Boolean).join(" ") || undefined;
  return (
    <fieldset className={error ? "ask amiss" : "ask"} aria-describedby={about}>
      <legend>{legend}</legend>
      {hint && <p className="ask-hint" id={`${name}-hint`}>{hint}</p>}
      {error && <span className="field-error" id={`${name}-error`}><span className="hidden-words">{say("Error: ")}</span>{error}</span>}
      <div className={two ? "choices choices-two" : "choices"}>
        {options.map((o, i) => {
          const id = i === 0 ? name : `${name}-${o.value.replace(/\s+/g, "-") || "unsure"}`;
          return (
            <label className="choice" key={o.value} htmlFor={id}>
              <input
                id={id} type={many ? "checkbox" : "radio"} name={name} value={o.value} defaultChecked={chosen.includes(o.value)}
                aria-labelledby={`${id}-name`} aria-describedby={o.why || o.more ? `${id}-why` : undefined}
              />
              <span>
                <span className="choice-name" id={`${id}-name`}>{o.name}</span>
                {(o.why || o.more) && <span className="choice-why" id={`${id}-why`}>{o.why}{o.more}</span>}
              </span>
            </label>
          );
        })}
      </div>
      {notOffered && <p className="not-offered">{notOffered}</p>}
    </fieldset>
  );
}
