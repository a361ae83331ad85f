"use client";
import { useEffect, useRef } from "react";
import type { FieldError } from "./error-of";
import { useSay } from "../words/speaking";
import { useShown } from "./shown-errors";

type Props = { readonly errors: readonly FieldError[]; readonly saved?: boolean; /** Counts the times the page found something: each takes the focus anew. */ readonly times?: number };

/** Takes the focus when the page opens, and links each message to its field. */
export function ErrorSummary({ errors, saved = false, times = 0 }: Props) {
  const say = useSay();
  const shown = useShown(errors);
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => { if (times > 0) box.current?.focus(); }, [times]);
  if (shown.length === 0) return null;
  const head = say("{n} answers need another look", { n: shown.length });
  return (
    <div className="errors" role="alert" tabIndex={-1} autoFocus aria-labelledby="errors-head" ref={box}>
      <h2 id="errors-head">{head}</h2>
      <ul>{shown.map((e) => <li key={`${e.field}:${e.message}`}><a href={`#${e.field}`}>{e.message}</a></li>)}</ul>
      {!saved && <p className="note sec">{say("What you typed is still here; nothing on this page is saved yet.")}</p>}
    </div>
  );
}
