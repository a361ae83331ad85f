import { pathText } from "../../../lib/base";

/** A file with one field given wrongly, and where that must be told. */
export type Wrong = { readonly what: string; readonly path: string; readonly or?: string; readonly file: unknown };

type Node = {
  readonly type?: string; readonly const?: unknown; readonly enum?: readonly unknown[]; readonly minimum?: number; readonly maximum?: number;
  readonly minLength?: number; readonly maxLength?: number; readonly minItems?: number; readonly maxItems?: number; readonly pattern?: string;
  readonly items?: Node | boolean; readonly prefixItems?: readonly Node[]; readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[]; readonly additionalProperties?: Node | boolean; readonly anyOf?: readonly Node[]; readonly propertyNames?: Node;
};
type Key = string | number;

const isRecord = (v: unknown): v is Record<string, unknown> => typeof v === "object" && v !== null && !Array.isArray(v);

/** A copy of a value with the thing at a path put in its place, or taken out where `value` is undefined. */
export function put(root: unknown, path: readonly Key[], value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (Array.isArray(root)) return root.map((v: unknown, i) => (i === key ? put(v, rest, value) : v));
  if (!isRecord(root)) throw new Error(`nothing at ${pathText(path)}`);
  const out: Record<string, unknown> = { ...root };
  const next = put(out[key], rest, value);
  if (next === undefined) delete out[key];
  else Object.defineProperty(out, key, { value: next, enumerable: true, writable: true, configurable: true });
  return out;
}

/**
 * Every way in which one field of a file breaks its JSON Schema: each field of the sample in turn is missing, of another
 * type, out of its range, not among its words, or has a stranger beside it. The sample should hold every field.
 */
export function wrongs(schema: Node, sample: unknown): readonly Wrong[] {
  const out: Wrong[] = [];
  const add = (what: string, path: readonly Key[], value: unknown, or?: readonly Key[]): void => {
    out.push({ what, path: pathText(path), file: put(sample, path, value), ...(or ? { or: pathText(or) } : {}) });
  };
  const visit = (nodes: readonly Node[], value: unknown, path: readonly Key[]): void => {
    const flat = nodes.flatMap((n) => n.anyOf ?? [n]).flatMap((n) => n.anyOf ?? [n]);
    const node = flat.find((n) => fits(n, value));
    if (!node) return;
    const types = new Set(flat.map((n) => n.type));
    for (const [type, other] of [["string", "zz zz"], ["number", -7.5], ["boolean", true], ["array", [[]]], ["object", { zz: 1 }], ["null", null]] as const) {
      const numeric = type === "number" && (types.has("number") || types.has("integer"));
      if (types.has(type) || numeric || path.length === 0) continue;
      // A stranger in an object's place is told as such; every other type where it stands.
      add(`${type} for ${node.type ?? "a word"}`, path, other);
    }
    if (node.enum || (flat.length > 1 && types.has("string") && !flat.some((n) => n.pattern))) add("not one of the words", path, "zz-zz");
    if (node.const !== undefined && flat.length === 1) add("another format", path, "zz-zz");
    if (node.type === "integer") add("not whole", path, (node.minimum ?? 0) + 0.5);
    if (node.minimum !== undefined && node.minimum > -1e15) add("too small", path, node.minimum - 1);
    if (node.maximum !== undefined && node.maximum < 1e15) add("too large", path, node.maximum + 1);
    if (node.pattern !== undefined && flat.every((n) => n.pattern !== undefined || n.const !== undefined)) add("not of its pattern", path, "Zz_zz!");
    if (node.minLength !== undefined && node.minLength > 0) add("empty", path, "");
    if (node.maxLength !== undefined && node.type === "string") add("too long", path, "z".repeat(node.maxLength + 1));
    if (Array.isArray(value)) {
      if (node.minItems !== undefined && node.minItems > 0) add("too short a list", path, value.slice(0, node.minItems - 1));
      if (node.maxItems !== undefined && value.length > 0 && node.maxItems <= 600) add("too long a list", path, Array.from({ length: node.maxItems + 1 }, () => value[0]));
      value.forEach((v: unknown, i) => {
        const item = node.prefixItems?.[i] ?? node.items;
        if (item !== undefined && typeof item !== "boolean") visit([item], v, [...path, i]);
      });
    }
    if (isRecord(value)) {
      if (node.additionalProperties === false) add("unknown field", [...path, "zz"], 1);
      // Without the field that tells two kinds of object apart, the object itself is named.
      const several = flat.filter((n) => n.type === "object").length > 1;
      for (const key of node.required ?? []) add("missing", [...path, key], undefined, several ? path : undefined);
      for (const [key, v] of Object.entries(value)) {
        const field = node.properties?.[key] ?? node.additionalProperties;
        if (field !== undefined && typeof field !== "boolean" && key !== "extra") visit([field], v, [...path, key]);
      }
    }
  };
  visit([schema], sample, []);
  return out;
}

function fits(n: Node, v: unknown): boolean {
  if (n.const !== undefined) return n.const === v;
  if (n.enum) return n.enum.includes(v);
  switch (n.type) {
    case "integer": case "number": return typeof v === "number";
    case "string": return typeof v === "string";
    case "boolean": return typeof v === "boolean";
    case "null": return v === null;
    case "array": return Array.isArray(v);
    case "object": return isRecord(v) && (n.required ?? []).every((k) => Object.hasOwn(v, k)) && Object.keys(v).every((k) => n.additionalProperties !== false || Object.hasOwn(n.properties ?? {}, k));
    default: return false;
  }
}

/** Paths of the fields that a schema knows and a sample does not hold. */
export function unheld(schema: Node, sample: unknown): readonly string[] {
  const out = new Set<string>();
  const visit = (node: Node, values: readonly unknown[], path: string): void => {
    if (node.anyOf) { for (const n of node.anyOf) visit(n, values.filter((v) => n.type !== "object" || (isRecord(v) && fits(n, v))), path); return; }
    for (const [key, field] of Object.entries(node.properties ?? {})) {
      if (key === "extra") continue;
      const held = values.flatMap((v) => (isRecord(v) && Object.hasOwn(v, key) ? [v[key]] : []));
      if (held.length === 0) out.add(`${path}.${key}`);
      else visit(field, held, `${path}.${key}`);
    }
    if (node.items && typeof node.items !== "boolean") visit(node.items, values.flatMap((v) => (Array.isArray(v) ? v as readonly unknown[] : [])), path);
    if (node.additionalProperties && typeof node.additionalProperties !== "boolean") visit(node.additionalProperties, values.flatMap((v) => (isRecord(v) ? Object.values(v) : [])), path);
  };
  visit(schema, [sample], "");
  return [...out];
}
