import type { FormValues } from "@/lib/brief/draft";

/** A form's fields as the server sees them: text by name, a list where several boxes share one. */
export function valuesIn(form: HTMLFormElement): FormValues {
  const data = new FormData(form);
  return Object.fromEntries([...new Set(data.keys())].map((name) => {
    const texts = data.getAll(name).filter((one): one is string => typeof one === "string");
    return [name, texts.length > 1 ? texts : texts[0]];
  }));
}
