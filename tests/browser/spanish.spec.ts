import { expect, type Page } from "@playwright/test";
import { tidewheel } from "../../lib/demo";
import { CHANGE_PHRASES, changeVoice } from "../../lib/words/changes";
import { HAND_PHRASES, handVoice } from "../../lib/words/hand";
import { PHRASES, sayIn } from "../../lib/words/pages";
import { atTheDesk, base, invite, person, test, SLOW_MS, type Who } from "./world";

/** Words that are written alike in both languages, and names of standards and measures. */
const ALIKE = new Set(("no me son total error normal local general natural musical manual final central material personal real ideal plural hotel piano solo " +
  "bar dj band note notes extras plan pdf ibc ada table m mm ft in a e u t gbp eur usd am pm cm english español american open use marquetry cookie cookies").split(" "));

const NAMES = ["Marisol Vega", "Ander Etxeberria"];
/** The venue's own words, as its file holds them. */
const VENUES: ReadonlySet<string> = new Set([...JSON.stringify(tidewheel).matchAll(/\p{L}+/gu), ...NAMES.join(" ").matchAll(/\p{L}+/gu)].map((m) => m[0].toLowerCase()));

const wordsIn = (texts: readonly string[]): ReadonlySet<string> => new Set(texts.flatMap((text) => [...text.replace(/\{\w+\}/g, " ").matchAll(/\p{L}{3,}/gu)].map((m) => m[0].toLowerCase())));
/** The words of every British sentence that has a Spanish one, those of the Spanish ones left out. */
function britishWords(): Set<string> {
  const es = [sayIn("es"), handVoice("es"), changeVoice("es")], spanish = wordsIn([...PHRASES, ...HAND_PHRASES, ...CHANGE_PHRASES].flatMap((phrase) => es.map((say) => say.given(phrase)).filter((said) => said !== phrase)));
  return new Set([...wordsIn([...PHRASES, ...HAND_PHRASES, ...CHANGE_PHRASES])].filter((word) => !spanish.has(word)));
}

/** Every word that a page shows or says: text, labels, title. */
async function wordsOf(page: Page): Promise<ReadonlySet<string>> {
  const text = await page.evaluate(() => {
    const said: string[] = [document.title];
    const look = document.createTreeWalker(document.body, NodeFilter.SHOW_ALL);
    for (let node = look.nextNode(); node; node = look.nextNode()) {
      if (node instanceof Text && !node.parentElement?.closest("script, style, noscript, [lang=en], [lang=en-GB], [lang=en-US], .their-words")) said.push(node.data);
      if (node instanceof Element && !node.closest("[lang=en]")) for (const name of ["aria-label", "title", "placeholder", "alt"]) said.push(node.getAttribute(name) ?? "");
    }
    return said.join(" ");
  });
  return new Set([...text.matchAll(/\p{L}{3,}/gu)].map((m) => m[0].toLowerCase()));
}

const STEPS = ["/request", "/request/guests", "/request/ceremony", "/request/meal", "/request/music", "/request/displays", "/request/extras"];

test("the couple's pages read in Spanish from the mail to the agreement, with no English left but the venue's own words", async ({ browser }) => {
  const how = { width: 1280, scripts: true };
  const desk = await atTheDesk(browser, how);
  const { reference, link } = await invite(desk, { names: NAMES.join("\n"), email: "marisol@example.org", date: "2029-06-23" });
  const us = await person(browser, how);
  const { page, go, press } = us;

  const spanish = new Map<string, ReadonlySet<string>>(), english = britishWords();
  /** Looks at a page in Spanish; where more is told on it than our catalogues hold, in English first, whose words are English. */
  const look = async (who: Who, path: string): Promise<void> => { await who.go(path); spanish.set(path.startsWith("/open/") ? "/open/key" : path, await wordsOf(who.page)); await expect(who.page.locator("html")).toHaveAttribute("lang", /^es/); };
  const both = async (who: Who, path: string): Promise<void> => {
    for (const language of ["en-GB", "es"]) {
      await who.page.context().addCookies([{ name: "words", value: language, url: base() }]);
      await who.go(path);
      if (path === "/request/layout") await expect(who.page.locator(".layouts .drawing svg").first()).toBeVisible({ timeout: SLOW_MS });
      if (path.startsWith("/request/layout/")) await expect(who.page.locator(".plan-tools").first()).toBeVisible({ timeout: SLOW_MS });
      const words = await wordsOf(who.page);
      if (language === "es") {
        spanish.set(path, words);
        await expect(who.page.locator("html")).toHaveAttribute("lang", /^es/);
      } else for (const word of words) english.add(word);
    }
  };

  // Chosen by a form, not by an address: the words page is itself in both.
  await go("/words?from=/open");
  await page.getByLabel("Español").check();
  await press("Use these");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Abran el enlace de su correo");
  for (const path of ["/", "/open", "/open?why=mailed", "/open?why=ended", "/words", "/no-such-page", "/open/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA", link]) await look(us, path);
  await go(link);
  await press("Abrir nuestro día");
  for (const path of STEPS) await look(us, path);

  await go("/request/guests");
  await page.getByLabel("Adultos").fill("muchos");
  await page.getByRole("button", { name: "Guardar y seguir" }).click();
  await expect(page.locator(".errors")).toContainText("Adultos: escriban un número entero de 1 a");
  spanish.set("amiss", await wordsOf(page));
  await page.getByLabel("Adultos").fill("58");
  await page.getByLabel("Niños").fill("6");
  // What the answers do is followed in the browser, in Spanish as well.
  await expect(page.locator(".effect .you")).toHaveText("son 64", { timeout: SLOW_MS });
  await expect(page.locator(".effect figcaption")).toContainText("aún sin guardar", { timeout: SLOW_MS });
  spanish.set("followed", await wordsOf(page));
  await press("Guardar y seguir");
  await page.getByLabel("Sí, aquí").check();
  await press("Guardar y seguir");
  await page.getByLabel("Mesas redondas y largas juntas").check();
  await page.getByLabel("Bufé").check();
  await press("Guardar y seguir");
  await page.getByLabel("Un DJ").check();
  await page.getByLabel("Algunos").check();
  await press("Guardar y seguir");
  for (const name of ["Mesa de bienvenida", "Tarjetas y regalos", "Tarta"]) await page.getByLabel(name, { exact: true }).check();
  await press("Guardar y seguir");
  await page.getByLabel("Fotomatón", { exact: true }).check();
  await press("Guardar y seguir");
  for (const path of [...STEPS, "/request/layout", "/request/layout/a"]) await both(us, path);
  // As it measures: 1.50 m between tables are 4 ft 11 in.
  await page.context().addCookies([{ name: "lengths", value: "imperial", url: base() }]);
  await go("/request/layout/a");
  await expect(page.locator("main table").first()).toContainText("′");
  await page.context().addCookies([{ name: "lengths", value: "metric", url: base() }]);
  await go("/request/layout");
  await page.getByText("Elegir A").click();
  await press("Guardar y seguir");
  // Under the hand: what is amiss, what was done, and what then differs.
  await go("/request/layout/adjust");
  await expect(page.locator(".hand-stage svg.plan").first()).toBeVisible({ timeout: SLOW_MS });
  await page.locator("#choose").selectOption({ index: 2 });
  await page.locator("#far1").fill("una zancada");
  await page.getByRole("button", { name: "Ponerla ahí" }).click();
  await expect(page.locator("#far1-error")).toContainText("Una distancia, por ejemplo 1,20 m.");
  spanish.set("amiss by hand", await wordsOf(page));
  await page.locator("#far1").fill("1,35");
  await page.getByRole("button", { name: "Ponerla ahí" }).click();
  await expect(page.locator(".hand-last")).toContainText("1,35\u00a0m de la pared");
  await expect(page.locator("ol.changes li")).toContainText(/ en el plano\.$/);
  spanish.set("moved by hand", await wordsOf(page));
  await page.getByRole("button", { name: /^Deshacer/ }).click();
  await expect(page.locator(".hand-last")).toContainText("Aún no se ha cambiado nada.");
  await both(us, "/request/send");
  await look(us, "/request/share");
  await go("/request/share");
  await page.getByLabel("¿Para quién es?").fill("Ander");
  await press("Hacer el enlace");
  spanish.set("link made", await wordsOf(page));
  const shared = await page.getByLabel("Dirección del enlace").inputValue();
  const aunt = await person(browser, how);
  await both(aunt, shared);
  await aunt.press("Ver su día");
  await both(aunt, "/look");

  await go("/request/send");
  await press(/^Enviar a/);
  for (const path of ["/request", "/request/sent", "/request/revision/1"]) await both(us, path);
  await desk.go(`/desk/bookings/${reference}`);
  await desk.press(/^Agree revision 1/);
  for (const path of ["/request", "/request/sent"]) await both(us, path);

  const left = [...spanish].flatMap(([path, words]) => [...words].filter((word) => english.has(word) && !VENUES.has(word) && !ALIKE.has(word)).map((word) => `${path.replace(base(), "")}: ${word}`));
  expect(left).toEqual([]);
});
