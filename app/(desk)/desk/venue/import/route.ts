import { LIMITS } from "@/lib/base/schema";
import { importVenue, type FieldError } from "@/lib/service";
import { keep } from "@/app/_server/kept";
import { see } from "@/app/_server/form";
import { post } from "@/app/_server/post";

export async function POST(request: Request): Promise<Response> {
  return post(request, "desk", async ({ house, actor, form }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const amiss = (errors: readonly FieldError[]): Response => see(`/desk/venue?kept=${keep({ form: "venue", owner: actor.person, values: {}, errors })}`);
    const file = form.get("file");
    if (!(file instanceof File) || file.size === 0) return amiss([{ field: "file", message: "Venue file: choose a file first." }]);
    if (file.size > LIMITS.fileBytes) return amiss([{ field: "file", message: `Venue file: it has ${(file.size / 1048576).toFixed(1)} MB; 5 MB at the most can be read.` }]);
    const read = await importVenue(house, actor, { json: await file.text() });
    if (read.ok) return see(`/desk/venue?done=${read.value.version}`);
    return amiss(read.error.code === "invalid" ? read.error.errors.map((e) => ({ field: "file", message: e.field ? `${e.field}: ${e.message}` : e.message })) : [{ field: "file", message: "Venue file: it was not read in." }]);
  });
}
