import { expect } from "@playwright/test";
import { tidewheel } from "../../lib/demo";
import { deskPerson, ground, linkIn, type Ground } from "./ground";
import { person, SLOW_MS, test } from "./world";

let on: Ground;
test.beforeAll(async () => { on = await ground(); });
test.afterAll(() => on.close());

test("a venue begins with nothing, and its first couple goes from their mail to the agreed layout, on PostgreSQL and a mail server", async ({ browser }) => {
  const how = { width: 1280, scripts: true };
  const desk = await person(browser, how);
  await desk.go(`${on.base}/desk/open`);
  await desk.page.getByLabel(/address/i).fill(deskPerson);
  await desk.press(/mail|link|send/i);
  await desk.go(linkIn(await on.letterTo(deskPerson)));
  await desk.press("Open the desk");
  await desk.page.waitForURL("**/desk");

  await desk.go(`${on.base}/desk/venue`);
  await desk.page.getByLabel("Venue file").setInputFiles({ name: "mill.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(tidewheel)) });
  await desk.press("Read it in");
  await expect(desk.page.getByRole("status").first()).toContainText("version 1");

  await desk.go(`${on.base}/desk/bookings/new`);
  await desk.page.getByLabel("Their names").fill("Ines Calloway\nليلى حداد");
  await desk.page.getByLabel("Mail address").fill("ines@example.org");
  await desk.page.getByLabel("The day").fill("2029-06-16");
  await desk.page.getByLabel(/Hosted day/).first().check();
  await desk.press("Add the booking");
  await desk.page.waitForURL(/\/desk\/bookings\/(?!new)[^/]+$/);
  const booking = desk.page.url();
  // Without the demo nobody at the desk may read a couple's mail, and with it their link.
  expect((await desk.page.goto(`${on.base}/desk/mailbox`))?.status()).toBe(404);

  const couple = await person(browser, how);
  const invitation = await on.letterTo("ines@example.org");
  expect(invitation.text).toContain("ليلى حداد");
  await couple.go(linkIn(invitation));
  await couple.press("Open our day");
  await expect(couple.page).toHaveURL(/\/request$/);
  await couple.go(`${on.base}/request/guests`);
  await couple.page.getByLabel("Adults").fill("48");
  await couple.press("Save and continue");
  await couple.page.getByLabel("Yes, here").check();
  await couple.press("Save and continue");
  await couple.press("Save and continue");
  await couple.page.getByLabel("A DJ").check();
  await couple.press("Save and continue");
  await couple.press("Save and continue");
  await couple.press("Save and continue");
  await expect(couple.page).toHaveTitle(/Step 7 of 8/);
  // Until they are worked out the page waits, and shows them by itself.
  await expect(couple.page.locator(".layouts .drawing svg").first()).toBeVisible({ timeout: SLOW_MS });
  await couple.page.getByText("Choose A").click();
  await couple.press("Save and continue");
  await expect(couple.page).toHaveTitle(/Step 8 of 8/);
  await couple.press(/^Send to/);
  expect((await on.letterTo("ines@example.org")).subject).toContain("revision 1");

  await desk.page.goto(booking);
  const shown = (await desk.page.locator("button + p .fingerprint").first().textContent()) ?? "";
  await desk.press(/^Agree revision 1/);
  const agreed = await on.letterTo("ines@example.org");
  expect(agreed.text?.replaceAll(/\s/g, "")).toContain(shown.replaceAll(/\s/g, ""));
  await couple.go(linkIn(agreed));
  await couple.press("Open our day");
  await expect(couple.page.getByRole("heading", { name: "Agreed: revision 1" })).toBeVisible();
  // To the desk: its sign-in and the notice of the revision. To the couple: invitation, sent, agreed.
  expect(on.letters()).toBe(2 + 3);

  // Told to stop while a paper is being printed, the server hands it out whole, closes the database and ends well.
  const href = await couple.page.getByRole("link", { name: "Proposal as PDF" }).getAttribute("href");
  expect(await on.connections()).toBeGreaterThan(0);
  const paper = couple.page.request.get(new URL(href ?? "", on.base).href);
  await new Promise((done) => { setTimeout(done, 150); });
  const code = on.terminate();
  const pdf = await (await paper).body();
  expect(pdf.subarray(0, 5).toString("latin1")).toBe("%PDF-");
  expect(pdf.subarray(-6).toString("latin1")).toContain("%%EOF");
  expect(await code).toBe(0);
  expect(await on.connections()).toBe(0);
});
