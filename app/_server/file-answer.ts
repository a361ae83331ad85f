import type { Outcome } from "@/lib/service";

export const refuse = (status: number): Response => new Response(null, { status, headers: { "Cache-Control": "no-store" } });

export type Asked = { readonly reference: string; readonly number: number | undefined };

/** Which booking's paper, and which revision's, an address asks for; null where it names none. */
export function askedFor(request: Request): Asked | null {
  const query = new URL(request.url).searchParams;
  const reference = query.get("ref") ?? "", number = query.get("number");
  if (!reference || (number !== null && !/^\d{1,6}$/.test(number))) return null;
  return { reference, number: number === null ? undefined : Number(number) };
}

type Named = { readonly fileName: string };
type How<T> = { readonly type: string; readonly as: "inline" | "attachment"; readonly body: (made: T) => BodyInit };

/** A paper that was made as a file of its name, or the refusal: 409 where the booking has none yet, else 404. */
export function fileAnswer<T extends Named>(made: Outcome<T>, { type, as, body }: How<T>): Response {
  if (!made.ok) return refuse(made.error.code === "incomplete" || made.error.code === "wrong-state" ? 409 : 404);
  const { fileName } = made.value;
  return new Response(body(made.value), {
    headers: {
      "Content-Type": type, "Cache-Control": "no-store", "X-Content-Type-Options": "nosniff",
      "Content-Disposition": `${as}; filename="${fileName.replace(/[^\w.-]+/g, "-")}"; filename*=UTF-8''${encodeURIComponent(fileName)}`,
    },
  });
}

export const pdfAnswer = (made: Outcome<Named & { readonly bytes: Uint8Array }>): Response =>
  fileAnswer(made, { type: "application/pdf", as: "inline", body: ({ bytes }) => new Uint8Array(bytes) });
