import { expect } from "@playwright/test";
import { atTheDesk, hrefOf, invite, person, test, toLayouts, SLOW_MS } from "./world";

test("a second revision is read by what changed since the first, and has its sheets and its calendar file", async ({ browser }) => {
  const how = { width: 1280, scripts: true };
  const desk = await atTheDesk(browser, how);
  const { reference, link } = await invite(desk, { names: "Ruta Adomaitis\nשירה לוי", email: "ruta@example.org", date: "2029-09-15" });
  const couple = await person(browser, how);
  await couple.go(link);
  await couple.press("Open our day");
  await expect(couple.page).toHaveURL(/\/request$/);
  await toLayouts(couple, { adults: 44, children: 2 });
  const send = async (letter: string): Promise<void> => {
    await couple.go("/request/layout");
    await couple.page.locator(".layouts").getByText(`Choose ${letter}`).click();
    await couple.press("Save and continue");
    await expect(couple.page).toHaveTitle(/Step 8 of 8/);
    await couple.press(/^Send to/);
    await expect(couple.page.getByText(reference).first()).toBeVisible();
  };
  await send("A");

  await desk.go(`/desk/bookings/${reference}`);
  await expect(desk.page.getByRole("heading", { name: "Papers of revision 1" })).toBeVisible();
  await expect(desk.page.getByRole("heading", { name: /^Changed since/ })).toHaveCount(0);
  await desk.page.getByLabel("Or return it with a reason").fill("Could we see the other one?");
  await desk.press(/^Return revision 1/);
  await send("B");

  await Promise.all([desk.page.waitForResponse(/\/api\/plan\.json.*since=1/), desk.go(`/desk/bookings/${reference}`)]);
  await expect(desk.page.getByRole("heading", { name: "Changed since revision 1" })).toBeVisible();
  const said = desk.page.locator(".changes li");
  const changes = await said.count();
  expect(changes).toBeGreaterThan(0);
  await expect(said.last().locator(".n")).toHaveText(String(changes));
  // Each change of the list has its number on the plan, and the plan's own words tell it too.
  const stage = desk.page.locator(".stage svg");
  await expect(stage).toBeVisible({ timeout: SLOW_MS });
  await expect(stage.locator("desc").first()).toContainText((await said.first().locator("span").last().textContent()) ?? "?");
  await desk.page.getByRole("link", { name: "Show it without the changes" }).click();
  await expect(desk.page.getByRole("link", { name: "Show what changed since revision 1" })).toBeVisible();

  const sheets = await desk.page.request.get(await hrefOf(desk.page, "Sheets for the day as PDF"));
  expect(sheets.headers()["content-type"]).toBe("application/pdf");
  const calendar = await desk.page.request.get(await hrefOf(desk.page, "The day for a calendar"));
  expect(calendar.headers()["content-type"]).toContain("text/calendar");
  expect(await calendar.text()).toContain("BEGIN:VEVENT");
  await expect(desk.page.getByText("Not agreed: a draft.")).toBeVisible();
  await desk.press(/^Agree revision 2/);
  await expect(desk.page.getByRole("heading", { name: "Agreed", exact: true })).toBeVisible();
  await expect(desk.page.getByText("Not agreed: a draft.")).toHaveCount(0);
  expect((await desk.page.request.get(await hrefOf(desk.page, "Sheets for the day as PDF"))).status()).toBe(200);
});
