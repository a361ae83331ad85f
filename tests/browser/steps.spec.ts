import { expect } from "@playwright/test";
import { atTheDesk, base, invite, person, test, toLayouts } from "./world";

const STEPS = ["guests", "ceremony", "meal", "music", "displays", "extras"] as const;

test("every page of questions has one heading, one way back, one button on, and takes “not sure yet” for an answer", async ({ browser }) => {
  const how = { width: 390, scripts: true };
  const desk = await atTheDesk(browser, how);
  const { link } = await invite(desk, { names: "Wren Ashdown\nNgọc Ánh", email: "steps@example.org", date: "2029-05-19" });
  const us = await person(browser, how);
  const { page, go, press, tap, back } = us;
  await go("/open");
  await expect(page.getByLabel("Your mail address")).toHaveAttribute("autocomplete", "email");
  // A link that opens nothing says why, and offers a fresh one to the address of the booking.
  await go(`/open/${"A".repeat(32)}`);
  await expect(page.getByText("This link opens nothing.")).toBeVisible();
  await expect(page.getByRole("button", { name: "Mail a fresh link" })).toBeVisible();
  await go(link);
  // What it is, by when, how long it takes, what is kept, whom to ask.
  for (const said of [/layout by/, /twenty minutes/, /saved when you press/, /We keep your answers/, /Questions\?/]) await expect(page.getByText(said).first()).toBeVisible();
  await press("Open our day");

  // A step beyond what is known cannot be reached by its address or by a form.
  for (const path of ["/request/layout", "/request/send", "/request/layout/a"]) {
    await go(path);
    await expect(page).toHaveURL(/\/request\/guests\?why=guests$/);
    await expect(page.getByRole("status").filter({ hasText: "how many adults" })).toBeVisible();
  }
  const leap = await page.request.post(`${base()}/request/send/go`, { form: { then: "send", revision: "1", notes: "" }, maxRedirects: 0 });
  expect(leap.headers().location).toMatch(/\/request\/(guests|send)/);

  const heads = new Set<string>();
  for (const [i, step] of STEPS.entries()) {
    await go(`/request/${step}`);
    await expect(page).toHaveTitle(new RegExp(`^Step ${i + 1} of 8: `));
    await expect(page.locator("h1")).toHaveCount(1);
    heads.add(await page.locator("h1").innerText());
    await expect(page.locator("a.back")).toHaveCount(1);
    await expect(page.locator("form .btn-go")).toHaveCount(1);
    await expect(page.locator("form .btn-go")).toBeEnabled();
    await expect(page.locator("form.step-grid")).toHaveAttribute("novalidate", "");
    await expect(page.locator("main")).not.toContainText("*");
    // Nobody is asked again what stands in the booking.
    await expect(page.locator("main input[type=email], main input[type=date], main input[name=names], main input[type=number]")).toHaveCount(0);
    await expect(page.locator(".effect .lead")).toHaveAttribute("aria-live", "polite");
    await expect(page.getByText(/[Nn]ot sure yet/).first()).toBeVisible();
    for (const field of await page.locator("main input.short").all()) await expect(field).toHaveAttribute("inputmode", "numeric");
  }
  expect(heads.size).toBe(STEPS.length);

  // Nothing is looked at before the button is pressed; harmless signs are forgiven.
  await go("/request/guests");
  await page.getByLabel("Adults").fill("x");
  await page.getByLabel("Children").focus();
  await page.getByLabel("High chairs").focus();
  await expect(page.locator(".field-error")).toHaveCount(0);
  await tap("Save and continue");
  const summary = page.locator(".errors");
  await expect(summary).toBeFocused();
  const message = await summary.getByRole("link").innerText();
  await expect(page.locator("#adults-error")).toContainText(message);
  expect(message).toMatch(/^Adults: .*from 1 to \d/);
  await page.getByLabel("Adults").fill(" 60 guests. ");
  await press("Save and continue");
  await page.waitForURL("**/request/ceremony");
  await expect(page.locator(".top-aside")).toContainText(/Saved \d/);
  // Back leads to what was last seen.
  await back();
  await expect(page).toHaveURL(/\/request\/guests$/);
  await expect(page.getByLabel("Adults")).toHaveValue("60");
  await go("/request/ceremony");
  await page.locator("a.back").click();
  await expect(page).toHaveURL(/\/request\/guests$/);

  // All the others left open: saved, and "not sure yet".
  for (const step of STEPS.slice(1)) {
    await go(`/request/${step}`);
    await press("Save and continue");
  }
  await go("/request");
  await expect(page.getByText("Not sure yet", { exact: true }).first()).toBeVisible();
  await expect(page.getByRole("link", { name: "Go on where you left off" })).toHaveAttribute("href", "/request/layout");
  // Another device shows the same, at the same place.
  const other = await person(browser, { width: 1280, scripts: false });
  await other.go(link);
  await other.press("Open our day");
  await expect(other.page.getByRole("link", { name: "Go on where you left off" })).toHaveAttribute("href", "/request/layout");

  // A visit that ended: what was typed is held, and shown again once the link is opened here.
  await go("/request/guests");
  await page.getByLabel("Children").fill("7");
  const kept = (await page.context().cookies()).filter((one) => !one.name.includes("couple"));
  await page.context().clearCookies();
  await page.context().addCookies(kept);
  await press("Save and continue");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Your visit has ended");
  await go(link);
  await press("Open our day");
  await expect(page).toHaveURL(/\/request\/guests\?kept=/);
  await expect(page.getByLabel("Children")).toHaveValue("7");
});

for (const scripts of [true, false]) {
  test(`answers are checked before they are sent, a chosen layout is not set aside unasked, and Back after sending sends nothing twice, with scripts ${scripts ? "on" : "off"}`, async ({ browser }) => {
    const how = { width: 1280, scripts };
    const desk = await atTheDesk(browser, how);
    const { reference, link } = await invite(desk, { names: "Hollis Park\nRuth Amadi", email: `check.${String(scripts)}@example.org`, date: scripts ? "2029-10-20" : "2029-10-27" });
    const us = await person(browser, how);
    const { page, go, press, back } = us;
    await go(link);
    await press("Open our day");
    await toLayouts(us, { adults: 50, children: 0 });
    // With a coordinator the first draft may be left to them.
    await go("/request");
    await press("Ask for a draft");
    await expect(page.getByRole("heading", { name: "You asked for a draft" })).toBeVisible();
    await go("/request/layout");
    await page.getByText("Choose A").click();
    await press("Save and continue");
    await expect(page).toHaveTitle(/Step 8 of 8/);
    await expect(page.getByText("Not sure yet", { exact: true }).first()).toBeVisible();
    const change = page.getByRole("link", { name: "Change high chairs" });
    await expect(change).toHaveAttribute("href", "/request/guests?back=send");

    // The words to the venue set nothing aside, nor does saying what was taken meanwhile; a number of guests does, and that is asked about first.
    await go("/request/extras?back=send");
    await page.getByLabel("In your own words (optional)").fill("We bring an arch.");
    await press("Save and continue");
    await expect(page).toHaveURL(/\/request\/send$/);
    await go("/request/meal?back=send");
    await page.getByLabel("Brought to each place").check();
    await press("Save and continue");
    await expect(page).toHaveURL(/\/request\/send$/);
    await go("/request/guests?back=send");
    await page.getByLabel("Adults").fill("54");
    await press("Save and continue");
    await expect(page.getByRole("heading", { name: "This sets your chosen layout aside" })).toBeVisible();
    await expect(page.getByLabel("Adults")).toHaveValue("54");
    await page.getByRole("link", { name: "Leave everything as it is" }).click();
    await expect(page.getByLabel("Adults")).toHaveValue("50");
    await go("/request/send");
    await expect(page).toHaveTitle(/Step 8 of 8/);
    // Each plan travels once: what wakes the page holds none of them, and woken it has lost none.
    const sent = await (await page.request.get(`${base()}/request/send`)).text();
    expect(sent.match(/<svg/g)?.length).toBeGreaterThan(1);
    expect([...sent.matchAll(/self\.__next_f\.push\((.*?)\)<\/script>/gs)].filter(([, data]) => data?.includes("<path") || data?.includes("u003cpath"))).toEqual([]);
    await expect(page.locator(".plan-view svg").first()).toBeVisible();
    // Nor where a translator or the like changes the page before it is woken, and it is built anew.
    await page.route("**/request/layout", async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: (await response.text()).replace(/<h1([^>]*)>[^<]*<\/h1>/, "<h1$1><font>Votre plan</font></h1>") });
    });
    await go("/request/layout");
    await expect(page.locator("figure.drawing svg").first()).toBeVisible();
    await page.unroute("**/request/layout");
    await go("/request/send");
    await press(/^Send to/);
    await expect(page.getByText(reference).first()).toBeVisible();
    await back();
    await page.reload();
    await expect(page).toHaveURL(/\/request(\/sent)?/);
    await expect(page.getByRole("button", { name: /^Send to/ })).toHaveCount(0);

    // After agreement a change is asked for; what is agreed stands.
    await desk.go(`/desk/bookings/${reference}`);
    await desk.press(/^Agree revision 1/);
    await go("/request");
    await press("Ask for this change");
    await expect(page.locator(".field-error")).toContainText("Write what should change");
    await page.getByLabel("What should change").fill("Four more cousins are coming.");
    await press("Ask for this change");
    await expect(page.getByRole("heading", { name: "You asked for a change" })).toBeVisible();
    await expect(page.getByRole("heading", { name: "Agreed: revision 1" })).toBeVisible();
    await desk.go("/desk/mailbox");
    await expect(desk.page.getByText(`${reference}: Hollis Park & Ruth Amadi ask for a change of the agreed layout`).first()).toBeVisible();
  });
}
