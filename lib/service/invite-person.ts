import { fail, ok } from "../base";
import { mailAddress } from "../base/schema";
import { DESK_ROLES, type DeskRole } from "../booking";
import { messages } from "../mail";
import { history, people, venues } from "../store";
import { deskGate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import { queueMail } from "./post";
import type { Actor, FieldError, FormValues, Outcome } from "./types";

export type PersonView = { readonly email: string; readonly role: DeskRole; /** Named in the settings: only there can they be taken off. */ readonly fixed: boolean; readonly invitedAt?: string; readonly invitedBy?: string };

/** Everyone who may sign in to the desk. */
export async function listPeople(house: House, actor: Actor, _all: Readonly<Record<string, never>> = {}): Promise<Outcome<readonly PersonView[]>> {
  const may = deskGate(actor, "people");
  if (!may.ok) return may;
  const invited = await people.list(house.store.db);
  return ok([
    ...house.deskPeople.map((email): PersonView => ({ email, role: "manager", fixed: true })),
    ...invited.filter((one) => !house.deskPeople.includes(one.email)).map(({ email, role, invitedAt, invitedBy }): PersonView => ({ email, role, fixed: false, invitedAt, invitedBy: invitedBy ?? undefined })),
  ]);
}

/** Lets a person in, or gives them another role; whoever is new is mailed how to sign in. Fields: email, role. */
export async function invitePerson(house: House, actor: Actor, { values }: { readonly values: FormValues }): Promise<Outcome<{ readonly email: string }>> {
  const may = deskGate(actor, "people");
  if (!may.ok) return may;
  const text = (name: string): string => { const v = values[name]; return typeof v === "string" ? v.trim() : ""; };
  const email = text("email").toLowerCase(), role = DESK_ROLES.find((one) => one === text("role"));
  const errors: FieldError[] = [
    ...(mailAddress.safeParse(email).success ? [] : [{ field: "email", message: "Mail address: type it whole, such as name@venue.example." }]),
    ...(role ? [] : [{ field: "role", message: "Choose what they may do." }]),
    ...(house.deskPeople.includes(email) ? [{ field: "email", message: "This person is named in the settings, and is a manager." }] : []),
  ];
  if (errors.length > 0 || !role) return fail({ code: "invalid", errors });
  await house.store.transaction(async (tx) => {
    const before = await people.find(tx, email), at = nowIso(house);
    if (before?.role === role) return;
    await people.put(tx, { email, role, at, by: may.value });
    await history.add(tx, { booking: null, at, who: whoIs(actor), what: before ? "person-changed" : "person-invited", data: { role } });
    if (before) return;
    const venueName = (await venues.list(tx))[0]?.venue.name ?? "Marquetry";
    await queueMail(tx, house, { message: messages.deskInvitation(venueName, { role, href: `${house.origin}/desk/open`, email }), to: email, fromName: venueName, booking: null });
  });
  house.poke();
  return ok({ email });
}

/** Lets a person go: what they have open is closed at once. */
export async function revokePerson(house: House, actor: Actor, { email }: { readonly email: string }): Promise<Outcome<null>> {
  const may = deskGate(actor, "people");
  if (!may.ok) return may;
  return house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const at = nowIso(house);
    if (!(await people.revoke(tx, email.trim().toLowerCase(), at))) return fail({ code: "not-found" });
    await history.add(tx, { booking: null, at, who: whoIs(actor), what: "person-let-go" });
    return ok(null);
  });
}
