import type { FormValues } from "@/lib/service";

/** A form's fields by name: text, or a list where several boxes share the name. Files are left out. */
export function valuesOf(form: FormData): FormValues {
  const names = [...new Set(form.keys())];
  return Object.fromEntries(names.map((name) => {
    const texts = form.getAll(name).filter((v): v is string => typeof v === "string");
    return [name, texts.length > 1 ? texts : texts[0]];
  }));
}

export const textOf = (values: FormValues, name: string): string => {
  const v = values[name];
  return typeof v === "string" ? v : (v?.[0] ?? "");
};
export const wholeOf = (values: FormValues, name: string): number => {
  const text = textOf(values, name);
  return /^\d{1,9}$/.test(text) ? Number(text) : -1;
};

/** Every POST ends in a redirect: Back and reload never send it twice. The address is ours, so it is given without an origin. */
export const see = (path: string): Response => new Response(null, { status: 303, headers: { Location: path, "Cache-Control": "no-store" } });

/** The same answer for a form that a script sends: it cannot see where a redirect leads, so it is told, and goes there itself. */
export function told(answer: Response): Response {
  const to = answer.headers.get("Location");
  if (answer.status !== 303 || to === null) return answer;
  const headers = new Headers(answer.headers);
  headers.delete("Location");
  headers.set("Content-Type", "application/json");
  return new Response(JSON.stringify({ to }), { status: 200, headers });
}
