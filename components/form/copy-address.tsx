"use client";
import { useRef, useState, useSyncExternalStore } from "react";

type Props = { readonly href: string; readonly label: string; readonly copy: string; readonly copied: string };

const never = (): (() => void) => () => undefined;

/** An address to hand on: to be marked and copied by hand, or with scripts by a button. */
export function CopyAddress({ href, label, copy, copied }: Props) {
  const at = useRef<HTMLInputElement>(null);
  // The button is there once it can do something: not on the server, and not with scripts off.
  const ready = useSyncExternalStore(never, () => true, () => false);
  const [done, setDone] = useState(false);
  const take = (): void => {
    at.current?.select();
    void navigator.clipboard?.writeText(href).then(() => setDone(true)).catch(() => undefined);
  };
  return (
    <div className="field">
      <label htmlFor="link-address">{label}</label>
      <input id="link-address" ref={at} readOnly value={href} spellCheck={false} />
      <p className="go-row">{ready && <button type="button" className="btn" onClick={take}>{copy}</button>}<span role="status">{done ? copied : ""}</span></p>
    </div>
  );
}
