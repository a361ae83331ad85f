"use client";
import { createContext, useCallback, useContext, useEffect, useState, type ReactNode } from "react";
import type { FieldError } from "../../ui/error-of";
import { ErrorSummary } from "../../ui/errors";
import { FoundErrors } from "../../ui/shown-errors";
import { useSay } from "../../words/speaking";

/** Tells the page what was found; `loud` takes the focus to the summary, as after a press of the button. */
export type Report = (errors: readonly FieldError[], loud: boolean) => void;
const Reporting = createContext<Report>(() => undefined);
export const useReport = (): Report => useContext(Reporting);

/** A page with a form that is checked in the page as well: the summary above, the form somewhere within. */
export function Checked({ errors, children }: { readonly errors: readonly FieldError[]; readonly children: ReactNode }) {
  const say = useSay();
  const [found, setFound] = useState<readonly FieldError[] | null>(null);
  const [times, setTimes] = useState(0);
  const report = useCallback<Report>((list, loud) => {
    setFound(list);
    if (loud) setTimes((n) => n + 1);
  }, []);
  const amiss = found !== null && found.length > 0;
  useEffect(() => {
    if (found === null) return;
    const mark = say("Error: ");
    const bare = document.title.startsWith(mark) ? document.title.slice(mark.length) : document.title;
    document.title = `${amiss ? mark : ""}${bare}`;
  }, [found, amiss, say]);
  return (
    <Reporting.Provider value={report}>
      <FoundErrors errors={found}>
        <ErrorSummary errors={errors} times={times} />
        {children}
      </FoundErrors>
    </Reporting.Provider>
  );
}
