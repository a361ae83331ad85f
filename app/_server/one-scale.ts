import type { Layout } from "@/lib/layout";
import type { Venue } from "@/lib/venue";

/** The rooms that any of these layouts seats guests in at the meal: drawn with all of them, they stand side by side at one scale. */
export function mealRooms(layouts: readonly Layout[], { drapes }: Pick<Venue, "drapes">): readonly string[] | undefined {
  const meals = layouts.flatMap((l) => l.scenes.filter((s) => s.id === "meal"));
  const seated = new Set(meals.flatMap((s) => s.items.filter((i) => i.seats.length > 0).map((i) => i.room)));
  const lent = drapes.filter((d) => meals.some((s) => s.drapes.includes(d.id))).map((d) => d.from);
  return seated.size > 0 ? [...new Set([...seated, ...lent])] : undefined;
}
