import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { composePlan, toSvg } from "../../lib/drawing";
import type { Layout } from "../../lib/layout";
import { mill, millCeremony, millMeal } from "../unit/drawing/mill";

/** UPDATE_GOLDEN=1 writes the pictures anew: look at them before they are kept. */
const UPDATE = process.env["UPDATE_GOLDEN"] === "1";
const folder = fileURLToPath(new URL("plan/", import.meta.url));

const sheet = {
  width: 297, height: 210, legend: true, frame: true,
  titleBlock: { couple: "Ines Calloway and Theo Brandt", day: "Saturday 12 June 2027", package: "Hosted day", scene: "Meal", layoutTitle: "A, rounds about a spine", places: 92, revision: 3, fingerprint: "9f3c 71a0", sheet: "4 of 8" },
};
/** The next revision: table 7 moved, table 1 laid for one fewer, the seating plan gone, a high table more. */
function mealNow(): Layout {
  const was = millMeal();
  return {
    ...was, scenes: was.scenes.map((scene) => ({
      ...scene, items: scene.items.filter((i) => i.id !== "plan").map((i) => (
        i.id === "table-7" ? { ...i, at: [i.at[0] + 600, i.at[1] - 250], seats: i.seats.map((s) => ({ ...s, x: s.x + 600, y: s.y - 250 })) } as const
          : i.id === "table-1" ? { ...i, seats: i.seats.slice(1) } : i.id === "terrace-3" ? { ...i, id: "terrace-4", at: [14_250, 12_600] as const } : i)),
    })),
  };
}
const PICTURES = {
  "mill-was-now-a4.svg": () => toSvg(composePlan(mill, mealNow(), "meal", { sheet, was: millMeal() }), { theme: "print" }),
  "mill-was-now-small.svg": () => toSvg(composePlan(mill, mealNow(), "meal", { pixelWidth: 720, was: millMeal() }), { theme: "css", pixelWidth: 720 }),
  "mill-layers-small.svg": () => toSvg(composePlan(mill, millMeal(), "meal", { pixelWidth: 1100, ways: true, dimensions: true, layers: ["ways", "sight"] }), { theme: "dark", pixelWidth: 1100 }),
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
