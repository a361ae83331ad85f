import type { BriefFile } from "../brief";
import { composePlan, type Drawing, type TitleBlock } from "../drawing";
import type { Layout, SceneId } from "../layout";
import { formatDay } from "../measure";
import type { Venue } from "../venue";
import { sheetFor } from "./frame";
import { list } from "./words";

export type PlanSheetInput = {
  readonly venue: Venue; readonly layout: Pick<Layout, "scenes" | "title">; readonly scene: SceneId;
  /** Whose day it is; without it the title block names the layout alone. */
  readonly brief?: Pick<BriefFile, "couple" | "date" | "package">;
  readonly revision?: number; readonly fingerprint?: string;
  /** "4 of 8". */
  readonly sheet?: string;
};

/** One part of the day on a full sheet of the venue's office paper, at the largest scale of the row that it holds. */
export function planSheet(input: PlanSheetInput): Drawing {
  const { venue, layout, scene } = input;
  const paper = sheetFor(venue.locale);
  return composePlan(venue, layout, scene, { sheet: { ...paper, titleBlock: blockOf(input), legend: true, frame: true }, scale: "fit" });
}

function blockOf({ venue, layout, scene, brief, revision, fingerprint, sheet }: PlanSheetInput): TitleBlock {
  const drawn = layout.scenes.find((s) => s.id === scene);
  return {
    scene: drawn?.title ?? scene, layoutTitle: layout.title,
    ...(drawn && drawn.seats > 0 ? { places: drawn.seats } : {}),
    ...(brief ? { day: formatDay(brief.date, venue.locale), package: venue.packages.find((p) => p.id === brief.package)?.name ?? brief.package } : {}),
    ...(brief?.couple ? { couple: list(brief.couple) } : {}),
    ...(revision === undefined || revision === 0 ? {} : { revision }), ...(fingerprint === undefined ? {} : { fingerprint }), ...(sheet === undefined ? {} : { sheet }),
  };
}

