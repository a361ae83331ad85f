import { expect, type Page } from "@playwright/test";
import { tidewheel } from "../../lib/demo";
import { atTheDesk, invite, person, test, SLOW_MS, type Who } from "./world";

const rounds = tidewheel.stock.find((one) => "diameter" in one.shape && one.kind === "table");

async function read(desk: Who, count: number): Promise<void> {
  const file = { ...tidewheel, stock: tidewheel.stock.map((one) => (one === rounds ? { ...one, count } : one)) };
  await desk.go("/desk/venue");
  await desk.page.getByLabel("Venue file").setInputFiles({ name: "mill.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(file)) });
  await desk.press("Read it in");
}
type Shown = { readonly sentence: string; readonly measure: string; readonly plan: string };

/** What the step shows once the counts for the venue as it stands are there, and its layout. */
async function shown(page: Page, comfort: RegExp): Promise<Shown> {
  await expect(async () => {
    await page.reload();
    await expect(page.locator(".effect .lead")).toHaveText(comfort, { timeout: 2_000 });
    await expect(page.locator(".effect .drawing svg:visible").first()).toBeVisible({ timeout: 2_000 });
  }).toPass({ timeout: SLOW_MS });
  return {
    sentence: await page.locator(".effect .lead").innerText(), measure: (await page.locator(".effect .measure-of svg[role=img]").getAttribute("aria-label")) ?? "",
    plan: await page.locator(".effect .drawing svg").first().innerHTML(),
  };
}

test("one stock count less changes the sentence, the measure of places and the plan", async ({ browser }) => {
  const how = { width: 820, scripts: false };
  const desk = await atTheDesk(browser, how);
  const { link } = await invite(desk, { names: "Edda Quill\nJonas Reyes", email: "stock@example.org", date: "2029-11-03" });
  const { page, go, press } = await person(browser, how);
  await go(link);
  await press("Open our day");
  await go("/request/guests");
  await page.getByLabel("Adults").fill("36");
  await press("Save and continue");
  await go("/request/meal");
  await page.getByLabel("Round tables only").check();
  await press("Save and see what it does");
  try {
    const before = await shown(page, /all 36 of you in comfort/);
    // Seven rounds at eight seat 7 × 8 = 56 in comfort; four seat 4 × 8 = 32, and 4 × 10 = 40 at the most: 36 sit closer.
    await read(desk, 4);
    await go("/request/meal");
    const after = await shown(page, /\b32 of your 36|\b32 would sit/);
    expect(after.sentence).not.toBe(before.sentence);
    expect(before.measure).toContain("56 in comfort");
    expect(after.measure).toContain("32 in comfort, 40 at the most");
    expect(after.plan).not.toBe(before.plan);
  } finally {
    await read(desk, rounds?.count ?? 7);
  }
});
