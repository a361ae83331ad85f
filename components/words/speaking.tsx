"use client";
import { createContext, useContext, useMemo, type ReactNode } from "react";
import type { Language } from "@/lib/words/pages/language";
import { ENGLISH, sayFrom, type Entries, type Say } from "@/lib/words/pages/say";

const Voice = createContext<Say>(ENGLISH);
/** The voice of the page, for what speaks in the browser. */
export const useSay = (): Say => useContext(Voice);

/** Gives the page's voice to all within: of the catalogue only what is said in the browser is sent along. */
export function Speaking({ language, entries, children }: { readonly language: Language; readonly entries: Entries; readonly children: ReactNode }) {
  const say = useMemo(() => sayFrom(entries, language), [entries, language]);
  return <Voice.Provider value={language === "en-GB" ? ENGLISH : say}>{children}</Voice.Provider>;
}
