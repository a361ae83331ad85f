"use client";
import { createContext, useContext, type ReactNode } from "react";
import type { FieldError } from "./error-of";

type Live = readonly FieldError[] | null;
const Found = createContext<Live>(null);

/** What the page itself found amiss, for the fields within. Null while it has not looked: what the server found is shown then. */
export function FoundErrors({ errors, children }: { readonly errors: Live; readonly children: ReactNode }) {
  return <Found.Provider value={errors}>{children}</Found.Provider>;
}

/** The errors to show: the page's own, once it has looked, in place of those that came with it. */
export const useShown = (given: readonly FieldError[]): readonly FieldError[] => useContext(Found) ?? given;
