import type { DeskRole } from "../booking";
import { people, type Handle } from "../store";
import type { House } from "./house";

/** What a person may do at the desk; undefined for whoever is not of it. Those whom the settings name are managers. */
export async function deskRole(house: Pick<House, "deskPeople">, db: Handle, person: string): Promise<DeskRole | undefined> {
  if (house.deskPeople.includes(person)) return "manager";
  return (await people.find(db, person))?.role;
}

/** Whom a notice to the desk goes to: all but those who only look. */
export async function noticed(house: Pick<House, "deskPeople">, db: Handle): Promise<readonly string[]> {
  const invited = (await people.list(db)).filter((one) => one.role !== "desk-look" && !house.deskPeople.includes(one.email)).map((one) => one.email);
  return [...house.deskPeople, ...invited];
}
