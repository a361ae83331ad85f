import type { Metadata } from "next";
import { asked, type Search } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import type { FieldError } from "@/components/ui/error-of";
import { ErrorSummary } from "@/components/ui/errors";
import { Frame } from "@/components/ui/frame";
import { TextField } from "@/components/ui/field";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const why = await asked(searchParams, "why"), wrong = why === "email";
  return { title: `${wrong || why === "code" ? "Error: " : ""}Sign in to the desk – ${(await face()).name}` };
}

/** The desk is opened by a mailed link, as the couple's pages are: there is no password to lose. */
export default async function DeskOpenPage({ searchParams }: Props) {
  const shown = await face();
  const why = await asked(searchParams, "why");
  const coded = why === "mailed" || why === "code";
  const errors: readonly FieldError[] = why === "code" ? [{ field: "code", message: "Code: this one is not right, has been used, or is older than ten minutes, or was asked for in another browser. Ask for a fresh mail." }] : why === "email" ? [{ field: "email", message: "Mail address: type it whole, such as name@venue.example." }] : [];
  return (
    <Frame house={shown}>
      <ErrorSummary errors={errors} />
      <h1 className="mt-4">Sign in to the desk</h1>
      {why === "mailed" && <p className="lead measure mt-4" role="status">If that address belongs to the desk, a link and a code are on their way. Either opens once, within ten minutes.</p>}
      {why === "link" && <p className="lead measure mt-4" role="status">That link has run out or has been used. Ask for a fresh one.</p>}
      {why === "elsewhere" && <p className="lead measure mt-4" role="status">That link opens in the browser where it was asked for. Open it there, type its code there, or ask for a mail here.</p>}
      {coded && (
        <form method="post" action="/desk/open/code" noValidate className="max-w-[34rem]">
          <TextField name="person" type="email" inputMode="email" autoComplete="email" label="Your mail address" errors={errors} maxLength={254} />
          <TextField name="code" label="The code in the mail" hint="Eight letters and digits. The link in the mail does the same." size="middling" autoComplete="one-time-code" errors={errors} maxLength={40} />
          <div className="go-row"><button className="btn btn-go" type="submit">Sign in</button></div>
        </form>
      )}
      {coded && <h2 className="mt-10">Or have another mail</h2>}
      <form method="post" action="/desk/open/ask" noValidate className="max-w-[34rem]">
        <TextField name="email" type="email" inputMode="email" autoComplete="email" label="Your mail address" hint="We mail a link that signs you in." errors={errors} />
        <div className="go-row"><button className={coded ? "btn" : "btn btn-go"} type="submit">Mail me a link</button></div>
      </form>
      {shown.demo && <p className="small sec measure mt-6">This is a demonstration: the command that started it prints the address that opens the desk.</p>}
    </Frame>
  );
}
