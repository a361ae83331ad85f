import { addBooking, type FormValues } from "@/lib/service";
import { keep } from "@/app/_server/kept";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

/** Where the desk holds several venues, a package's answer names its venue before a colon. */
function unfold(values: FormValues): FormValues {
  const [venue = "", pack] = textOf(values, "package").split(":");
  return { names: values.names, email: textOf(values, "email"), date: textOf(values, "date"), language: textOf(values, "language"), mail: textOf(values, "mail"), ...(pack === undefined ? { package: venue } : { venue, package: pack }) };
}

export async function POST(request: Request): Promise<Response> {
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const added = await addBooking(house, actor, { values: unfold(values) });
    if (added.ok) return see(`/desk/bookings/${added.value.reference}?done=added`);
    const errors = added.error.code === "invalid" ? added.error.errors : [{ field: "names", message: "The booking was not added. Try again." }];
    return see(`/desk/bookings/new?kept=${keep({ form: "new", owner: actor.person, values, errors })}`);
  });
}
