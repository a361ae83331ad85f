import type { FieldError } from "@/components/ui/error-of";
import { SelectField, AreaField, TextField } from "@/components/ui/field";
import { fieldOf, type Field, type Part, type Typed } from "@/lib/venue/edit";

type Props = { readonly part: Part; /** What was typed and not saved; else what stands is shown. */ readonly typed?: Typed; readonly errors: readonly FieldError[]; readonly spare?: number };

const valueOf = ({ part, typed }: Pick<Props, "part" | "typed">, i: number, name: string): string | readonly string[] => {
  if (typed) return typed[fieldOf(part, i, name)] ?? "";
  return part.shown[i]?.[name] ?? "";
};
const one = (v: string | readonly string[]): string => (typeof v === "string" ? v : (v[0] ?? ""));
const many = (v: string | readonly string[]): readonly string[] => (typeof v === "string" ? (v === "" ? [] : [v]) : v);

/** One group of the editor's form: its fields, or a row of fields for each thing and some empty ones for more. */
export function PartFields({ part, typed, errors, spare = 2 }: Props) {
  const typedRows = typed ? Math.max(0, ...Object.keys(typed).map((name) => { const read = name.startsWith(`${part.id}.`) ? /^(\d+)\./.exec(name.slice(part.id.length + 1)) : null; return read ? Number(read[1]) + 1 : 0; })) : 0;
  const rows = part.one === undefined ? 1 : part.fixed ? part.shown.length : Math.max(part.shown.length, typedRows) + (typed ? 0 : spare);
  const firstNew = part.shown.length;
  return (
    <section className="section venue-part" aria-labelledby={`part-${part.id}`}>
      <h2 id={`part-${part.id}`}>{part.title}</h2>
      {part.about && <p className="small sec measure mt-3">{part.about}</p>}
      {part.one === undefined ? <div className="venue-row">{part.fields.map((f) => <One key={f.name} field={f} name={fieldOf(part, 0, f.name)} value={valueOf({ part, typed }, 0, f.name)} errors={errors} />)}</div>
        : Array.from({ length: rows }, (_, i) => <Row key={i} part={part} typed={typed} errors={errors} index={i} fresh={i >= firstNew} open={i < firstNew} />)}
    </section>
  );
}

function Row({ part, typed, errors, index, fresh }: Props & { readonly index: number; readonly fresh: boolean; readonly open: boolean }) {
  const title = one(valueOf({ part, typed }, index, "name")) || one(valueOf({ part, typed }, index, "why"));
  const words = fresh ? `Another ${part.one ?? ""}` : `${(part.one ?? "").replace(/^./, (c) => c.toUpperCase())} ${index + 1}${title ? `: ${title}` : ""}`;
  return (
    <fieldset className="venue-row">
      <legend className="venue-legend">{words}</legend>
      {part.fields.map((f) => <One key={f.name} field={f} name={fieldOf(part, index, f.name)} value={valueOf({ part, typed }, index, f.name)} errors={errors} />)}
      {!fresh && !part.fixed && <Tick name={fieldOf(part, index, "gone")} value="yes" text="Take it away" on={one(valueOf({ part, typed }, index, "gone")) === "yes"} />}
    </fieldset>
  );
}

function Tick({ name, value, text, on, id = name }: { readonly name: string; readonly value: string; readonly text: string; readonly on: boolean; readonly id?: string }) {
  return <label className="tick" htmlFor={id}><input id={id} type="checkbox" name={name} value={value} defaultChecked={on} /><span>{text}</span></label>;
}

/** What one column of the form would cut off: a word to choose, or a hint that would stand in a tower of lines. */
const isLong = ({ hint = "", options = [] }: Field): boolean => hint.length > 24 || options.some((o) => o.text.length > 9);

function One({ field, name, value, errors }: { readonly field: Field; readonly name: string; readonly value: string | readonly string[]; readonly errors: readonly FieldError[] }) {
  const common = { name, label: field.label, hint: field.hint, errors };
  switch (field.kind) {
    case "kept": return <input type="hidden" name={name} value={one(value)} />;
    case "yes": return <div className={field.label.length > 24 ? "wide" : undefined}><Tick name={name} value="yes" text={field.label} on={one(value) === "yes"} /></div>;
    case "one": return <div className={isLong(field) ? "double" : undefined}><SelectField {...common} value={one(value) || field.options?.[0]?.value} options={field.options ?? []} /></div>;
    case "many": return <Many field={field} name={name} chosen={many(value)} errors={errors} />;
    case "area": return <div className="wide"><AreaField {...common} value={one(value)} rows={5} /></div>;
    case "whole": return <div className={isLong(field) ? "double" : undefined}><TextField {...common} value={one(value)} inputMode="numeric" maxLength={9} /></div>;
    case "figure": case "money": return <TextField {...common} value={one(value)} inputMode="decimal" maxLength={20} />;
    case "text": return <div className="double"><TextField {...common} value={one(value)} maxLength={2000} /></div>;
    default: return <div className={isLong(field) ? "double" : undefined}><TextField {...common} value={one(value)} maxLength={30} /></div>;
  }
}

function Many({ field, name, chosen, errors }: { readonly field: Field; readonly name: string; readonly chosen: readonly string[]; readonly errors: readonly FieldError[] }) {
  const error = errors.find((e) => e.field === name)?.message;
  return (
    <fieldset className={error ? "ticks wide amiss" : "ticks wide"} aria-describedby={error ? `${name}-error` : undefined}>
      <legend className="tick-legend">{field.label}</legend>
      {error && <span className="field-error" id={`${name}-error`}><span className="hidden-words">Error: </span>{error}</span>}
      {(field.options ?? []).map((o, i) => <Tick key={o.value} id={i === 0 ? name : `${name}-${o.value}`} name={name} value={o.value} text={o.text} on={chosen.includes(o.value)} />)}
    </fieldset>
  );
}
