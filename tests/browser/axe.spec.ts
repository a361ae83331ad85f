import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";
import { atTheDesk, invite, person, test, toLayouts } from "./world";

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/** What goes by the colours alone, which a scheme changes and nothing else. */
const BY_COLOUR = ["color-contrast", "link-in-text-block"];
const WIDTHS = [390, 1280];

/** No page has frames, so axe runs in it whole; and only what is amiss is written out, not the hundreds of nodes that are as they should be. */
const axeOn = (page: Page): AxeBuilder => new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ["violations"] });

/** What axe finds on the page at both widths, by day and by night, a line each: width, scheme, rule and place. */
async function faults(page: Page): Promise<readonly string[]> {
  const found: string[] = [], at = new URL(page.url()).pathname;
  const look = async (how: string, axe: AxeBuilder): Promise<void> => {
    const { violations } = await axe.analyze();
    found.push(...violations.flatMap((one) => one.nodes.map((node) => `${at}, ${how}: ${one.id} at ${node.target.join(" ")}`)));
  };
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    await page.emulateMedia({ colorScheme: "light" });
    await look(`${width} px, light`, axeOn(page).withTags(TAGS));
    await page.emulateMedia({ colorScheme: "dark" });
    await look(`${width} px, dark`, axeOn(page).withRules(BY_COLOUR));
  }
  return found;
}

test("WCAG 2.2 AA as far as axe sees, at 390 and 1280 px, light and dark", async ({ browser }) => {
  const how = { width: 1280, scripts: true };
  const found: string[] = [];
  const desk = await atTheDesk(browser, how);
  const { reference, link } = await invite(desk, { names: "Ottilie Brandvold\nTeodor Lisowski", email: "axe@example.org", date: "2029-07-14" });
  found.push(...(await faults(desk.page)));
  for (const path of ["/desk", "/desk/bookings/new", `/desk/bookings/${reference}`, "/desk/mailbox", "/desk/venue", "/desk/fits", "/desk/people", "/desk/bookings/paste", "/desk/venue/new", "/desk/venue/tidewheel-mill/new-room", "/desk/venue/tidewheel-mill/rooms/grain-floor", "/desk/venue/tidewheel-mill/charges", "/desk/venue/tidewheel-mill/stock", `/desk/bookings/${reference}/draft`]) {
    await desk.go(path);
    found.push(...(await faults(desk.page)));
  }

  const couple = await person(browser, how);
  for (const path of ["/", "/open", link, "/no-such-page"]) {
    await couple.go(path);
    found.push(...(await faults(couple.page)));
  }
  await couple.go(link);
  await couple.press("Open our day");
  await expect(couple.page).toHaveURL(/\/request$/);
  await couple.go("/request/guests");
  await couple.page.getByLabel("Adults").fill("none yet");
  await couple.tap("Save and continue");
  await expect(couple.page).toHaveTitle(/^Error: /);
  found.push(...(await faults(couple.page)));
  await toLayouts(couple, { adults: 60, children: 4 });
  found.push(...(await faults(couple.page)));
  await couple.go("/request/layout/a");
  await expect(couple.page.locator(".plan-tools").first()).toBeVisible();
  found.push(...(await faults(couple.page)));
  await couple.go("/request/layout");
  await couple.page.getByRole("radio").first().check({ force: true });
  await couple.press("Choose it and move things by hand");
  for (const hand of [couple, desk]) {
    if (hand === desk) await desk.go(`/desk/bookings/${reference}/adjust`);
    await expect(hand.page.locator(".hand-stage .plan:not(.hand-over)")).toBeVisible();
    await hand.page.locator("#choose").selectOption({ index: 1 });
    await expect(hand.page.locator("#piece-head")).toBeVisible();
    found.push(...(await faults(hand.page)));
  }
  for (const path of ["/request", "/request/guests", "/request/ceremony", "/request/meal", "/request/music", "/request/displays", "/request/extras", "/request/layout", "/request/send"]) {
    await couple.go(path);
    found.push(...(await faults(couple.page)));
  }
  expect(found).toEqual([]);
});
