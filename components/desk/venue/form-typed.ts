import type { Venue } from "@/lib/venue";
import type { Typed } from "@/lib/venue/edit";

/** Corners are drawn in steps of these, mm: 10 cm, or half a foot. */
export const STEPS: Readonly<Record<Venue["lengths"], number>> = { metric: 100, imperial: 152.4 };

/** What a form holds now, as the server would read it. */
export function typedIn(form: HTMLFormElement): Typed {
  const data = new FormData(form), names = [...new Set(data.keys())];
  return Object.fromEntries(names.map((name) => { const all = data.getAll(name).filter((v): v is string => typeof v === "string"); return [name, all.length > 1 ? all : all[0]]; }));
}

/** Types into a form, as if by hand: who follows the form is told. */
export function putTyped(id: string, values: Readonly<Record<string, string>>): void {
  const form = document.getElementById(id);
  if (!(form instanceof HTMLFormElement)) return;
  for (const [name, text] of Object.entries(values)) {
    const field = form.elements.namedItem(name);
    if (field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement || field instanceof HTMLSelectElement) field.value = text;
  }
  form.dispatchEvent(new Event("input", { bubbles: true }));
}
