/** A node of a JSON Schema, as far as it is read here. */
export type Node = {
  readonly type?: unknown; readonly const?: unknown; readonly enum?: readonly unknown[] | undefined; readonly description?: string | undefined;
  readonly minimum?: number | undefined; readonly maximum?: number | undefined;
  readonly minLength?: number | undefined; readonly maxLength?: number | undefined;
  readonly minItems?: number | undefined; readonly maxItems?: number | undefined;
  readonly items?: unknown; readonly prefixItems?: readonly unknown[] | undefined;
  readonly properties?: Readonly<Record<string, unknown>> | undefined; readonly required?: readonly string[] | undefined;
  readonly additionalProperties?: unknown; readonly anyOf?: readonly unknown[] | undefined; readonly allOf?: readonly unknown[] | undefined;
};

const LONGEST = 60;

/** A value as a message shows it: JSON, cut where it is long. */
export function shown(value: unknown): string {
  if (Array.isArray(value) && value.length > 4) return `a list of ${value.length}`;
  const text = typeof value === "number" ? String(value) : (JSON.stringify(value) ?? "nothing");
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1)}…`;
}

export function kindOf(value: unknown): "text" | "number" | "list" | "object" | "other" {
  if (typeof value === "string") return "text";
  if (typeof value === "number") return "number";
  if (Array.isArray(value)) return "list";
  return typeof value === "object" && value !== null ? "object" : "other";
}

const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null;

/** What a schema allows at a path, in words; with `fieldsFor`, the fields that the object found there may have. */
export function allowedAt(root: Node, path: readonly PropertyKey[], asked: { readonly fieldsFor?: unknown } = {}): string {
  let nodes: readonly Node[] = [root];
  for (const key of path) nodes = nodes.flatMap(branches).flatMap((n) => step(n, key));
  if ("fieldsFor" in asked) return [...new Set(likest(nodes.flatMap(branches), asked.fieldsFor).flatMap((n) => Object.keys(n.properties ?? {})))].join(", ");
  return [...new Set(nodes.map(words))].join(", or ") || "nothing";
}

function likest(nodes: readonly Node[], found: unknown): readonly Node[] {
  if (kindOf(found) !== "object" || nodes.length < 2) return nodes;
  const shared = (n: Node): number => Object.keys(n.properties ?? {}).filter((k) => Object.hasOwn(Object(found), k)).length;
  const most = Math.max(...nodes.map(shared));
  return nodes.filter((n) => shared(n) === most);
}

const branches = (n: Node): readonly Node[] =>
  n.anyOf ? n.anyOf.filter(isNode).flatMap(branches) : n.allOf ? n.allOf.filter(isNode).flatMap(branches) : [n];

function step(node: Node, key: PropertyKey): readonly Node[] {
  const next = typeof key === "number"
    ? (node.prefixItems?.[key] ?? node.items)
    : (node.properties?.[String(key)] ?? node.additionalProperties);
  return isNode(next) ? [next] : [];
}

function words(node: Node): string {
  if (node.anyOf) return [...new Set(node.anyOf.filter(isNode).map(words))].join(", or ");
  if (node.const !== undefined) return shown(node.const);
  if (node.enum) return `one of ${node.enum.map((v) => JSON.stringify(v)).join(", ")}`;
  switch (node.type) {
    case "integer": return `a whole number${of(node)} ${range(node)}`;
    case "number": return `a number${of(node)} ${range(node)}`;
    case "boolean": return "true or false";
    case "null": return "null";
    case "string": return node.description ?? (node.maxLength === undefined ? "text" : `text of ${node.minLength ?? 0} to ${node.maxLength} characters`);
    case "array":
      if (node.prefixItems) return `a list of ${node.prefixItems.length}, each ${[...new Set(node.prefixItems.filter(isNode).map(words))].join(", or ")}`;
      return `a list ${size(node)}${isNode(node.items) ? `, each ${short(node.items)}` : ""}`;
    case "object": return short(node);
    default: return "anything";
  }
}

const of = (node: Node): string => (node.description ? ` of ${node.description}` : "");
const size = ({ minItems = 0, maxItems }: Node): string => (maxItems === undefined ? `of at least ${minItems}` : `of ${minItems} to ${maxItems}`);
const range = ({ minimum, maximum }: Node): string =>
  minimum === undefined ? `up to ${maximum ?? "any size"}` : maximum === undefined ? `from ${minimum}` : `from ${minimum} to ${maximum}`;

function short(node: Node): string {
  if (node.type !== "object") return words(node);
  const required = node.required ?? [];
  if (required.length > 0) return `an object with ${required.join(", ")}`;
  const fields = Object.keys(node.properties ?? {}).filter((k) => k !== "extra");
  return fields.length > 0 ? `an object of ${fields.join(", ")}` : "an object";
}
