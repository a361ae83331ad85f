import { expect, type Browser, type Locator, type Page } from "@playwright/test";
import { atTheDesk, base, invite, person, test, toLayouts, SLOW_MS, type How, type Who } from "./world";

/** A couple who have chosen their first layout and go on by hand, with one dining table chosen by its name. */
async function atTheirPlan(browser: Browser, how: How & { readonly touch?: boolean }): Promise<{ readonly who: Who; readonly table: string; readonly desk: Who; readonly reference: string }> {
  const desk = await atTheDesk(browser, { width: 1280, scripts: false });
  const { reference, link } = await invite(desk, { names: "Ottilie Brandvold\nTeodor Lisowski", email: `hand.${Date.now()}@example.org`, date: "2029-08-11" });
  const who = await person(browser, how);
  await who.go(link);
  await who.press("Open our day");
  await who.page.waitForURL("**/request");
  await toLayouts(who, { adults: 44, children: 2 });
  await who.page.getByRole("radio").first().check({ force: true });
  await who.press("Choose it and move things by hand");
  await who.page.waitForURL("**/request/layout/adjust");
  if (how.scripts) await expect(who.page.locator(".hand-stage svg.plan").first()).toBeVisible({ timeout: SLOW_MS });
  const names = await who.page.locator("#choose option").allTextContents();
  const table = names.find((n) => /^Table \d+$/.test(n)) ?? names.find((n) => n.startsWith("Table")) ?? "";
  return { who, table, desk, reference };
}

const values = (page: Page) => ({ far: page.locator("#far1"), wall: page.locator("#wall1"), angle: page.locator("#angle") });
/** Where the chosen piece stands, as the page says it in words. */
const words = (page: Page): Locator => page.locator(".hand-piece > p").first();
const item = (page: Page, name: string): Locator => page.locator(".hand-list li").filter({ has: page.getByRole("link", { name, exact: true }) });

test("with scripts off a table goes to 1.20 m from a wall and turns by 90 degrees, and undo outlives a reload", async ({ browser }) => {
  const { who: { page, press, go }, table } = await atTheirPlan(browser, { width: 390, scripts: false });
  await page.locator("#choose").selectOption({ label: table });
  await press("Choose");
  await expect(page.getByRole("heading", { name: table })).toBeVisible();
  const before = await words(page).textContent();
  await page.getByRole("combobox", { name: "first wall" }).selectOption("left");
  await values(page).far.fill("1.20");
  await page.locator("#far2").fill("");
  await press("Put it there");
  await expect(words(page)).toContainText("1.20\u00a0m from the left wall");
  await expect(page.locator(".hand-said")).toContainText(`${table} to 1.20\u00a0m from the left wall`);
  await press("A quarter turn");
  await expect(page.locator(".hand-last")).toContainText(`${table} turned to 90°`);
  // The drawing shows it: it was made anew by the server.
  expect(await page.locator(".drawing-narrow svg").count()).toBe(1);

  await go(page.url());
  await press(/^Undo/);
  await press(/^Undo/);
  expect(await words(page).textContent()).toBe(before);
  await go("/request/layout/adjust");
  await press(/^Redo/);
  await expect(item(page, table)).toContainText("1.20\u00a0m from the left wall");
});

test("what was typed amiss is said beside its field, with scripts off and on, and nothing is done", async ({ browser }) => {
  for (const scripts of [false, true]) {
    const { who: { page, press, tap }, table } = await atTheirPlan(browser, { width: 1280, scripts });
    await page.locator("#choose").selectOption({ label: table });
    if (!scripts) await press("Choose");
    await page.locator("#far1").fill("a stride");
    await tap("Put it there");
    await expect(page.locator("#far1-error")).toContainText("A distance, such as 1.20 m.");
    await expect(page.locator("#far1")).toHaveValue("a stride");
    await expect(page.locator(".hand-last")).toContainText("Nothing is changed yet.");
    if (!scripts) await expect(page).toHaveTitle(/^Error: /);
  }
});

test("by keyboard alone a table goes to 1.20 m from a wall and turns by 90 degrees", async ({ browser }) => {
  const { who: { page }, table } = await atTheirPlan(browser, { width: 1280, scripts: true });
  const stage = page.locator(".hand-stage");
  await stage.focus();
  // From piece to piece until the table is chosen.
  // As the heading stands, without waiting for one: none is there before the first piece is chosen.
  for (let i = 0; i < 200 && (await page.locator("#piece-head").allTextContents())[0] !== table; i++) await page.keyboard.press("PageDown");
  await expect(page.locator("#piece-head")).toHaveText(table);
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Shift+ArrowDown");
  await page.keyboard.press("Enter");
  await expect(page.locator(".hand-last")).toContainText(`Last: ${table} to`);
  await expect(stage).toBeFocused();
  await page.keyboard.press("r");
  await page.keyboard.press("Enter");
  await expect(page.locator(".hand-last")).toContainText("turned to 90°");
  // On by Tab to the typed distances, and Enter.
  for (let i = 0; i < 60 && !(await page.locator("#far1").evaluate((one) => one === document.activeElement)); i++) await page.keyboard.press("Tab");
  await page.keyboard.press("Control+a");
  await page.keyboard.type("1.20");
  await page.keyboard.press("Enter");
  await expect(words(page)).toContainText("1.20\u00a0m from the");
  await expect(page.locator(".hand-last")).toContainText("1.20\u00a0m from the");
  // What was done is heard once, politely, and the focus stays.
  await expect(page.locator('.hand-said[role="status"]')).toContainText("1.20\u00a0m");
  expect(await page.locator("#far1").evaluate((one) => document.activeElement !== document.body && one.isConnected)).toBe(true);
});

test("by touch alone a table is chosen, placed by a tap and by steps, turned, and typed to 1.20 m", async ({ browser }) => {
  const { who: first, table } = await atTheirPlan(browser, { width: 390, scripts: true });
  const state = await first.page.context().storageState();
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, storageState: state });
  const page = await context.newPage();
  await page.goto(`${base()}/request/layout/adjust`);
  await expect(page.locator(".hand-stage svg.plan").first()).toBeVisible({ timeout: SLOW_MS });
  const piece = page.locator(`.hand-stage [role="graphics-symbol"][aria-label^="${table}"]`).first();
  await piece.tap();
  await expect(page.locator("#piece-head")).toHaveText(table);
  const before = await words(page).textContent();
  await page.locator("#hand-plan").scrollIntoViewIfNeeded();
  await page.getByRole("button", { name: "Place by a tap" }).tap();
  const at = await piece.boundingBox();
  if (!at) throw new Error("the table is not seen");
  await page.touchscreen.tap(at.x + at.width / 2 + 12, at.y + at.height / 2 + 8);
  await expect(words(page)).not.toHaveText(before ?? "");
  await page.getByRole("button", { name: /^Turn .* by a quarter$/ }).tap();
  await expect(page.locator(".hand-last")).toContainText("turned to 90°");
  await page.locator("#far1").tap();
  await page.locator("#far1").fill("1.20");
  await page.getByRole("button", { name: "Put it there" }).tap();
  await expect(words(page)).toContainText("1.20\u00a0m from the");
  // Every button and field of the page can be met by a finger.
  const small = await page.locator(".hand button:visible, .hand select:visible, .hand input:not([type=hidden]):not([type=checkbox]):visible").evaluateAll((all) =>
    all.map((one) => ({ name: one.textContent?.trim() ?? one.id, ...one.getBoundingClientRect().toJSON() as { width: number; height: number } })).filter((b) => b.height < 43.5 || b.width < 24).map((b) => `${b.name}: ${b.width} x ${b.height}`));
  expect(small).toEqual([]);
  await context.close();
});

test("a finger drags the chosen table, and the page stays where it is; a finger beside it scrolls the page", async ({ browser }) => {
  const { who: first, table } = await atTheirPlan(browser, { width: 390, scripts: true });
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, storageState: await first.page.context().storageState() });
  const page = await context.newPage();
  await page.goto(`${base()}/request/layout/adjust`);
  await expect(page.locator(".hand-stage svg.plan").first()).toBeVisible({ timeout: SLOW_MS });
  const piece = page.locator(`.hand-stage .plan:not(.hand-over) [role="graphics-symbol"][aria-label^="${table}"]`).first();
  await piece.tap();
  await expect(page.locator("#piece-head")).toHaveText(table);
  await page.locator("#hand-plan").evaluate((one) => one.scrollIntoView({ block: "center", behavior: "instant" }));
  const cdp = await context.newCDPSession(page), scrolled = (): Promise<number> => page.evaluate(() => window.scrollY);
  /** One finger from a point, in steps as a hand makes them. */
  const swipe = async ([x, y]: readonly [number, number], [dx, dy]: readonly [number, number]): Promise<void> => {
    await cdp.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [{ x, y }] });
    for (let i = 1; i <= 12; i++) await cdp.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: [{ x: x + (dx * i) / 12, y: y + (dy * i) / 12 }] });
    await cdp.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  };
  const box = await piece.boundingBox(), before = await scrolled();
  if (!box) throw new Error("the table is not seen");
  await swipe([box.x + box.width / 2, box.y + box.height / 2], [30, 40]);
  await expect(page.locator(".hand-last")).toContainText(`Last: ${table} to`);
  expect(await scrolled()).toBe(before);
  const heading = await page.locator("#piece-head").boundingBox();
  if (!heading) throw new Error("the heading is not seen");
  await swipe([heading.x + 150, heading.y + heading.height / 2], [0, -160]);
  await expect.poll(scrolled).toBeGreaterThan(before);
  await context.close();
});

test("a chair of the rows is dragged as the chair that it is, and its old place shows empty", async ({ browser }) => {
  const { who: { page, go } } = await atTheirPlan(browser, { width: 1280, scripts: true });
  await go("/request/layout/adjust?part=ceremony");
  const over = page.locator(".hand-stage .hand-over"), lifted = over.locator(".hand-ghost path");
  await expect(page.locator(".hand-stage svg.plan").first()).toBeVisible({ timeout: SLOW_MS });
  const names = await page.locator("#choose option").evaluateAll((all) => all.map((one) => ({ id: one.getAttribute("value") ?? "", name: one.textContent ?? "" })));
  const chair = names.find((one) => /chair/i.test(one.name));
  if (!chair) throw new Error(`no chair among ${names.map((one) => one.name).join(", ")}`);
  await page.locator("#choose").selectOption(chair.id);
  const mark = await over.locator("path.s-accent").first().boundingBox();
  if (!mark) throw new Error("the chair is not marked");
  const [x, y] = [mark.x + mark.width / 2, mark.y + mark.height / 2];
  expect(await lifted.count()).toBe(0);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 20; i++) await page.mouse.move(x + i * 2, y + i);
  // Seat and back move along; where they stood an empty outline is left.
  await expect(lifted).toHaveCount(2);
  await expect(over.locator(".hand-ghost .f-v-chair")).toHaveCount(1);
  await expect(over.locator("path.f-floor[stroke-dasharray]")).toHaveCount(1);
  await page.mouse.up();
  await expect(page.locator(".hand-last")).toContainText("Last: ");
  await expect(lifted).toHaveCount(0);
});

test("a table is dragged by the mouse: it is drawn to its neighbours, and the check speaks", async ({ browser }) => {
  const { who: { page }, table } = await atTheirPlan(browser, { width: 1280, scripts: true });
  const piece = page.locator(`.hand-stage .plan:not(.hand-over) [role="graphics-symbol"][aria-label^="${table}"]`).first();
  const at = await piece.boundingBox();
  if (!at) throw new Error("the table is not seen");
  const [x, y] = [at.x + at.width / 2, at.y + at.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 20; i++) await page.mouse.move(x + i * 3, y + i);
  await expect(page.locator(".hand-tried")).toContainText("here", { timeout: 20_000 });
  await expect(page.locator(".hand-over text").first()).toBeAttached();
  await page.mouse.up();
  await expect(page.locator(".hand-last")).toContainText(`Last: ${table} to`);
  await expect(page.locator(".hand-said")).toContainText(table);
  await page.reload();
  await expect(page.locator(".hand-last")).toContainText(`Last: ${table} to`);
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(page.locator(".hand-last")).toContainText("Nothing is changed yet.");
  await expect(page.locator(".hand-last")).toContainText(`Redo brings back: ${table}`);
});

test("a reader of the screen finds the plan, its pieces and every deed by role and name", async ({ browser }) => {
  const { who: { page }, table } = await atTheirPlan(browser, { width: 1280, scripts: true });
  await page.locator("#choose").selectOption({ label: table });
  await expect(page.getByRole("group", { name: new RegExp(`drawn\\. ${table} is chosen`) })).toBeVisible();
  await expect(page.getByRole("navigation", { name: "Parts of the day" })).toBeVisible();
  for (const name of ["Put it there", "A quarter turn", "A quarter turn back", "Hold it here", "Take it away", /^Undo: nothing is done yet/, /^Redo/, "Put it right", "Go on with it", "Larger", "Place by a tap"]) await expect(page.getByRole("button", { name }).first()).toBeVisible();
  await expect(page.getByRole("heading", { name: "What the checks found" })).toBeVisible();
  await expect(page.getByRole("heading", { name: /as a list/ })).toBeVisible();
  const labels = await page.locator('.hand-stage .plan:not(.hand-over) [role="graphics-symbol"]').evaluateAll((all) => all.map((one) => one.getAttribute("aria-label") ?? ""));
  expect(labels.length).toBeGreaterThan(5);
  expect(labels.every((l) => l !== "")).toBe(true);
  // Chosen and moved from the list and the forms alone.
  await page.getByRole("link", { name: table, exact: true }).click();
  await page.getByLabel(/^Distance/).first().fill("1.20");
  await page.getByRole("button", { name: "Put it there" }).press("Enter");
  await expect(page.getByRole("status").filter({ hasText: "1.20\u00a0m" })).toBeVisible();
  await page.getByRole("button", { name: "A quarter turn", exact: true }).press("Enter");
  await expect(page.getByRole("status").filter({ hasText: "turned to 90°" })).toBeVisible();
  await expect(page.getByRole("button", { name: "A quarter turn", exact: true })).toBeFocused();
  const tree = await page.locator(".hand").ariaSnapshot();
  expect(tree).toContain("button \"Put it there\"");
});

test("a deed on an older plan is not done, and can be done on what stands now", async ({ browser }) => {
  const { who: { page, press }, table, desk, reference } = await atTheirPlan(browser, { width: 1280, scripts: false });
  await page.locator("#choose").selectOption({ label: table });
  await press("Choose");
  await desk.go(`/desk/bookings/${reference}/adjust`);
  await desk.page.locator("#choose").selectOption({ index: 2 });
  await desk.press("Choose");
  await desk.page.locator("details.hand-more").first().locator("summary").click();
  await desk.page.locator("#note").fill("Leave room for the pram");
  await desk.press("Keep the note");
  await press("A quarter turn");
  await expect(page.getByRole("alert").filter({ hasText: "changed elsewhere" })).toBeVisible();
  await expect(page.locator(".hand-last")).toContainText("Note on");
  await press("Do it on this plan");
  await expect(page.locator(".hand-last")).toContainText(`${table} turned to 90°`);
  await press("Keep this as our layout");
  await page.waitForURL("**/request/send");
  await expect(page.getByText(/adjusted by hand/).first()).toBeVisible();
});
