import { expect } from "@playwright/test";
import { atTheDesk, invite, person, test } from "./world";

for (const scripts of [true, false]) {
  test(`two people who answer the same step at once see both versions, with scripts ${scripts ? "on" : "off"}`, async ({ browser }) => {
    const how = { width: 820, scripts };
    const desk = await atTheDesk(browser, how);
    const { link } = await invite(desk, { names: "Ulla Brandvold\nTim Lisowski", email: `two.${String(scripts)}@example.org`, date: "2029-07-21" });
    const one = await person(browser, how), other = await person(browser, how);
    for (const who of [one, other]) {
      await who.go(link);
      await who.press("Open our day");
    }
    // Both open the same steps before either saves.
    await one.go("/request/guests");
    await other.go("/request/guests");
    await one.page.getByLabel("Adults").fill("60");
    await one.page.getByLabel("Children").fill("4");
    await one.press("Save and continue");
    await one.page.waitForURL("**/request/ceremony");
    await other.page.getByLabel("Adults").fill("72");
    await other.page.getByLabel("Wheelchair places").fill("2");
    await other.press("Save and continue");

    const { page } = other;
    await expect(page).toHaveURL(/\/request\/guests\/both\?kept=/);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Two versions of your answers");
    const adults = page.getByRole("group", { name: "Adults" });
    await expect(adults.getByText("60", { exact: true })).toBeVisible();
    await expect(adults.getByText("72", { exact: true })).toBeVisible();
    await expect(page.getByRole("group", { name: "Children" })).toBeVisible();
    await expect(page.getByRole("group", { name: "High chairs" })).toHaveCount(0);
    // Nothing is overwritten by a press that leaves a line open.
    await adults.getByLabel("72").check();
    await other.press("Save what is chosen");
    await expect(page).toHaveTitle(/^Error: /);
    await one.go("/request/guests");
    await expect(one.page.getByLabel("Adults")).toHaveValue("60");
    // Field by field: mine, theirs, mine.
    await page.getByRole("group", { name: "Adults" }).getByLabel("72").check();
    await page.getByRole("group", { name: "Children" }).getByLabel("4").check();
    await page.getByRole("group", { name: "Wheelchair places" }).getByLabel("2").check();
    await other.press("Save what is chosen");
    await page.waitForURL("**/request/ceremony");
    await other.go("/request/guests");
    await expect(page.getByLabel("Adults")).toHaveValue("72");
    await expect(page.getByLabel("Children")).toHaveValue("4");
    await expect(page.getByLabel("Wheelchair places")).toHaveValue("2");

    // Boxes ticked on both sides can be had together.
    await one.go("/request/extras");
    await other.go("/request/extras");
    await one.page.getByLabel("Photo booth", { exact: true }).check();
    await one.press("Save and continue");
    await other.page.getByLabel("A lounge corner").check();
    await other.press("Save and continue");
    await page.waitForURL(/\/request\/extras\/both/);
    await page.getByLabel("Both together").check();
    await other.press("Save what is chosen");
    await other.go("/request/extras");
    await expect(page.getByLabel("Photo booth", { exact: true })).toBeChecked();
    await expect(page.getByLabel("A lounge corner")).toBeChecked();

    // Different steps do not meet: who saves one after another was saved is not asked anything.
    await one.go("/request/music");
    await other.go("/request/displays");
    await one.page.getByLabel("A DJ").check();
    await one.press("Save and continue");
    await other.page.getByLabel("Cake", { exact: true }).check();
    await other.press("Save and continue");
    await page.waitForURL("**/request/extras");
    await one.go("/request/displays");
    await expect(one.page.getByLabel("Cake", { exact: true })).toBeChecked();
  });
}
