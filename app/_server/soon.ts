import type { Outcome } from "@/lib/service";

export type Soon<T> = { readonly kind: "here"; readonly value: T } | { readonly kind: "working" } | { readonly kind: "failed" };

/**
 * Something that takes the engine a while, waited for so long and no longer: the work goes on, is kept, and is there at the next
 * look. A page of questions never fails because its drawing did.
 */
export async function soon<T>(work: Promise<Outcome<T>>, ms: number): Promise<Soon<T>> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<Soon<T>>((resolve) => { timer = setTimeout(() => resolve({ kind: "working" }), ms); });
  const here = work.then((o): Soon<T> => (o.ok ? { kind: "here", value: o.value } : { kind: "failed" }), (): Soon<T> => ({ kind: "failed" }));
  const first = await Promise.race([here, late]);
  clearTimeout(timer);
  return first;
}

export const hereOf = <T>(s: Soon<T> | null): T | null => (s?.kind === "here" ? s.value : null);
