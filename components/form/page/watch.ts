import { zodResolver } from "@hookform/resolvers/zod";
import { createFormControl, type FieldErrors } from "react-hook-form";
import type { FieldError } from "@/lib/brief/draft";
import type { Say } from "@/lib/words/pages/say";
import { valuesIn } from "../form-values";
import type { Report } from "./checked";
import { schemaOf, taken, worded, type FormName, type Names } from "./schemas";
import { sender, type Sending } from "./send";

type How = { readonly form: FormName; readonly names: Names; readonly say: Say; readonly report: Report; readonly tell: (state: Sending) => void };

type Field = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;
const isField = (x: unknown): x is Field =>
  (x instanceof HTMLInputElement && x.type !== "hidden") || x instanceof HTMLSelectElement || x instanceof HTMLTextAreaElement;
const fieldsOf = (form: HTMLFormElement): readonly Field[] => [...form.elements].filter(isField).filter((one) => one.name !== "");

/** One message a field, in the order of the page. */
function listOf(errors: FieldErrors, order: readonly string[]): readonly FieldError[] {
  const first = (at: unknown): string | undefined => {
    if (typeof at !== "object" || at === null) return undefined;
    if ("message" in at && typeof at.message === "string") return at.message;
    return Object.values(at).map(first).find((one) => one !== undefined);
  };
  return Object.keys(errors).sort((a, b) => order.indexOf(a) - order.indexOf(b)).flatMap((field) => {
    const message = first(errors[field]);
    return message === undefined ? [] : [{ field, message }];
  });
}

/**
 * Checks the form in the page: when its button is pressed, and after that whenever a field is left. Its fields stay the
 * browser's own; what is read is what would be sent. Gives the way to end it.
 */
export function watch(at: HTMLFormElement, { form, names, say: voice, report, tell }: How): () => void {
  const check = zodResolver(schemaOf(form));
  const control = createFormControl({
    mode: "onSubmit", reValidateMode: "onBlur", shouldFocusError: false,
    resolver: (_, context, options) => check({ ...taken(form, valuesIn(at)) }, context, options),
  });
  const order = fieldsOf(at).map((one) => one.name);
  // By name alone: given the elements, it would write its own start values into them, over what was chosen before this ran.
  for (const name of order) control.register(name);
  const say = (errors: FieldErrors, loud: boolean): void => report(worded(form, listOf(errors, order), { names, say: voice }), loud);

  let pressed = false;
  const quiet = control.subscribe({ formState: { errors: true }, callback: ({ errors }) => { if (pressed && errors) say(errors, false); } });
  const out = sender(at, tell);
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const { submitter } = event;
    void control.handleSubmit(
      () => { pressed = true; report([], false); out.send(submitter); },
      (errors) => { pressed = true; say(errors, true); },
    )();
  };
  // A message that goes while the button is being pressed would move the button from under the finger: it waits until that is done.
  let held = false;
  const waiting: (() => void)[] = [];
  const press = (): void => { held = true; };
  const release = (): void => { setTimeout(() => { held = false; for (const one of waiting.splice(0)) one(); }, 50); };
  const left = (event: FocusEvent): void => {
    const { target } = event;
    if (!isField(target) || !target.name) return;
    const look = (): void => { void control.register(target.name).onBlur({ type: "blur", target }); };
    if (held) waiting.push(look); else look();
  };
  const gone = new AbortController(), { signal } = gone;
  at.addEventListener("submit", submit, { signal });
  at.addEventListener("focusout", left, { signal });
  document.addEventListener("pointerdown", press, { signal, capture: true });
  for (const end of ["pointerup", "pointercancel"] as const) document.addEventListener(end, release, { signal, capture: true });
  return () => {
    gone.abort();
    quiet();
    out.stop();
  };
}
