import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { expect, test } from "@playwright/test";
import { ROLES, world, type Facts, type Role, type Stand, type World } from "./access/facts";
import { cellOf, GETS, POSTS, type Row } from "./access/table";

/** Who may ask what over the network (ASVS 5.0, 8.2.1 to 8.2.3 and 3.5.3): every route, everyone who may come, real sessions, PostgreSQL. */
let on: World;
test.beforeAll(async () => { on = await world(); });
test.afterAll(() => on.close());

/** Every route that the folders of the pages make, by what it answers to. */
const routes = (kind: "GET" | "POST"): readonly string[] => readdirSync(resolve("app"), { recursive: true, encoding: "utf8" }).filter((file) => {
  if (file.endsWith("page.tsx")) return kind === "GET" && /(^|\/)page\.tsx$/.test(file);
  return /(^|\/)route\.ts$/.test(file) && new RegExp(`export async function ${kind}\\b|export const ${kind}\\b|export function ${kind}\\b`).test(readFileSync(resolve("app", file), "utf8"));
}).map((file) => `/${file.split("/").slice(0, -1).filter((part) => !part.startsWith("(")).join("/")}`).sort();

test("every route has its row, and every row its route", () => {
  expect(Object.keys(GETS).sort()).toEqual(routes("GET"));
  expect(Object.keys(POSTS).sort()).toEqual(routes("POST"));
});

/** The names in an address, filled in with couple A's. */
function addressOf(route: string, row: Row, facts: Facts): string {
  const key = route.startsWith("/desk/open") ? facts.deskKey : route.startsWith("/quiet") ? facts.quietKey : facts.coupleKey;
  const names: Readonly<Record<string, string>> = {
    key, ref: facts.reference, step: "guests", layout: "a", number: "1", venue: "tidewheel-mill", page: "house", room: "wheel-room", id: facts.mailId,
  };
  return route.replace(/\[(\w+)\]/g, (_, name: string) => names[name] ?? "none") + (row.query?.(facts) ?? "");
}

type Answer = { readonly status: number; readonly to: string };
type Ask = { readonly route: string; readonly row: Row; readonly facts: Facts; readonly role: Role; readonly method: string };

async function ask({ route, row, facts, role, method }: Ask): Promise<Answer> {
  const body = method === "POST" ? bodyOf(row, facts) : undefined;
  const answer = await fetch(on.base + addressOf(route, row, facts), { method, redirect: "manual", headers: { Cookie: facts.cookies[role], ...(method === "GET" ? {} : { Origin: on.base }) }, body });
  await answer.arrayBuffer();
  return { status: answer.status, to: answer.headers.get("location") ?? "" };
}

function bodyOf(row: Row, facts: Facts): URLSearchParams | FormData {
  if (row.file) { const form = new FormData(), { name, text } = row.file(); form.set("file", new Blob([text], { type: "application/json" }), name); return form; }
  return new URLSearchParams(Object.entries(row.body?.(facts) ?? {}).flatMap(([name, v]) => (typeof v === "string" ? [[name, v]] : v.map((one) => [name, one]))));
}

/** The answer in the table's words; what is not the same each time is an ellipsis there. */
const saidAs = ({ status, to }: Answer, cell: string): string => {
  const told = `${status}${to ? ` ${to}` : ""}`, wanted = cell.replace(/ \+$/, "");
  const pattern = wanted.split("…").map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")).join(".*");
  return new RegExp(`^${pattern}$`).test(told) ? wanted : told;
};

const NOTHING = ["", "", "", "", "", "", ""] as const;
const shared = new Map<Stand, Facts>();
async function sharedAt(stand: Stand): Promise<Facts> {
  const facts = shared.get(stand) ?? (await on.factsAt(stand));
  shared.set(stand, facts);
  return facts;
}

/** Looks change nothing, so that some of them may be under way at once. */
async function together<T>(list: readonly T[], work: (one: T) => Promise<void>): Promise<void> {
  const left = list.values();
  await Promise.all(Array.from({ length: 6 }, async () => { for (const one of left) await work(one); }));
}

test("whoever only looks gets what is theirs, is led away from the rest, and changes nothing by it", async () => {
  const wrong: string[] = [];
  for (const stand of ["invited", "chosen", "sent", "agreed", "changed"] as const) await sharedAt(stand);
  const before = await on.kept();
  const looks = Object.entries(GETS).flatMap(([route, row]) => ROLES.map((role) => ({ route, row, role })));
  await together(looks, async ({ route, row, role }) => {
    const facts = await sharedAt(row.stand ?? "invited");
    const cell = cellOf(row, role), said = saidAs(await ask({ route, row, facts, role, method: "GET" }), cell);
    if (said !== cell) wrong.push(`GET ${route}, ${role}: ${said}, not ${cell}`);
    // A look without its page is decided by the same code: it is asked by who may most, and who may least.
    if (role !== "manager" && role !== "nobody") return;
    const head = (await ask({ route, row, facts, role, method: "HEAD" })).status;
    if (String(head) !== said.split(" ")[0]) wrong.push(`HEAD ${route}, ${role}: ${head}, not as GET`);
  });
  expect(wrong).toEqual([]);
  expect(await on.kept()).toBe(before);
});

test("a form changes what its sender may change; sent by anyone else it changes nothing", async () => {
  const wrong: string[] = [];
  for (const [route, row] of Object.entries(POSTS)) {
    const stand = row.stand ?? "invited";
    // Those who are refused come first: nothing may move for them.
    const roles = [...ROLES].sort((a, b) => Number(cellOf(row, a).endsWith("+")) - Number(cellOf(row, b).endsWith("+")));
    let facts = roles.some((role) => cellOf(row, role).endsWith("+")) ? await on.factsAt(stand) : await sharedAt(stand), before = await on.kept(), used = false;
    for (const role of roles) {
      const cell = cellOf(row, role);
      if (used) { facts = await on.factsAt(stand); before = await on.kept(); }
      const answer = await ask({ route, row, facts, role, method: "POST" }), after = await on.kept(), moved = after !== before;
      before = after;
      used = moved;
      const said = (cell === "own" ? "own" : saidAs(answer, cell)) + (moved ? " +" : "");
      if (said !== cell) wrong.push(`POST ${route}, ${role}: ${said}, not ${cell}`);
    }
  }
  expect(wrong).toEqual([]);
});

test("no address answers to a method that it has no use for, and none changes anything by it (ASVS 5.0, 4.1.4)", async () => {
  const facts = await sharedAt("invited"), before = await on.kept(), wrong: string[] = [];
  const gets = new Set(routes("GET")), posts = new Set(routes("POST"));
  for (const route of new Set([...gets, ...posts])) for (const method of ["GET", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"]) {
    if ((method === "GET" && gets.has(route)) || (method === "POST" && posts.has(route))) continue;
    const { status } = await ask({ route, row: { cells: NOTHING }, facts, role: "manager", method });
    // A page that a form is sent to is shown, as it is to whoever looks.
    if (method === "POST" ? status >= 500 : status !== 405) wrong.push(`${method} ${route}: ${status}`);
  }
  expect(wrong).toEqual([]);
  expect(await on.kept()).toBe(before);
});

test("a couple's forms set what they ask about, and nothing that is the desk's (ASVS 5.0, 15.3.3)", async () => {
  const facts = await on.factsAt("chosen"), theirs = await on.factsAt("chosen");
  const was = await on.bookings();
  const row: Row = { cells: NOTHING, body: () => ({
    reference: facts.reference, ref: facts.reference, booking: facts.reference, adults: "44", revision: theirs.revision, sure: "1",
    state: "agreed", total: "0", net: "0", quote: "{}", fingerprint: "x", package: "hosted-weekend", dueDate: "2099-01-01", email: "mine@example.org", role: "manager", agreedAt: "2027-01-01",
  }) };
  expect(await ask({ route: "/request/[step]/save", row, facts: { ...theirs, reference: facts.reference }, role: "couple A", method: "POST" })).toMatchObject({ status: 303, to: "/request/ceremony" });
  const after = await on.bookings();
  // Not a thing of the booking that was named.
  expect(after.get(facts.reference)).toEqual(was.get(facts.reference));
  const own = was.get(theirs.reference);
  expect(after.get(theirs.reference)).toEqual({ ...own, revision: Number(own?.revision) + 1, draft: expect.objectContaining({ guests: { adults: 44 } }) as unknown, changed_at: expect.any(String) as unknown });
});
