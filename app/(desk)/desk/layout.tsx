import type { ReactNode } from "react";

/** The desk works in English, whatever its visitor chose to read on the couple's side: a reading voice is told so. */
export default function DeskLayout({ children }: { readonly children: ReactNode }) {
  return <div lang="en-GB" className="contents">{children}</div>;
}
