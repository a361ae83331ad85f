import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { planCss } from "../../../lib/drawing";

it("the page's rules for the inks of a plan are those that the painter counts on", () => {
  const css = readFileSync(new URL("../../../components/styles/inks.css", import.meta.url), "utf8");
  expect(css.replace(/\/\*.*?\*\/\n?/gs, "").trim()).toBe(planCss().trim());
});
