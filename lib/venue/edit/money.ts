import { PER, type Charge, type Package, type Venue } from "../schema";
import { idFrom, type Form, type Option, type Part, type Row } from "./form";
import { shownMoney } from "./lengths";

const PER_TEXT: Readonly<Record<Charge["per"], string>> = { event: "the day", piece: "each piece", guest: "each guest", hour: "each hour", table: "each table", unit: "each unit of" };
const figure = (n: number | undefined): string => (n === undefined ? "" : String(n));

/** When a charge applies by itself; "always", "turnover" and "late" of the file's, and what couples may ask for. */
const WHEN: readonly Option[] = [
  ["always", "always"], ["turnover", "a room is turned over"], ["late", "answers come late"], ["dj", "DJ"], ["band", "band"], ["photo-booth", "photo booth"], ["lounge", "lounge"], ["cocktail-tables", "high tables"], ["appetisers", "appetisers"],
  ["children-corner", "children’s corner"], ["second-bar", "second bar"], ["cake", "cake"], ["welcome", "welcome table"], ["cards", "cards"], ["guest-book", "guest book"], ["photographs", "photographs"], ["seating-plan", "seating plan"], ["favours", "favours"],
].map(([value = "", text = ""]) => ({ value, text }));

export function chargeParts(venue: Venue): readonly Part[] {
  const whens = [...WHEN, ...new Set(venue.charges.flatMap((c) => c.when ?? []).filter((w) => !WHEN.some((o) => o.value === w)))].map((o) => (typeof o === "string" ? { value: o, text: o } : o));
  return [
    { id: "charges", title: "Charges", one: "charge", key: "name", at: "charges", about: `Amounts in ${venue.currency}. A charge for a piece moved or a drape drawn needs no “when”: the piece and the drape name it.`, words: { amount: "amount", of: "of", per: "per", when: "when" }, fields: [
      { name: "name", label: "Name", kind: "text" }, { name: "amount", label: "Amount", kind: "money" }, { name: "per", label: "For", kind: "one", options: PER.map((value) => ({ value, text: PER_TEXT[value] })) },
      { name: "of", label: "Unit of", kind: "one", options: [{ value: "", text: "" }, ...venue.stock.map((s) => ({ value: s.id, text: s.name }))] }, { name: "taxed", label: "Taxed", kind: "yes" }, { name: "when", label: "When", kind: "many", options: whens },
    ], shown: venue.charges.map((c) => ({ name: c.name, amount: shownMoney(c.amount, venue.currency), per: c.per, of: c.of ?? "", taxed: c.taxed ? "yes" : "", when: c.when ?? [] })) },
    { id: "tax", title: "Tax", key: "name", at: "tax", words: { basisPoints: "rate" }, fields: [
      { name: "name", label: "Name", kind: "text" }, { name: "rate", label: "Per cent", kind: "figure" },
      { name: "included", label: "Prices", kind: "one", options: [{ value: "yes", text: "hold the tax already" }, { value: "no", text: "have the tax put on top" }] }, { name: "of", label: "Rounded by", kind: "one", options: [{ value: "line", text: "line" }, { value: "total", text: "total" }] },
    ], shown: [{ name: venue.tax.name, rate: String(venue.tax.basisPoints / 100), included: venue.tax.included ? "yes" : "no", of: venue.tax.of }] },
  ];
}

export function readCharges(form: Form, venue: Venue): Pick<Venue, "charges" | "tax"> {
  const ids = venue.charges.map((c) => c.id), tax = form.one("tax");
  const fresh = (name: string): string => { const id = idFrom(name, ids, "charge"); ids.push(id); return id; };
  return {
    charges: form.rows("charges").map((row) => {
      const was = venue.charges[row.index], when = row.many("when");
      return { ...was, id: was?.id ?? fresh(row.raw("name")), name: row.text("name"), amount: row.money("amount"), per: PER.find((p) => p === row.raw("per")) ?? "event", of: row.maybe.text("of"), taxed: row.yes("taxed"), when: when.length > 0 ? when : undefined };
    }),
    tax: { ...venue.tax, name: tax.text("name"), basisPoints: Math.round(tax.figure("rate") * 100), included: tax.raw("included") !== "no", of: tax.raw("of") === "total" ? "total" : "line" },
  };
}

export function packageParts(venue: Venue): readonly Part[] {
  return [{ id: "packages", title: "Packages", one: "package", key: "name", at: "packages", about: "Bookings that are there keep the due date they were given.", words: { rooms: "rooms", included: "included", dueDays: "due", finalNumbersDays: "final", hours: "hours" }, fields: [
    { name: "name", label: "Name", kind: "text" }, { name: "due", label: "Layout due, days before the day", kind: "whole" }, { name: "final", label: "Final numbers, days before", kind: "whole" }, { name: "hours", label: "Hours in the price", kind: "figure" },
    { name: "coordinator", label: "With a coordinator", kind: "yes" }, { name: "turnover", label: "A room may be turned over", kind: "yes" },
    { name: "rooms", label: "Rooms", kind: "many", options: venue.rooms.map((r) => ({ value: r.id, text: r.name })) }, { name: "included", label: "Costs nothing more", kind: "many", options: venue.charges.map((c) => ({ value: c.id, text: c.name })) },
  ], shown: venue.packages.map((p) => ({ name: p.name, due: String(p.dueDays), final: figure(p.finalNumbersDays), hours: typeof p.hours === "number" ? String(p.hours) : "", coordinator: p.coordinator ? "yes" : "", turnover: p.turnover ? "yes" : "", rooms: p.rooms, included: p.included })) }];
}

export function readPackages(form: Form, venue: Venue): Pick<Venue, "packages"> {
  const ids = venue.packages.map((p) => p.id);
  const fresh = (name: string): string => { const id = idFrom(name, ids, "package"); ids.push(id); return id; };
  const hours = (row: Row, was: Package | undefined): Package["hours"] => row.maybe.figure("hours") ?? (typeof was?.hours === "object" ? was.hours : undefined);
  return { packages: form.rows("packages").map((row) => {
    const was = venue.packages[row.index];
    if (row.many("rooms").length === 0) row.amiss("rooms", "tick one room at the least.");
    return { ...was, id: was?.id ?? fresh(row.raw("name")), name: row.text("name"), dueDays: row.whole("due", 0, 3650), finalNumbersDays: row.maybe.whole("final"), hours: hours(row, was), coordinator: row.yes("coordinator"), turnover: row.yes("turnover"), rooms: row.many("rooms"), included: row.many("included") };
  }) };
}
