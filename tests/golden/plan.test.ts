import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { composePlan, toSvg } from "../../lib/drawing";
import { mill, millCeremony, millMeal } from "../unit/drawing/mill";

/** UPDATE_GOLDEN=1 writes the pictures anew: look at them before they are kept. */
const UPDATE = process.env["UPDATE_GOLDEN"] === "1";
const folder = fileURLToPath(new URL("plan/", import.meta.url));

const sheet = {
  width: 297, height: 210, legend: true, frame: true,
  titleBlock: { couple: "Ines Calloway and Theo Brandt", day: "Saturday 12 June 2027", package: "Hosted day", scene: "Meal", layoutTitle: "A, rounds about a spine", places: 92, revision: 3, fingerprint: "9f3c 71a0", sheet: "4 of 8" },
};
const PICTURES = {
  "mill-meal-a4.svg": () => toSvg(composePlan(mill, millMeal(), "meal", { sheet }), { theme: "print" }),
  "mill-ceremony-small.svg": () => toSvg(composePlan(mill, millCeremony(), "ceremony", { pixelWidth: 358 }), { theme: "light", pixelWidth: 358 }),
  "mill-meal-small.svg": () => toSvg(composePlan(mill, millMeal(), "meal", { pixelWidth: 358, rooms: ["grain-floor"] }), { theme: "css", pixelWidth: 358 }),
} as const;

describe("pictures that stay as they are", () => {
  it.each(Object.entries(PICTURES))("%s", (name, draw) => {
    const file = `${folder}${name}`;
    const svg = `${draw()}\n`;
    if (UPDATE) {
      mkdirSync(folder, { recursive: true });
      writeFileSync(file, svg);
    }
    expect(existsSync(file), `${name} is missing: UPDATE_GOLDEN=1 writes it`).toBe(true);
    expect(svg).toBe(readFileSync(file, "utf8"));
  });
});
