import type { Quote } from "../layout";
import { formatMoney } from "../measure";
import type { Venue } from "../venue";
import type { PaperVoice } from "../words/papers";
import { paragraph, type Setting } from "./blocks";
import { element, type Content, type Element } from "./document";
import { table, type RowSpec } from "./table";
import { STYLES } from "./type";

type Told = { readonly quote: Quote; readonly venue: Venue; readonly say: PaperVoice };

/** Air at either side of a figure, mm. */
const AIR = 2.1;

/** Basis points as a rate: 2000 is "20 %", 825 is "8.25 %". */
function rate(basisPoints: number, locale: string): string {
  return `${new Intl.NumberFormat(locale, { maximumFractionDigits: 2 }).format(basisPoints / 100)} %`;
}

const number = (n: number, locale: string): string => new Intl.NumberFormat(locale, { maximumFractionDigits: 2 }).format(n);

export function feeRows({ quote, venue, say }: Told): readonly RowSpec[] {
  const money = (minor: number): string => formatMoney(minor, quote.currency, venue.locale);
  const blank = { text: "" };
  const lines = quote.lines.map((line): RowSpec => {
    const name = venue.charges.find((c) => c.id === line.charge)?.name ?? line.text;
    const under = [line.text, line.of].filter((t): t is string => t !== undefined && t !== "" && t !== name).join(", ");
    return {
      cells: [
        { text: name, style: STYLES.strong, ...(under === "" ? {} : { under }) }, { text: number(line.count, venue.locale) },
        line.included ? { text: say("included"), style: { ...STYLES.body, ink: "ink-2" } } : { text: money(line.each) }, { text: money(line.amount) },
      ],
    };
  });
  const { tax } = venue;
  const total: RowSpec = { sum: true, cells: [{ text: say("Extra to pay"), style: STYLES.total }, blank, blank, { text: money(quote.total), style: STYLES.total }] };
  if (quote.tax === 0) return [...lines, total];
  const name = say("{tax} at {rate}", { tax: tax.name, rate: rate(tax.basisPoints, venue.locale) });
  const quiet = { ...STYLES.body, ink: "ink-2" as const };
  if (tax.included) {
    return [...lines, total, { close: true, cells: [{ text: say("of which {tax}", { tax: name }), style: quiet }, blank, blank, { text: money(quote.tax), style: quiet }] }];
  }
  return [
    ...lines,
    { sum: true, cells: [{ text: say("Before tax") }, blank, blank, { text: money(quote.net) }] },
    { close: true, cells: [{ text: name }, blank, blank, { text: money(quote.tax) }] },
    total,
  ];
}

/** The fee summary: each line what, how many, each, total; what the package includes at nil. */
export function feeSection(told: Told, to: Setting & { readonly artifacts: Content[] }): readonly Element[] {
  const { quote, venue, say } = told;
  if (quote.lines.length === 0) {
    return [paragraph(say("Nothing beyond the package is charged: {money} extra to pay.", { money: formatMoney(0, quote.currency, venue.locale) }), STYLES.body, to)];
  }
  const rows = feeRows(told);
  /** At least as wide as its figures are: money is never broken. */
  const wide = (i: number, least: number): number => Math.max(least, ...rows.map(({ cells }) => {
    const { text = "", style = STYLES.body } = cells[i] ?? {};
    return to.measure(text, style.font, style.size) + 2 * AIR;
  }));
  const columns = [{ title: say("What") }, { title: say("How many"), width: wide(1, 22), align: "end" }, { title: say("Each"), width: wide(2, 27), align: "end" }, { title: say("Total"), width: wide(3, 29), align: "end" }] as const;
  const fees = table({ columns, rows }, to);
  to.flow.gap(4);
  const note = paragraph(say("The package itself was agreed with your booking and is not repeated here."), STYLES.second, to);
  return [element("Sect", [fees, note])];
}
