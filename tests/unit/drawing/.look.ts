import { writeFileSync } from "node:fs";
import { composePlan, toSvg } from "../../../lib/drawing";
import { mill, millCeremony, millMeal } from "./mill";
const sheet = { width: 297, height: 210, legend: true, frame: true, titleBlock: { couple: "Ines Calloway and Theo Brandt", day: "Saturday 12 June 2027", package: "Hosted day", scene: "Meal", layoutTitle: "A, rounds about a spine", places: 92, revision: 3, fingerprint: "9f3c 71a0", sheet: "4 of 8" } };
const go = (name: string, f: () => ReturnType<typeof composePlan>, px?: number, theme: "light" | "dark" | "print" = "light") => {
  const t = performance.now(); const d = f(); const u = performance.now(); const s = toSvg(d, { theme, ...(px ? { pixelWidth: px } : {}) });
  console.log(name, d.perMetre.toFixed(2), `${(u - t).toFixed(0)} ms`, `${(performance.now() - u).toFixed(0)} ms`, s.length, d.width.toFixed(0), d.height.toFixed(0));
  writeFileSync(`/tmp/plan/${name}.svg`, s);
};
go("meal", () => composePlan(mill, millMeal(), "meal", { sheet }), 1400);
go("ceremony", () => composePlan(mill, millCeremony(), "ceremony", { sheet: { ...sheet, titleBlock: { ...sheet.titleBlock, scene: "Ceremony" } } }), 1400);
go("small", () => composePlan(mill, millMeal(), "meal", { pixelWidth: 358, rooms: ["grain-floor"] }), 358);
go("small2", () => composePlan(mill, millMeal(), "meal", { pixelWidth: 358 }), 358, "dark");
