import type { Draft, FormValues, StepId } from "@/lib/brief/draft";

const word = (v: string | number | undefined): string => (v === undefined ? "unsure" : String(v));
const figure = (n: number | undefined): string => (n === undefined ? "" : String(n));
const yesNo = (b: boolean | undefined): string => (b === undefined ? "unsure" : b ? "yes" : "no");

/** A saved step as its form shows it again: what was left open shows as "not sure yet". Nothing for a step never saved. */
export function shownValues(draft: Draft, step: StepId): FormValues {
  const { guests, ceremony, meal, music, displays, extras } = draft;
  switch (step) {
    case "guests":
      return guests ? Object.fromEntries(Object.entries(guests).map(([k, v]) => [k, figure(v)])) : {};
    case "ceremony":
      return ceremony ? { here: yesNo(ceremony.here), room: word(ceremony.room), seating: word(ceremony.seating), aisle: word(ceremony.aisle) } : {};
    case "meal":
      return meal ? {
        service: word(meal.service), tables: word(meal.tables), form: word(meal.form), top: word(meal.top), perTable: word(meal.perTable),
        room: word(meal.room), turnover: yesNo(meal.turnover), drape: word(meal.drape),
      } : {};
    case "music":
      return music ? { by: word(music.by), players: figure(music.players), dancing: word(music.dancing), atCeremony: yesNo(music.atCeremony) } : {};
    case "displays":
      return { displays: displays?.displays ?? [], wishes: (displays?.wishes ?? []).map(wishText) };
    case "extras":
      return { extras: extras?.extras ?? [], notes: extras?.notes ?? "" };
  }
}

/** A wish as its box sends it: "cake near window". */
function wishText(wish: NonNullable<NonNullable<Draft["displays"]>["wishes"]>[number]): string {
  if ("near" in wish) return `${wish.put} near ${wish.near}`;
  return "away-from" in wish ? `${wish.put} away-from ${wish["away-from"]}` : `${wish.put} in-sight-of ${wish["in-sight-of"]}`;
}

export const oneOf = (values: FormValues, name: string): string => {
  const v = values[name];
  return typeof v === "string" ? v : (v?.[0] ?? "");
};
export const manyOf = (values: FormValues, name: string): readonly string[] => {
  const v = values[name];
  return v === undefined || v === "" ? [] : typeof v === "string" ? [v] : v;
};
