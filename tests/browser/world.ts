import { expect, test as plain, type Browser, type BrowserContext, type Page } from "@playwright/test";

const open: BrowserContext[] = [];
/** A test whose people leave when it ends: pages left open would go on working, and slow down what comes after. */
export const test = plain.extend<{ readonly leaving: undefined }>({
  leaving: [async ({ browserName: _ }, use) => { await use(undefined); for (const one of open.splice(0)) await one.close(); }, { auto: true }],
});

const need = (name: string): string => {
  const value = process.env[name];
  if (!value) throw new Error(`${name} is not set: run the tests by their configuration`);
  return value;
};
/** How long a machine under load may take for a layout, an engine in the page or a print, ms. */
export const SLOW_MS = 400_000;
export const base = (): string => need("MARQUETRY_TEST_BASE");

export type Who = {
  readonly page: Page;
  readonly go: (path: string) => Promise<void>;
  /** Presses a button whose form leads to another page, and waits for that page. */
  readonly press: (name: string | RegExp) => Promise<void>;
  /** Presses a button whose form is amiss: with scripts the page stays as it is, without it comes back. The caller waits for what it says. */
  readonly tap: (name: string | RegExp) => Promise<void>;
  /** Goes back by the browser's own button to a page that is fetched again, and waits for that page. */
  readonly back: () => Promise<void>;
};
export type How = { readonly width: number; readonly scripts: boolean; readonly dark?: boolean };

/** A browser of its own: its cookies are nobody else's. */
export async function person(browser: Browser, { width, scripts, dark = false }: How): Promise<Who> {
  const context = await browser.newContext({ viewport: { width, height: 900 }, javaScriptEnabled: scripts, colorScheme: dark ? "dark" : "light" });
  open.push(context);
  const page = await context.newPage();
  const next = async (deed: Promise<unknown>): Promise<void> => { await Promise.all([page.waitForEvent("domcontentloaded", { timeout: SLOW_MS }), deed]); };
  return {
    page,
    go: async (path) => { await page.goto(path.startsWith("http") ? path : base() + path); },
    // Sent by the browser or by a script, a form's answer is a new page: what comes next is done on that one, however slow the machine.
    press: (name) => next(page.getByRole("button", { name }).first().click()),
    tap: async (name) => { await page.getByRole("button", { name }).first().click(); },
    // A page that is just being woken writes its own address anew, which the driver takes for the way back being done.
    back: () => next(page.goBack()),
  };
}

export async function atTheDesk(browser: Browser, how: How): Promise<Who> {
  const who = await person(browser, how);
  await who.go(need("MARQUETRY_TEST_DESK"));
  await who.press("Open the desk");
  await who.page.waitForURL("**/desk");
  return who;
}

/** Where a link on the page leads. */
export const hrefOf = async (page: Page, name: string): Promise<string> => new URL((await page.getByRole("link", { name }).getAttribute("href")) ?? "", page.url()).href;

export type NewBooking = { readonly names: string; readonly email: string; readonly date: string };

/** Adds a booking at the desk and gives its reference and the link that was mailed, read from the demo mailbox. */
export async function invite(desk: Who, { names, email, date }: NewBooking): Promise<{ readonly reference: string; readonly link: string }> {
  await desk.go("/desk/bookings/new");
  await desk.page.getByLabel("Their names").fill(names);
  await desk.page.getByLabel("Mail address").fill(email);
  await desk.page.getByLabel("The day").fill(date);
  await desk.page.getByLabel(/Hosted day/).first().check();
  await desk.press("Add the booking");
  await desk.page.waitForURL(/\/desk\/bookings\/(?!new)[^/]+$/);
  const reference = new URL(desk.page.url()).pathname.split("/").at(-1) ?? "";
  await desk.go("/desk/mailbox");
  await desk.page.getByRole("row").filter({ hasText: email }).getByRole("link").first().click();
  const link = await desk.page.locator('.mail-text a[href*="/open/"]').first().getAttribute("href");
  return { reference, link: link ?? "" };
}

/** Answers as far as the layouts, which a busy machine may still be working out: the page shows them by itself once they are there. */
export async function toLayouts({ page, go, press }: Who, { adults, children }: { readonly adults: number; readonly children: number }): Promise<void> {
  await go("/request/guests");
  await page.getByLabel("Adults").fill(String(adults));
  await page.getByLabel("Children").fill(String(children));
  await press("Save and continue");
  await page.waitForURL("**/request/ceremony");
  await go("/request/layout");
  await expect(page.locator(".layouts .drawing svg").first()).toBeVisible({ timeout: SLOW_MS });
}
