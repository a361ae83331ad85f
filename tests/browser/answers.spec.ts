import { expect } from "@playwright/test";
import { atTheDesk, base, invite, person, test, SLOW_MS } from "./world";

test("each answer shows what it does without a page being fetched, and a save that meets no connection is kept and tried again", async ({ browser }) => {
  const how = { width: 1280, scripts: true };
  const desk = await atTheDesk(browser, how);
  const { link } = await invite(desk, { names: "Maren Oduya\nPip Langholm", email: "maren@example.org", date: "2029-08-11" });
  const { page, go, press, tap } = await person(browser, how);
  await go(link);
  await press("Open our day");
  await page.waitForURL(/\/request$/);
  await go("/request/guests");
  const sentence = page.locator(".effect .lead");
  await page.getByLabel("Adults").fill("60");
  await expect(sentence).toContainText("60", { timeout: SLOW_MS });
  await expect(page.locator(".effect .you")).toHaveText("60 of you");
  await expect(page.locator(".effect figcaption")).toContainText("not saved yet", { timeout: SLOW_MS });
  await expect(page.locator(".effect .stage svg")).toBeVisible();

  await page.getByLabel("High chairs").fill("3");
  await tap("Save and continue");
  await expect(page.locator(".errors")).toBeFocused();
  await expect(page).toHaveTitle(/^Error: Step 1 of 8/);
  await expect(page.locator(".errors a")).toHaveAttribute("href", "#highChairs");
  await expect(page.getByLabel("Adults")).toHaveValue("60");
  await page.getByLabel("High chairs").fill("");
  await page.getByLabel("Children").focus();
  await expect(page.locator(".errors")).toHaveCount(0);

  await page.context().setOffline(true);
  await tap("Save and continue");
  await expect(page.locator(".save-state")).toContainText("Not saved: there is no connection");
  await expect(page.getByLabel("Adults")).toHaveValue("60");
  await page.context().setOffline(false);
  await page.waitForURL("**/request/ceremony");
  await go("/request/guests");
  await expect(page.getByLabel("Adults")).toHaveValue("60");
});

test("what was answered before the page's scripts came is still answered once they are there", async ({ browser }) => {
  const desk = await atTheDesk(browser, { width: 1280, scripts: true });
  const { page } = desk;
  let come = (): void => undefined;
  const held = new Promise<void>((resolve) => { come = resolve; });
  await page.route(/\.js(\?|$)/, async (route) => { await held; await route.continue(); });
  await page.goto(`${base()}/desk/bookings/new`, { waitUntil: "commit" });
  await page.getByLabel("Their names").fill("Ottoline Marsh\nDesmond Achebe");
  await page.getByLabel(/Hosted day/).first().check();
  await page.getByLabel("Later, from the booking").check();
  await page.getByLabel("They read").selectOption("es");
  come();
  // Pressed at once the server would answer; the page does by itself once its scripts watch the form.
  await page.waitForLoadState("networkidle");
  await desk.tap("Add the booking");
  await expect(page.locator(".errors")).toBeFocused();
  await expect(page.locator(".errors a")).toHaveCount(2);
  await expect(page).toHaveURL(/\/desk\/bookings\/new$/);
  await expect(page.getByLabel("Their names")).toHaveValue("Ottoline Marsh\nDesmond Achebe");
  await expect(page.getByLabel(/Hosted day/).first()).toBeChecked();
  await expect(page.getByLabel("Later, from the booking")).toBeChecked();
  await expect(page.getByLabel("They read")).toHaveValue("es");
});
