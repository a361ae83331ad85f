import type { Metadata } from "next";
import { listVenues } from "@/lib/service";
import { asked, desk, type Search } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { heldFor } from "@/app/_server/kept";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { Checked } from "@/components/form/page/checked";
import { PageForm } from "@/components/form/page/page-form";
import { oneOf } from "@/components/form/values";
import { Choices } from "@/components/ui/choices";
import { AreaField, SelectField, TextField } from "@/components/ui/field";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { actor } = await desk();
  const kept = heldFor(await asked(searchParams, "kept"), "new", actor.person);
  return { title: `${kept && kept.errors.length > 0 ? "Error: " : ""}Add a booking – ${(await face()).name}` };
}

const READ = [{ value: "", text: "As the venue does" }, { value: "en-GB", text: "British English" }, { value: "en-US", text: "American English" }, { value: "es", text: "Spanish" }];

export default async function NewBookingPage({ searchParams }: Props) {
  const { house, actor } = await desk();
  const kept = heldFor(await asked(searchParams, "kept"), "new", actor.person);
  const values = kept?.values ?? {};
  const errors = kept?.errors ?? [];
  const seen = await listVenues(house, actor, {});
  const venues = seen.ok ? seen.value : [];
  const many = venues.length > 1;
  const packages = venues.flatMap((v) => v.venue.packages.map((p) => ({
    value: many ? `${v.id}:${p.id}` : p.id, name: many ? `${v.venue.name}: ${p.name}` : p.name,
    why: `${p.coordinator ? "With a coordinator" : "They decide for themselves"}; the layout is due ${p.dueDays} days before the day.`,
  })));
  return (
    <DeskFrame person={actor.person} here="new" back={{ href: "/desk", text: "Queue" }}>
      <Checked errors={errors}>
      <h1 className="mt-2">Add a booking</h1>
      <p className="lead measure mt-4">The couple get a mail with a link of their own, and the day by which you need their layout. Have you many? <a href="/desk/bookings/paste">Paste a list</a>.</p>
      <PageForm form="booking" action="/desk/bookings/new/add" className="max-w-[34rem] mt-8">
        <AreaField name="names" label="Their names" hint="One on a line, in any script, as they should stand on the proposal." value={oneOf(values, "names")} errors={errors} rows={2} />
        <TextField name="email" type="email" inputMode="email" label="Mail address" hint="The link goes here." value={oneOf(values, "email")} errors={errors} maxLength={254} />
        <TextField name="date" label="The day" hint="As year, month, day: 2027-06-12." size="middling" value={oneOf(values, "date")} errors={errors} />
        {many && <input type="hidden" name="several" value="yes" />}
        <div className="mt-8">
          {packages.length > 8
            ? <SelectField name="package" label="Package" errors={errors} value={oneOf(values, "package")} options={packages.map((p) => ({ value: p.value, text: p.name }))} />
            : <Choices name="package" legend="Package" errors={errors} chosen={[oneOf(values, "package")]} options={packages} />}
        </div>
        <SelectField name="language" label="They read" hint="Their mails, pages and proposal; they may choose otherwise." errors={errors} value={oneOf(values, "language")} options={READ} />
        <div className="mt-8">
          <Choices name="mail" legend="Mail the link" errors={errors} chosen={[oneOf(values, "mail") || "yes"]} two
            options={[{ value: "yes", name: "Now" }, { value: "no", name: "Later, from the booking" }]} />
        </div>
        <div className="go-row"><button className="btn btn-go" type="submit">Add the booking</button></div>
      </PageForm>
      </Checked>
    </DeskFrame>
  );
}
