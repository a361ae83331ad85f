import { readdirSync } from "node:fs";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { atTheDesk, base, invite, person, test, toLayouts } from "./world";

const APP = join(import.meta.dirname, "../../app");
/** Every address that takes a form, as the folders of the pages name them; what varies in one is filled in. */
const routes = (): readonly string[] => readdirSync(APP, { recursive: true, encoding: "utf8" }).map((path) => path.replaceAll("\\", "/")).filter((path) => path.endsWith("/route.ts") && !path.startsWith("api/"))
  .map((path) => `/${path.replace(/\/route\.ts$/, "").replace(/\([^)]+\)\//g, "").replace("[step]", "guests").replace("[layout]", "a").replace(/\[[^\]]+\]/g, "x")}`);

for (const scripts of [true, false]) {
  test(`a link for family shows plan and answers, and changes nothing, with scripts ${scripts ? "on" : "off"}`, async ({ browser }) => {
    const how = { width: 390, scripts };
    const desk = await atTheDesk(browser, how);
    const { reference, link } = await invite(desk, { names: "Signe Aaltonen\nPetra Vuori", email: `look.${String(scripts)}@example.org`, date: "2029-09-01" });
    const couple = await person(browser, how);
    await couple.go(link);
    await couple.press("Open our day");
    await toLayouts(couple, { adults: 40, children: 2 });
    await couple.page.getByText("Choose A").click();
    await couple.press("Save and continue");
    await couple.go("/request/extras");
    await couple.page.getByLabel("In your own words (optional)").fill("Between us and the desk.");
    await couple.press("Save and continue");

    await couple.go("/request/share");
    await couple.press("Make the link");
    await expect(couple.page).toHaveTitle(/^Error: /);
    await couple.page.getByLabel("For whom is it?").fill("Aunt Odile");
    await couple.press("Make the link");
    const address = await couple.page.getByLabel("Address of the link").inputValue();
    expect(address).toMatch(/\/open\/[\w-]{32}$/);
    // Shown once: the page by itself no longer holds it.
    await couple.go("/request/share");
    await expect(couple.page.getByLabel("Address of the link")).toHaveCount(0);
    await expect(couple.page.getByText("Aunt Odile").first()).toBeVisible();

    const aunt = await person(browser, how);
    await aunt.go(address);
    await aunt.press("Look at their day");
    await expect(aunt.page).toHaveURL(/\/look$/);
    await expect(aunt.page.getByRole("heading", { level: 1 })).toContainText("Signe Aaltonen");
    await expect(aunt.page.locator(".drawing svg:visible").first()).toBeVisible();
    await expect(aunt.page.getByText("40", { exact: true }).first()).toBeVisible();
    await expect(aunt.page.getByText("Planning aid.").first()).toBeVisible();
    await expect(aunt.page.getByText("Between us and the desk.")).toHaveCount(0);
    await expect(aunt.page.getByText("Fee summary")).toHaveCount(0);
    // But for the plan's own layers, which come when the page's script does.
    await expect(aunt.page.locator("main input:not([type=hidden]):not(.plan-layers input), main textarea, main select:not(.plan-pieces select)")).toHaveCount(0);

    // Every address that takes a form refuses, and every page of the couple's and the desk's sends away.
    await couple.go("/request");
    const before = await couple.page.locator("main").innerText();
    const all = routes();
    expect(all.length).toBeGreaterThan(15);
    for (const path of all.filter((one) => one !== "/look/leave" && one !== "/words/choose")) {
      const answer = await aunt.page.request.post(base() + path, { form: { adults: "1", revision: "1", reference, layout: "a", words: "x", label: "x", then: "send", take: "mine", link: "x" }, maxRedirects: 0 });
      const to = answer.headers().location ?? "";
      expect(answer.status(), path).toBeGreaterThanOrEqual(303);
      if (answer.status() < 400) expect(new URL(to, base()).pathname, path).toMatch(/^\/(open|desk\/open|look)?(\/|$)/);
    }
    for (const path of ["/request", "/request/guests", "/request/layout", "/request/send", "/request/share", "/desk", `/desk/bookings/${reference}`]) {
      await aunt.go(path);
      expect(new URL(aunt.page.url()).pathname, path).toMatch(/^\/(desk\/)?open$/);
    }
    for (const path of [`/api/proposal.pdf?ref=${reference}`, `/api/sheets.pdf?ref=${reference}`, `/api/calendar.ics?ref=${reference}`, "/api/answers.json", "/api/arranging.json"]) {
      expect((await aunt.page.request.get(base() + path)).status(), path).toBeGreaterThanOrEqual(400);
    }
    await couple.go("/request");
    expect(await couple.page.locator("main").innerText()).toBe(before);

    // Withdrawn, it shows nothing at the next look.
    await couple.go("/request/share");
    await couple.press("Withdraw it");
    await expect(couple.page.getByText("Aunt Odile")).toHaveCount(0);
    await aunt.go("/look");
    await expect(aunt.page.getByRole("heading", { level: 1 })).toHaveText("This link shows nothing any more");
    await aunt.go(address);
    await expect(aunt.page.getByText("the venue has withdrawn it").or(aunt.page.getByText("does not open any more")).first()).toBeVisible();
  });
}
