import type { Layout } from "@/lib/layout";
import type { Say } from "@/lib/words/pages/say";

/** What a layout gives up, as it is read in one breath: the pieces that are carried out are named in one sentence. Null where it gives up nothing. */
export function givesUpWords(layout: Pick<Layout, "givesUp" | "told">, say: Say): string | null {
  const lines = layout.givesUp ?? [], told = layout.told?.givesUp;
  if (lines.length === 0) return null;
  const out = lines.map((_, i) => (told?.length === lines.length && told[i]?.code === "carried-out" ? told[i]?.data : undefined));
  const pieces = out.flatMap((data) => (data ? [Number(data.n) > 1 ? `${String(data.n)} × ${String(data.name)}` : String(data.name)] : []));
  if (pieces.length < 2) return lines.join(" ");
  const first = out.findIndex((data) => data !== undefined);
  return lines.flatMap((line, i) => (i === first ? [say("Carried out: {pieces}.", { pieces: pieces.join(", ") })] : out[i] ? [] : [line])).join(" ");
}
