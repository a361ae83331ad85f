import type { Quote } from "@/lib/layout";
import { ENGLISH, type Say } from "@/lib/words/pages/say";
import { Scroll } from "../ui/scroll";
import { sayMoney, type Speech } from "../ui/say";

type FeesProps = { readonly quote: Quote; readonly locale: string; readonly tax: { readonly name: string; readonly included: boolean }; readonly say?: Say };

/** What is extra: what, how many, each, total; what the package holds stays as a line at nil. */
export function Fees({ quote, locale, tax, say = ENGLISH }: FeesProps) {
  const money: Pick<Speech, "locale" | "currency"> = { locale, currency: quote.currency };
  const price = (minor: number): string => sayMoney(minor, money);
  if (quote.lines.length === 0) return <p className="small sec mt-3">{say("Nothing in this layout is charged beyond your package.")}</p>;
  return (
    <Scroll label={say("Fee summary")}>
      <table>
        <caption className="hidden-words">{say("Fee summary")}</caption>
        <thead><tr><th scope="col">{say("What")}</th><th scope="col" className="figures">{say("How many")}</th><th scope="col" className="figures">{say("Each")}</th><th scope="col" className="figures">{say("Total")}</th></tr></thead>
        <tbody>
          {quote.lines.map((l, i) => (
            <tr key={`${l.charge}-${i}`}>
              <th scope="row">{l.text}{l.of && <span className="block font-normal text-note sec">{l.of}</span>}</th>
              <td className="figures">{l.count}</td>
              <td className="figures">{l.included || l.each === 0 ? say("included") : price(l.each)}</td>
              <td className="figures">{price(l.amount)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr className="sum"><th scope="row" colSpan={3}>{say("Extra to pay")}</th><td className="figures">{price(quote.total)}</td></tr>
          {quote.tax > 0 && (
            <tr className="sum-of"><th scope="row" colSpan={3}>{tax.included ? say("of which {tax}", { tax: tax.name }) : say("with {tax} of", { tax: tax.name })}</th><td className="figures">{price(quote.tax)}</td></tr>
          )}
        </tfoot>
      </table>
    </Scroll>
  );
}
