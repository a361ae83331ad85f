import type { Quote } from "@/lib/layout";
import { Scroll } from "../ui/scroll";
import { sayMoney, type Speech } from "../ui/say";

type FeesProps = { readonly quote: Quote; readonly locale: string; readonly tax: { readonly name: string; readonly included: boolean } };

/** What is extra: what, how many, each, total; what the package holds stays as a line at nil. */
export function Fees({ quote, locale, tax }: FeesProps) {
  const money: Pick<Speech, "locale" | "currency"> = { locale, currency: quote.currency };
  const say = (minor: number): string => sayMoney(minor, money);
  if (quote.lines.length === 0) return <p className="small sec mt-3">Nothing in this layout is charged beyond your package.</p>;
  return (
    <Scroll label="Fee summary">
      <table>
        <caption className="hidden-words">Fee summary</caption>
        <thead><tr><th scope="col">What</th><th scope="col" className="figures">How many</th><th scope="col" className="figures">Each</th><th scope="col" className="figures">Total</th></tr></thead>
        <tbody>
          {quote.lines.map((l, i) => (
            <tr key={`${l.charge}-${i}`}>
              <th scope="row">{l.text}{l.of && <span className="block font-normal text-note sec">{l.of}</span>}</th>
              <td className="figures">{l.count}</td>
              <td className="figures">{l.included || l.each === 0 ? "included" : say(l.each)}</td>
              <td className="figures">{say(l.amount)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr className="sum"><th scope="row" colSpan={3}>Extra to pay</th><td className="figures">{say(quote.total)}</td></tr>
          {quote.tax > 0 && (
            <tr className="sum-of"><th scope="row" colSpan={3}>{tax.included ? `of which ${tax.name}` : `with ${tax.name} of`}</th><td className="figures">{say(quote.tax)}</td></tr>
          )}
        </tfoot>
      </table>
    </Scroll>
  );
}
