import { folded } from "../../base";
import type { Venue } from "../schema";
import { exampleLength, typedLength, typedMoney } from "./lengths";

/** What a form sends: a name of a field to what was typed, or to the boxes ticked. */
export type Typed = Readonly<Record<string, string | readonly string[] | undefined>>;
/** `fact`: it can be read, yet contradicts what else is typed; a draft may hold it. */
export type Amiss = { readonly field: string; readonly message: string; readonly fact?: boolean };
/** What keeps a form from being taken: of a draft what cannot be read alone. */
export const faultsLeft = (faults: readonly Amiss[], asDraft: boolean): readonly Amiss[] => (asDraft ? faults.filter((one) => one.fact !== true) : faults);
export type Option = { readonly value: string; readonly text: string };
export type Field = {
  readonly name: string; readonly label: string;
  readonly kind: "text" | "area" | "length" | "whole" | "figure" | "money" | "yes" | "one" | "many" | "kept";
  readonly options?: readonly Option[]; readonly hint?: string;
};
export type Shown = Readonly<Record<string, string | readonly string[]>>;
/** A group of fields, or of rows of fields where `one` says what a row is. */
export type Part = {
  readonly id: string; readonly title: string; readonly about?: string; readonly one?: string;
  /** Rows that are neither added nor taken away here. */
  readonly fixed?: boolean;
  /** A row whose field of this name is left empty is none. */
  readonly key: string;
  readonly fields: readonly Field[]; readonly shown: readonly Shown[];
  /** Where its rows stand in the venue's file, and which field a word of the file is typed in. */
  readonly at: string; readonly words?: Readonly<Record<string, string>>;
};

/** One row as typed. What cannot be read is told as amiss, and counts as NaN or as an empty text meanwhile. */
export type Row = {
  readonly index: number;
  readonly raw: (name: string) => string;
  readonly many: (name: string) => readonly string[];
  readonly yes: (name: string) => boolean;
  readonly text: (name: string) => string;
  readonly length: (name: string, least?: number) => number;
  readonly whole: (name: string, least?: number, most?: number) => number;
  readonly figure: (name: string) => number;
  readonly money: (name: string) => number;
  readonly maybe: { readonly text: (name: string) => string | undefined; readonly length: (name: string) => number | undefined; readonly whole: (name: string) => number | undefined; readonly figure: (name: string) => number | undefined };
  readonly amiss: (name: string, message: string, fact?: boolean) => void;
};
export type Form = { readonly one: (part: string) => Row; readonly rows: (part: string) => readonly Row[] };

const fieldOf = (part: Pick<Part, "id" | "one">, index: number, name: string): string => (part.one === undefined ? `${part.id}.${name}` : `${part.id}.${index}.${name}`);
export { fieldOf };

/** The places of the rows in what was typed: those shown, those added, none that was taken away or left empty. */
function placesOf(part: Part, typed: Typed): readonly number[] {
  const found = new Set<number>();
  for (const name of Object.keys(typed)) {
    const read = name.startsWith(`${part.id}.`) ? /^(\d{1,4})\./.exec(name.slice(part.id.length + 1)) : null;
    if (read) found.add(Number(read[1]));
  }
  const filled = (i: number): boolean => { const v = typed[fieldOf(part, i, part.key)]; return typeof v === "string" ? v.trim() !== "" : (v?.length ?? 0) > 0; };
  return [...found].sort((a, b) => a - b).filter((i) => filled(i) && typed[fieldOf(part, i, "gone")] === undefined);
}

/** Reads what was typed, part by part; what is amiss gathers in `faults`. */
export function formOf(parts: readonly Part[], typed: Typed, { venue, faults }: { readonly venue: Pick<Venue, "lengths" | "currency">; readonly faults: Amiss[] }): Form {
  const partOf = (id: string): Part => {
    const part = parts.find((p) => p.id === id);
    if (!part) throw new Error(`no part ${id}`);
    return part;
  };
  return {
    one: (id) => rowOf(partOf(id), 0, { typed, venue, faults }),
    rows: (id) => placesOf(partOf(id), typed).map((i) => rowOf(partOf(id), i, { typed, venue, faults })),
  };
}

type Reading = { readonly typed: Typed; readonly venue: Pick<Venue, "lengths" | "currency">; readonly faults: Amiss[] };

function rowOf(part: Part, index: number, { typed, venue, faults }: Reading): Row {
  const value = (name: string): string => { const v = typed[fieldOf(part, index, name)]; return (typeof v === "string" ? v : (v?.[0] ?? "")).trim(); };
  const labelOf = (name: string): string => part.fields.find((f) => f.name === name)?.label ?? name;
  const amiss = (name: string, message: string, fact = false): void => {
    const whose = part.one === undefined ? labelOf(name) : `${capital(part.one)} ${index + 1}, ${labelOf(name).toLowerCase()}`;
    faults.push({ field: fieldOf(part, index, name), message: `${whose}: ${message}`, ...(fact ? { fact } : {}) });
  };
  const taken = <T>(name: string, read: T | undefined, message: string): T | undefined => { if (read === undefined) amiss(name, message); return read; };
  const length = (name: string, least = -Infinity): number => {
    const read = typedLength(value(name), venue);
    if (read !== undefined && read < least) amiss(name, `at least ${least / 1000 >= 1 ? `${least / 1000} m` : `${least} mm`}.`);
    return taken(name, read, `type a length, such as ${exampleLength(venue)}.`) ?? NaN;
  };
  const whole = (name: string, least = 0, most = 1_000_000): number => {
    const text = value(name), read = /^-?\d{1,9}$/.test(text) ? Number(text) : undefined;
    const within = read !== undefined && read >= least && read <= most ? read : undefined;
    return taken(name, within, `type a whole number from ${least} to ${most}.`) ?? NaN;
  };
  const figure = (name: string): number => {
    const text = value(name).replace(",", ".");
    return taken(name, /^-?\d{1,9}(\.\d{1,6})?$/.test(text) ? Number(text) : undefined, "type a number.") ?? NaN;
  };
  const given = <T>(name: string, read: (name: string) => T): T | undefined => (value(name) === "" ? undefined : read(name));
  return {
    index, raw: value, amiss, length, whole, figure,
    many: (name) => { const v = typed[fieldOf(part, index, name)]; return v === undefined || v === "" ? [] : typeof v === "string" ? [v] : v; },
    yes: (name) => value(name) === "yes",
    text: (name) => taken(name, value(name) || undefined, "is missing.") ?? "",
    money: (name) => taken(name, typedMoney(value(name), venue.currency), "type an amount, such as 45.00.") ?? NaN,
    maybe: { text: (n) => given(n, value), length: (n) => given(n, length), whole: (n) => given(n, whole), figure: (n) => given(n, figure) },
  };
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A name as an identifier of the file: lower-case words with hyphens, none that is taken already. */
export function idFrom(name: string, taken: readonly string[], otherwise: string): string {
  const bare = folded(name).replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 60).replace(/-+$/, "") || otherwise;
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? bare : `${bare}-${n}`;
    if (!taken.includes(id)) return id;
  }
}
