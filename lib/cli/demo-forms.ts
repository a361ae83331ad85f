import type { FormValues, StepId } from "../brief/draft";
import type { DemoAnswers } from "../demo";

export type Form = { readonly step: StepId; readonly values: FormValues };

/** The answers as the steps' forms would send them; a step without answers is not sent. */
export function formsOf(answers: DemoAnswers): readonly Form[] {
  const { guests, ceremony, meal, music, displays, extras, wishes, turnover, drape, notes } = answers;
  const forms: (Form | undefined)[] = [
    { step: "guests", values: texts(guests) },
    ceremony && { step: "ceremony", values: texts(ceremony) },
    (meal ?? turnover ?? drape) === undefined ? undefined : { step: "meal", values: texts({ ...meal, turnover, drape }) },
    music && { step: "music", values: { ...texts(music), dancing: music.dancing === undefined ? "" : String(Math.round(music.dancing * 100)) } },
    (displays ?? wishes) === undefined ? undefined : { step: "displays", values: { displays: displays ?? [], wishes: (wishes ?? []).map(wishText) } },
    (extras ?? notes) === undefined ? undefined : { step: "extras", values: { extras: extras ?? [], notes: notes ?? "" } },
  ];
  return forms.filter((one): one is Form => one !== undefined);
}

function texts(fields: Readonly<Record<string, unknown>>): FormValues {
  return Object.fromEntries(Object.entries(fields).flatMap(([name, value]) => {
    if (typeof value === "boolean") return [[name, value ? "yes" : "no"]];
    return typeof value === "string" || typeof value === "number" ? [[name, String(value)]] : [];
  }));
}

function wishText(wish: NonNullable<DemoAnswers["wishes"]>[number]): string {
  if ("near" in wish) return `${wish.put} near ${wish.near}`;
  if ("away-from" in wish) return `${wish.put} away-from ${wish["away-from"]}`;
  return `${wish.put} in-sight-of ${wish["in-sight-of"]}`;
}

/** The same wishes a little looser each time: any tables, then closer together, then without what takes most room. */
export function loosened(answers: DemoAnswers): readonly DemoAnswers[] {
  const anyTables: DemoAnswers = { ...answers, meal: { ...answers.meal, tables: "any", form: "any" }, drape: "any" };
  const closer: DemoAnswers = { ...anyTables, meal: { ...anyTables.meal, perTable: "most" } };
  const fewer: DemoAnswers = { ...closer, extras: [], displays: (answers.displays ?? []).slice(0, 2), wishes: [], meal: { ...closer.meal, top: "none" } };
  return [anyTables, closer, fewer];
}
