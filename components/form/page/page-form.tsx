"use client";
import { useEffect, useRef, useState, type ReactNode } from "react";
import type { Phrase } from "@/lib/words/pages/say";
import { useSay } from "../../words/speaking";
import { useReport } from "./checked";
import type { FormName, Names } from "./schemas";
import type { Sending } from "./send";

type Props = {
  readonly form: FormName;
  readonly action: string;
  /** What each field is called, for messages that begin with it. */
  readonly names?: Names;
  readonly className?: string;
  readonly children: ReactNode;
};

const WORDS: Readonly<Record<Exclude<Sending, "idle">, Phrase>> = {
  sending: "Saving…",
  offline: "Not saved: there is no connection. What you typed is still here; we try again until it is saved. Keep this page open.",
  failed: "Not saved: the answer was not what was expected. What you typed is still here; press again in a moment.",
};

/**
 * A form that posts by itself with scripts off. With scripts it is first checked in the page by the server's own schema, and
 * then sent to the same address; the means for that are fetched once the page stands.
 */
export function PageForm({ form, action, names, className, children }: Props) {
  const at = useRef<HTMLFormElement>(null);
  const report = useReport();
  const say = useSay();
  const [sending, setSending] = useState<Sending>("idle");
  useEffect(() => {
    const element = at.current;
    if (!element) return;
    let gone = false;
    let leave = (): void => undefined;
    import("./watch").then(({ watch }) => {
      if (!gone) leave = watch(element, { form, names: names ?? {}, say, report, tell: setSending });
    }).catch(() => undefined);
    return () => { gone = true; leave(); };
  }, [form, names, say, report]);
  return (
    <form ref={at} className={className} method="post" action={action} noValidate>
      {children}
      <p className={sending === "offline" || sending === "failed" ? "save-state save-wait" : "save-state"} role="status">{sending === "idle" ? "" : say(WORDS[sending])}</p>
    </form>
  );
}
