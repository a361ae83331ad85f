import { z } from "zod";
import { allowedAt, kindOf, shown, type Node } from "./allowed";

/** One thing wrong with a file: where, and what is wrong with what is allowed. */
export type Problem = { readonly path: string; readonly message: string };
export type Path = readonly PropertyKey[];
type Issue = z.core.$ZodIssue;

/** rooms[0].doors[1].from; the whole file is "file". */
export function pathText(path: Path): string {
  let out = "";
  for (const key of path) {
    if (typeof key === "number") out += `[${key}]`;
    else if (/^[A-Za-z_][\w-]*$/.test(String(key))) out += out === "" ? String(key) : `.${String(key)}`;
    else out += `[${JSON.stringify(String(key))}]`;
  }
  return out === "" ? "file" : out;
}

/** Says of each issue where it stands, what was found there, and what is allowed there; the most exact of a union's issues. */
export function problemsOf(schema: z.ZodType, issues: readonly Issue[], input: unknown): readonly Problem[] {
  const root = rootOf(schema);
  const seen = new Set<string>();
  return issues.flatMap((issue) => explain(root, issue, [], input)).filter((p) => {
    const key = `${p.path}: ${p.message}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

const roots = new WeakMap<z.ZodType, Node>();
function rootOf(schema: z.ZodType): Node {
  const known = roots.get(schema);
  if (known) return known;
  const made: Node = z.toJSONSchema(schema, { io: "input", unrepresentable: "any" });
  roots.set(schema, made);
  return made;
}

function explain(root: Node, issue: Issue, before: Path, input: unknown): readonly Problem[] {
  const path = [...before, ...issue.path];
  const found = valueAt(input, path);
  switch (issue.code) {
    case "unrecognized_keys":
      return issue.keys.map((key) => ({
        path: pathText([...path, key]), message: `unknown field; allowed: ${fieldsAt(root, path, found)}`,
      }));
    case "invalid_key":
      return [{ path: pathText(path), message: `${shown(path.at(-1))} is not a name that may stand here; allowed: lower-case words with hyphens` }];
    case "invalid_union": {
      const branch = nearest(issue.errors, found);
      if (branch) return branch.flatMap((i) => explain(root, i, path, input));
      return [problem(root, path, found)];
    }
    case "custom":
      return [{ path: pathText(path), message: `${shown(found)} is not allowed; allowed: ${issue.message}` }];
    default:
      return [problem(root, path, found)];
  }
}

const problem = (root: Node, path: Path, found: unknown): Problem => ({
  path: pathText(path),
  message: `${found === undefined ? "missing" : `${shown(found)} is not allowed`}; allowed: ${allowedAt(root, path)}`,
});

function fieldsAt(root: Node, path: Path, found: unknown): string {
  const known = allowedAt(root, path, { fieldsFor: found });
  return known === "" ? "nothing" : known;
}

/** The branch of a union that the value was plainly meant for: the only one with the fewest strange and missing fields. */
function nearest(branches: readonly (readonly Issue[])[], found: unknown): readonly Issue[] | null {
  const strange = branches.map((issues) => issues.reduce((n, i) => n + strangeness(i, found), 0));
  const least = Math.min(...strange);
  const at = strange.indexOf(least);
  if (!Number.isFinite(least) || strange.lastIndexOf(least) !== at) return null;
  return branches[at] ?? null;
}

function strangeness(issue: Issue, found: unknown): number {
  if (issue.code === "unrecognized_keys") return issue.keys.length;
  // Of another kind altogether: a text where an object is meant.
  if (issue.path.length === 0) return issue.code === "invalid_type" || issue.code === "invalid_value" || kindOf(found) === "text" ? Infinity : 1;
  return valueAt(found, issue.path) === undefined ? 1 : 0;
}

function valueAt(input: unknown, path: Path): unknown {
  let at: unknown = input;
  for (const key of path) {
    if (typeof at !== "object" || at === null || !Object.hasOwn(at, key)) return undefined;
    at = Reflect.get(at, key);
  }
  return at;
}
