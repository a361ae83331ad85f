import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { listPeople, type DeskRole, type PersonView } from "@/lib/service";
import { asked, desk, type Search } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { heldFor } from "@/app/_server/kept";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { Checked } from "@/components/form/page/checked";
import { oneOf } from "@/components/form/values";
import { Choices } from "@/components/ui/choices";
import { TextField } from "@/components/ui/field";
import { Scroll } from "@/components/ui/scroll";
import { sayMoment } from "@/components/ui/say";
import { hallSpeech } from "@/app/_server/speech";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { actor } = await desk();
  const kept = heldFor(await asked(searchParams, "kept"), "people", actor.person);
  return { title: `${kept ? "Error: " : ""}People – ${(await face()).name}` };
}

const ROLES: readonly { readonly value: DeskRole; readonly name: string; readonly why: string }[] = [
  { value: "desk", name: "Works on bookings", why: "Adds, reviews, returns and agrees them, and mails couples." },
  { value: "desk-look", name: "Looks only", why: "Sees bookings, plans and papers; changes nothing and gets no notices." },
  { value: "manager", name: "Manages the house", why: "Besides: changes the venue’s facts and prices, and lets people in." },
];
const DONE: Readonly<Record<string, string>> = { invited: "They are let in, and have a mail that says how to sign in.", gone: "They are let go. What they had open is closed." };

/** Who may sign in to the desk, and as what. */
export default async function PeoplePage({ searchParams }: Props) {
  const { house, actor } = await desk();
  const seen = await listPeople(house, actor);
  if (!seen.ok) notFound();
  const kept = heldFor(await asked(searchParams, "kept"), "people", actor.person);
  const errors = kept?.errors ?? [], done = DONE[(await asked(searchParams, "done")) ?? ""], speech = await hallSpeech(house, actor);
  const row = (p: PersonView) => (
    <tr key={p.email}>
      <th scope="row" className="break-all">{p.email}</th>
      <td>{ROLES.find((r) => r.value === p.role)?.name}</td>
      <td className="small sec">{p.fixed ? "Named in the settings" : `Let in ${p.invitedAt ? sayMoment(p.invitedAt, speech) : ""} by ${p.invitedBy ?? ""}`}</td>
      <td>{!p.fixed && <form method="post" action="/desk/people/revoke"><input type="hidden" name="email" value={p.email} /><button className="btn-quiet" type="submit">Let go<span className="hidden-words"> {p.email}</span></button></form>}</td>
    </tr>
  );
  return (
    <DeskFrame person={actor.person} here="people">
      <Checked errors={errors}>
        <h1 className="mt-4">People</h1>
        {done && <p className="lead mt-3" role="status">{done}</p>}
        <Scroll label="People of the desk"><table className="stacked mt-5"><thead><tr><th scope="col">Mail address</th><th scope="col">May</th><th scope="col">Since</th><th scope="col"><span className="hidden-words">Deeds</span></th></tr></thead><tbody>{seen.value.map(row)}</tbody></table></Scroll>
        <section className="section max-w-[44rem]"><h2>Let someone in</h2>
          <p className="small sec mt-3 measure">They sign in by a link that is mailed to this address each time; there is no password. For someone who is in already this changes what they may do.</p>
          <form method="post" action="/desk/people/invite" noValidate>
            <TextField name="email" type="email" inputMode="email" label="Mail address" value={oneOf(kept?.values ?? {}, "email")} errors={errors} maxLength={254} />
            <div className="mt-8"><Choices name="role" legend="What they may do" options={ROLES} chosen={[oneOf(kept?.values ?? {}, "role") || "desk"]} errors={errors} /></div>
            <div className="go-row"><button className="btn btn-go" type="submit">Let them in</button></div>
          </form>
        </section>
      </Checked>
    </DeskFrame>
  );
}
