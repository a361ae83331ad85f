"use client";
import type { ReactNode } from "react";
import { errorOf, type FieldError } from "./error-of";
import { useSay } from "../words/speaking";
import { useShown } from "./shown-errors";

type Common = {
  readonly name: string;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  readonly value?: string;
  readonly errors: readonly FieldError[];
  readonly required?: boolean;
};
type TextProps = Common & {
  readonly size?: "short" | "middling" | "full";
  readonly inputMode?: "numeric" | "decimal" | "email" | "text";
  readonly autoComplete?: string;
  readonly type?: "text" | "email" | "search";
  readonly maxLength?: number;
};

const describedBy = (name: string, hint: ReactNode, error: string | undefined): string | undefined =>
  [hint ? `${name}-hint` : null, error ? `${name}-error` : null].filter(Boolean).join(" ") || undefined;

function Words({ name, label, hint, error }: { readonly name: string; readonly label: ReactNode; readonly hint?: ReactNode; readonly error?: string }) {
  const say = useSay();
  return (
    <>
      <label htmlFor={name}>{label}</label>
      {hint && <span className="field-hint" id={`${name}-hint`}>{hint}</span>}
      {error && <span className="field-error" id={`${name}-error`}><span className="hidden-words">{say("Error: ")}</span>{error}</span>}
    </>
  );
}

export function TextField({ name, label, hint, value, errors, size = "full", inputMode, autoComplete = "off", type = "text", maxLength }: TextProps) {
  const error = errorOf(useShown(errors), name);
  return (
    <div className={error ? "field amiss" : "field"}>
      <Words name={name} label={label} hint={hint} error={error} />
      <input
        id={name} name={name} type={type} defaultValue={value} className={size} inputMode={inputMode} autoComplete={autoComplete}
        maxLength={maxLength} aria-invalid={error ? true : undefined} aria-describedby={describedBy(name, hint, error)}
      />
    </div>
  );
}

export function NumberField(props: Omit<TextProps, "inputMode" | "type" | "size">) {
  return <TextField {...props} size="short" inputMode="numeric" />;
}

export function AreaField({ name, label, hint, value, errors, rows = 5 }: Common & { readonly rows?: number }) {
  const error = errorOf(useShown(errors), name);
  return (
    <div className={error ? "field amiss" : "field"}>
      <Words name={name} label={label} hint={hint} error={error} />
      <textarea id={name} name={name} rows={rows} defaultValue={value} aria-invalid={error ? true : undefined} aria-describedby={describedBy(name, hint, error)} />
    </div>
  );
}

type SelectProps = Common & { readonly options: readonly { readonly value: string; readonly text: string }[] };

export function SelectField({ name, label, hint, value, errors, options }: SelectProps) {
  const error = errorOf(useShown(errors), name);
  return (
    <div className={error ? "field amiss" : "field"}>
      <Words name={name} label={label} hint={hint} error={error} />
      <select id={name} name={name} defaultValue={value} aria-invalid={error ? true : undefined} aria-describedby={describedBy(name, hint, error)}>
        {options.map((o) => <option key={o.value} value={o.value}>{o.text}</option>)}
      </select>
    </div>
  );
}
