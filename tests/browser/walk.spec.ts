import { expect } from "@playwright/test";
import { atTheDesk, hrefOf, invite, person, test, SLOW_MS } from "./world";

for (const scripts of [false, true]) for (const width of [390, 1280]) {
  test(`from the mail to the agreed layout at ${width} px with scripts ${scripts ? "on" : "off"}`, async ({ browser }) => {
    const how = { width, scripts };
    const desk = await atTheDesk(browser, how);
    const { reference, link } = await invite(desk, { names: "Ines Calloway\nليلى حداد", email: `ines.${width}.${String(scripts)}@example.org`, date: `2029-${width === 390 ? "05" : "06"}-${scripts ? "09" : "16"}` });
    const { page, go, press, tap } = await person(browser, how);

    await go(link);
    await expect(page.getByRole("heading", { level: 1 })).toContainText("Ines Calloway");
    await press("Open our day");
    await expect(page).toHaveURL(/\/request$/);

    await go("/request/guests");
    await page.getByLabel("Adults").fill("a few");
    await tap("Save and continue");
    await expect(page).toHaveTitle(/^Error: Step 1 of 8/);
    await expect(page.getByLabel("Adults")).toHaveValue("a few");
    await expect(page.locator(".errors a")).toHaveAttribute("href", "#adults");
    await page.getByLabel("Adults").fill("86");
    await page.getByLabel("Children").fill("6");
    await press("Save and continue");

    await page.getByLabel("Yes, here").check();
    await press("Save and continue");
    await page.getByLabel("Round and long tables together").check();
    await page.getByLabel("Buffet").check();
    await press("Save and continue");
    await page.getByLabel("A DJ").check();
    await page.getByLabel("A good many of us").check();
    await press("Save and continue");
    await page.getByLabel("Cake", { exact: true }).check();
    await press("Save and continue");
    await press("Save and continue");

    await expect(page).toHaveTitle(/Step 7 of 8/);
    // A busy machine may still be working the layouts out: the page says so, and shows them by itself.
    await expect(page.locator(".layouts .drawing svg").first()).toBeVisible({ timeout: SLOW_MS });
    // No line of the comparison lies over another.
    const lines = await page.locator(".layouts section").first().locator(".pairs > div").evaluateAll((all) => all.map((one) => one.getBoundingClientRect()).map(({ top, bottom }) => ({ top, bottom })));
    expect(lines.length).toBeGreaterThanOrEqual(6);
    lines.forEach(({ top }, i) => { if (i > 0) expect(top).toBeGreaterThanOrEqual((lines[i - 1]?.bottom ?? 0) - 1); });
    await page.getByText("Choose A").click();
    await press("Save and continue");
    await expect(page).toHaveTitle(/Step 8 of 8/);
    await expect(page.getByText("Planning aid.").first()).toBeVisible();
    await page.getByLabel(/Anything your coordinator should know/).fill("My aunt uses a chair with wheels.");
    await press(/^Send to/);
    await expect(page.getByText(reference).first()).toBeVisible();

    await desk.go(`/desk/bookings/${reference}`);
    await expect(desk.page.getByRole("blockquote").first()).toHaveText("My aunt uses a chair with wheels.");
    await desk.tap(/^Return revision 1/);
    await expect(desk.page).toHaveTitle(/^Error: /);
    if (scripts) await expect(desk.page.locator(".errors")).toBeFocused();
    await desk.page.getByLabel("Or return it with a reason").fill("Put her table nearer the door.");
    await desk.press(/^Return revision 1/);

    await go("/request");
    await expect(page.getByText("Put her table nearer the door.").first()).toBeVisible();
    await go("/request/send");
    await press(/^Send to/);
    await desk.go(`/desk/bookings/${reference}`);
    const shown = (await desk.page.locator("button + p .fingerprint").first().textContent()) ?? "";
    await desk.press(/^Agree revision 2/);

    await go("/request");
    await expect(page.getByRole("heading", { name: "Agreed: revision 2" })).toBeVisible();
    await expect(page.getByText(shown).first()).toBeVisible();
    const pdf = await page.request.get(await hrefOf(page, "Proposal as PDF"));
    expect(pdf.headers()["content-type"]).toBe("application/pdf");
  });
}
