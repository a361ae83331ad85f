import { expect } from "@playwright/test";
import { atTheDesk, invite, person, test, toLayouts } from "./world";

/** 1280 px at 400 % is 320 px (WCAG 2.2, 1.4.10). */
for (const scripts of [true, false]) {
  test(`at 320 px nothing but a plan or a table scrolls sideways, with scripts ${scripts ? "on" : "off"}`, async ({ browser }) => {
    const how = { width: 320, scripts };
    const desk = await atTheDesk(browser, how);
    const { link } = await invite(desk, { names: "Bartholomew Featherstonehaugh-Cholmondeley\nAlexandrina Papadimitriou", email: `narrow.${String(scripts)}@example.org`, date: "2029-08-25" });
    const us = await person(browser, how);
    const { page, go, press } = us;
    const wide: string[] = [];
    const look = async (path: string): Promise<void> => {
      await go(path);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      if (over > 0) wide.push(`${path}: ${over} px`);
    };
    for (const path of ["/", "/open", "/words", "/no-such-page", link]) await look(path);
    await go(link);
    await press("Open our day");
    await toLayouts(us, { adults: 64, children: 6 });
    for (const language of ["en-GB", "es"]) {
      await page.context().addCookies([{ name: "words", value: language, url: page.url() }]);
      for (const path of ["/request", "/request/guests", "/request/ceremony", "/request/meal", "/request/music", "/request/displays", "/request/extras", "/request/layout", "/request/layout/a", "/request/share"]) await look(path);
    }
    await page.context().addCookies([{ name: "words", value: "en-GB", url: page.url() }]);
    await go("/request/layout");
    await page.getByText("Choose A").click();
    await press("Save and continue");
    await look("/request/send");
    expect(wide).toEqual([]);
  });
}
