import { expect } from "@playwright/test";
import { atTheDesk, hrefOf, person, test, SLOW_MS, type Who } from "./world";

/** Types into fields by their names: many rows of the editor have fields of one label. */
async function typed({ page }: Who, values: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, value] of Object.entries(values)) {
    const field = page.locator(`[name="${name}"]`).first();
    if (await field.evaluate((el) => el instanceof HTMLSelectElement)) await field.selectOption(value); else await field.fill(value);
  }
}

/** The link of the newest mail to an address, read from the demonstration's mailbox. */
async function linkTo(desk: Who, address: string): Promise<string> {
  await desk.go("/desk/mailbox");
  await desk.page.getByRole("row").filter({ hasText: address }).getByRole("link").first().click();
  return (await desk.page.locator('.mail-text a[href*="/open/"]').first().getAttribute("href")) ?? "";
}

test("a week at the desk with scripts off and on a phone: a venue from nothing, a pasted list, a draft, a return, an agreement and a late change", async ({ browser }) => {
  const desk = await atTheDesk(browser, { width: 390, scripts: false });
  const { page } = desk;
  const hall = `Tithe Hall ${Date.now() % 100_000}`;
  await desk.go("/desk/venue/new");
  await desk.press("Make the venue");
  await expect(page).toHaveTitle(/^Error: /);
  await typed(desk, { "house.name": hall, "room.name": "Long Room", "room.width": "16", "room.depth": "9", "doors.0.start": "3", "doors.0.width": "1.8", "doors.1.start": "11", "doors.1.width": "1.4", "tables.rounds": "12", "tables.across": "1.68", "tables.chairs": "120", "package.name": `${hall} hire` });
  await desk.press("Make the venue");
  await expect(page.getByText("Saved as version 1.")).toBeVisible();

  // A door that is not on its wall is told at its field, and all else that was typed is still there; mended, it is a version of its own.
  await page.getByRole("region", { name: hall }).getByRole("link", { name: "Long Room" }).click();
  await typed(desk, { "doors.0.start": "15.5", "obstacles.0.kind": "column", "obstacles.0.left": "8", "obstacles.0.top": "4.5", "obstacles.0.width": "0.3", "obstacles.0.depth": "0.3" });
  const here = page.url();
  await desk.press("Save as a new version");
  await expect(page.locator('[name="doors.0.start"]')).toHaveAttribute("aria-invalid", "true");
  await expect(page.locator('[name="obstacles.0.left"]')).toHaveValue("8");
  await typed(desk, { "doors.0.start": "3" });
  await desk.press("Save as a new version");
  await expect(page.getByText("Saved as version 2.")).toBeVisible();
  const file = await page.request.get(here.replace(/\/rooms\/.*/, "/file"));
  expect(await file.json()).toMatchObject({ name: hall, rooms: [{ name: "Long Room", obstacles: [{ kind: "column" }] }] });

  // An unfinished page is kept as a draft that no booking uses, says what is amiss and where, and is let go.
  await typed(desk, { "doors.0.start": "15.5" });
  await desk.press("Keep as a draft");
  await expect(page.getByText("A draft: no booking uses it.")).toBeVisible();
  await expect(page.getByRole("region", { name: "Draft" }).getByRole("link").first()).toHaveAttribute("href", /\/rooms\//);
  await desk.press("Let the draft go");
  await expect(page.getByText("The draft is let go.")).toBeVisible();

  const stamp = Date.now();
  const rows = Array.from({ length: 50 }, (_, i) => i + 1).map((n) => `Ana ${n} & Bo ${n};ana${n}.${stamp}@example.org;${2030 + Math.floor((n - 1) / 12)}-${String(1 + ((n - 1) % 12)).padStart(2, "0")}-12;${hall} hire;${40 + (n % 3)}`);
  await desk.go("/desk/bookings/paste");
  await page.getByLabel("The rows, with their headings").fill(["names;mail;date;package;guests", ...rows, "Late One;late@example.org;2020-01-01;Gold;x"].join("\n"));
  await desk.press("Look at what it would add");
  await expect(page.getByRole("heading", { name: /^50 bookings can be added; 1 row needs/ })).toBeVisible();
  await expect(page.getByText("There is no package “Gold”")).toBeVisible();
  await desk.press("Add 50 bookings");
  await expect(page.getByText("50 bookings are added.")).toBeVisible();

  await desk.go(`/desk?find=ana1.${stamp}`);
  await page.getByRole("link", { name: "Ana 1" }).click();
  const booking = page.url();
  await page.getByRole("link", { name: "Draft for them" }).click();
  await expect(page.getByRole("heading", { name: "Which one" })).toBeVisible({ timeout: SLOW_MS });
  await page.getByLabel("A word with it, if you like").fill("A first thought.");
  await desk.press("Give them this draft");
  await expect(page.getByText("The draft is theirs")).toBeVisible();

  const couple = await person(browser, { width: 390, scripts: false });
  await couple.go(await linkTo(desk, `ana1.${stamp}@example.org`));
  await couple.press("Open our day");
  const send = async (): Promise<void> => { await couple.go("/request/send"); await couple.press(/^Send to/); };
  await send();

  await desk.go(booking);
  await page.getByText("Pieces that it is about").click();
  await page.locator('input[name="piece"]').first().check();
  await page.getByLabel("Or return it with a reason").fill("Nearer the wall, please.");
  await desk.press(/^Return revision 1/);
  await expect(page.getByText(/^About: /)).toBeVisible();
  await couple.go("/request");
  await expect(couple.page.getByText(/^About: /)).toBeVisible();
  await send();
  await desk.go(booking);
  await desk.press(/^Agree revision 2/);
  await expect(page.getByRole("heading", { name: "Agreed", exact: true })).toBeVisible();

  await page.getByRole("link", { name: "Late change of numbers" }).click();
  await page.getByLabel("Adults").fill("47");
  await desk.press("Work the change out");
  await expect(page.getByText("being worked out").or(page.getByRole("heading", { name: "41 guests agreed, 47 now" }))).toBeVisible();
  await expect(page.getByRole("heading", { name: "41 guests agreed, 47 now" })).toBeVisible({ timeout: SLOW_MS });
  await desk.press("Take it, to be agreed");
  await expect(page.getByText("Revision 2 was agreed")).toBeVisible();
  await desk.press(/^Agree revision 3/);
  await expect(page.getByRole("heading", { name: "Agreed", exact: true })).toBeVisible();
  const sheets = await page.request.get(await hrefOf(page, "Sheets for the day as PDF"));
  expect(sheets.headers()["content-type"]).toBe("application/pdf");
});
