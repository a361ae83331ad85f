import type { ReactNode } from "react";

/** A table that may be wider than a phone: it alone scrolls sideways, and the keyboard can reach it to do so. */
export function Scroll({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return <div className="scroll" role="group" aria-label={label} tabIndex={0}>{children}</div>;
}
