import { expect } from "@playwright/test";
import { toSvg, type Drawing } from "../../lib/drawing";
import { atTheDesk, test } from "./world";

/** Runs in the page: where two drawings differ in elements, attributes or words. */
function differences({ text, at }: { readonly text: string; readonly at: string }): readonly string[] {
  const found: string[] = [];
  const attributes = (one: Element): string =>
    [...one.attributes].filter((a) => !a.name.startsWith("xmlns")).map((a) => `${a.name}=${a.value}`).sort().join(" ");
  const compare = (a: Element, b: Element, path: string): void => {
    if (a.tagName !== b.tagName || attributes(a) !== attributes(b)) found.push(`${path}: ${a.tagName} ${attributes(a)} | ${b.tagName} ${attributes(b)}`);
    if (a.children.length !== b.children.length) { found.push(`${path}: ${a.children.length} and ${b.children.length} within`); return; }
    if (a.children.length === 0 && a.textContent !== b.textContent) found.push(`${path}: "${a.textContent}" | "${b.textContent}"`);
    [...a.children].forEach((one, i) => { const other = b.children[i]; if (other) compare(one, other, `${path}/${one.tagName}[${i}]`); });
  };
  const painted = document.querySelector(at);
  if (!painted) return ["nothing is painted"];
  compare(new DOMParser().parseFromString(text, "image/svg+xml").documentElement, painted, "svg");
  return found.slice(0, 10);
}

for (const width of [390, 1280]) {
  test(`the page's painter makes what the string painter writes, at ${width} px`, async ({ browser }) => {
    const { page, go } = await atTheDesk(browser, { width, scripts: true });
    const row = page.locator("tr", { hasText: "Sent" }).locator(".who a").first();
    const booking = (await row.getAttribute("href")) ?? "";
    for (const part of ["ceremony", "meal", "dancing"]) {
      const [answer] = await Promise.all([page.waitForResponse(/\/api\/plan\.json/), go(`${booking}?part=${part}`)]);
      const said: { readonly drawing: Drawing; readonly idPrefix: string } = await answer.json();
      const svg = page.locator(".stage svg");
      await expect(svg).toBeVisible();
      const pixelWidth = Number(await svg.getAttribute("width"));
      const text = toSvg(said.drawing, { theme: "css", pixelWidth, idPrefix: said.idPrefix, reads: "objects" });
      // What the stage adds to show the whole is the same figure written another way.
      await svg.evaluate((one) => { one.setAttribute("viewBox", (one.getAttribute("viewBox") ?? "").split(" ").map((n) => String(Math.round(Number(n) * 100) / 100)).join(" ")); });
      expect(await page.evaluate(differences, { text, at: ".stage svg" })).toEqual([]);
      expect(await svg.locator('[role="graphics-symbol"]').count()).toBeGreaterThan(0);
    }
  });
}

test("a plan is enlarged, read piece by piece and shown with its ways out, by keyboard and by tap", async ({ browser }) => {
  const { page, go } = await atTheDesk(browser, { width: 1280, scripts: true });
  const booking = (await page.locator("tr", { hasText: "Sent" }).locator(".who a").first().getAttribute("href")) ?? "";
  await go(`${booking}?part=meal`);
  const svg = page.locator(".stage svg");
  await expect(svg).toBeVisible();
  const whole = await svg.getAttribute("viewBox");
  await page.getByRole("button", { name: "Larger" }).click();
  await expect(svg).not.toHaveAttribute("viewBox", whole ?? "");
  const near = await svg.getAttribute("viewBox");
  await page.locator(".stage").focus();
  await page.keyboard.press("ArrowRight");
  await expect(svg).not.toHaveAttribute("viewBox", near ?? "");
  await page.getByRole("button", { name: "Whole" }).click();
  await expect(svg).toHaveAttribute("viewBox", whole ?? "");

  const piece = page.locator('.stage [role="graphics-symbol"]').filter({ has: page.locator("path, circle") }).first();
  const label = (await piece.getAttribute("aria-label")) ?? "";
  await page.getByLabel("Read a piece").selectOption({ label });
  await expect(page.locator(".plan-said")).toHaveText(label);
  await expect(page.locator(".stage-mark")).toHaveCount(1);
  await Promise.all([page.waitForResponse(/\/api\/plan\.json.*ways/), page.getByLabel("Ways out").check()]);
  await expect(page.locator(".stage text").filter({ hasText: "Way out" }).first()).toBeAttached();
});
