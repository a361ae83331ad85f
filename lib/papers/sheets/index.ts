import type { Brief } from "../../brief";
import type { Layout } from "../../layout";
import { formatDay } from "../../measure";
import type { Venue } from "../../venue";
import { content, type PaperDocument } from "../document";
import { sheetFor } from "../frame";
import { seatedScene } from "../places";
import type { Measure } from "../type";
import { list, nameList } from "../words";
import { catererPart } from "./caterer";
import { coverPart } from "./cover";
import { crewPart, type PlanTool } from "./crew";
import { musicPart } from "./music";
import { footOf, type Part, type Setup } from "./page";
import { inOrder, type Told } from "./told";
import { turnoverPart } from "./turnover";

export type { PlanTool } from "./crew";

export type SheetsMeta = { readonly reference: string; /** 0: a draft. */ readonly revision: number; readonly fingerprint?: string; /** Day that the venue agreed it, YYYY-MM-DD. */ readonly agreedOn?: string };
export type SheetsInput = { readonly venue: Venue; readonly brief: Brief; readonly layout: Layout; readonly meta: SheetsMeta };
export type SheetsTools = { readonly measure: Measure; readonly plan: PlanTool };

/** Every part after the cover, its pages counted on from the one before. */
function partsOf(told: Told, setup: Setup, plan: PlanTool): readonly Part[] {
  const parts: Part[] = [];
  const next = (): number => { const last = parts.at(-1); return last ? last.from + last.pages : 1; };
  for (const scene of inOrder(told.layout)) {
    for (const t of told.layout.turnovers.filter((t) => t.to === scene.id)) parts.push(turnoverPart(t, told, { ...setup, from: next() }));
    parts.push(crewPart(scene, told, { ...setup, from: next(), plan }));
  }
  const seated = seatedScene(told.layout);
  if (seated) parts.push(catererPart(seated, told, { ...setup, from: next(), plan }));
  const music = musicPart(told, { ...setup, from: next(), plan });
  return music ? [...parts, music] : parts;
}

/** The day's sheets: a cover; for the crew each part of the day and each turnover; for the caterer; for the musicians. */
export function sheetsPaper({ venue, brief, layout, meta }: SheetsInput, tools: SheetsTools): PaperDocument {
  const told: Told = { venue, brief, layout };
  const sheet = sheetFor(venue.locale);
  const setup: Setup = { sheet, measure: tools.measure };
  const parts = partsOf(told, setup, tools.plan);
  const last = parts.at(-1);
  const total = last ? last.from + last.pages : 1;
  const cover = coverPart(told, parts.map((p) => ({ title: p.title, page: p.from })), { ...setup, meta });
  const day = formatDay(brief.date, venue.locale, "short");
  const from = [meta.revision === 0 ? "draft" : `revision ${meta.revision}`, meta.fingerprint?.split(" ").slice(0, 2).join(" ").slice(0, 9) ?? ""].filter(Boolean).join(", ");
  const artifacts = [cover, ...parts].flatMap((p) => p.artifacts);
  const pages = Array.from({ length: total }, (_, page) => ({
    artifacts: [
      content(page, footOf(sheet, [
        { label: "For", value: nameList(brief.couple ?? []) || meta.reference, most: 66 }, { label: "Day", value: day, most: 40 },
        { label: "From", value: from, most: 46 }, { label: "Sheet", value: `${page + 1} of ${total}`, most: 22 },
      ], tools.measure)),
      ...artifacts.filter((a) => a.page === page),
    ],
  }));
  return {
    title: `${list(brief.couple ?? []) || meta.reference}, ${formatDay(brief.date, venue.locale)}: sheets for the day at ${venue.name}`, author: venue.name, language: "en-GB",
    size: sheet, pages, elements: [cover, ...parts].flatMap((p) => p.elements),
    bookmarks: [{ title: "Cover", page: 0 }, ...parts.map((p) => ({ title: p.title, page: p.from }))],
  };
}
