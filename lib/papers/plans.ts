import type { Drawing, Mark } from "../drawing/display";
import type { Scene } from "../layout";
import type { Venue } from "../venue";
import { content, element, type Content, type Element } from "./document";
import type { Region } from "./flow";

type Group = Mark & { readonly kind: "group" };
type Text = Mark & { readonly kind: "text" };

const altOf = (plan: Drawing): string => [plan.title, ...plan.words].join(" ");
const isGroup = (m: Mark, role: Group["role"]): m is Group => m.kind === "group" && m.role === role;
const isText = (m: Mark): m is Text => m.kind === "text";

/** A drawing made to fit a part of a page, in the middle of it. The page wears the frame already, so the plan's own is left off. */
export function planFigure(plan: Drawing, into: Region): Element {
  const frame = plan.marks.findLast((m) => isGroup(m, "decoration") && m.id === undefined);
  return drawnFigure({ ...plan, marks: plan.marks.filter((m) => m !== frame) }, into);
}

/** A drawing in the middle of a part of a page, never enlarged. */
export function drawnFigure(plan: Drawing, into: Region): Element {
  const scale = Math.min(into.width / plan.width, into.height / plan.height, 1);
  const at = [into.x + (into.width - plan.width * scale) / 2, into.y + (into.height - plan.height * scale) / 2] as const;
  return element("Figure", [content(into.page, plan.marks, { placing: { at, scale } })], {
    alt: altOf(plan), box: { page: into.page, at, width: plan.width * scale, height: plan.height * scale },
  });
}

/** Rooms of a scene by level: a sheet shows one level. The rooms of a level that the scene leaves alone are drawn with it. */
export function levelsOf(venue: Venue, scene: Scene): readonly (readonly string[])[] {
  const used = venue.rooms.filter((r) => scene.rooms.includes(r.id)).map((r) => r.level);
  return [...new Set(used)].map((level) => venue.rooms.filter((r) => r.level === level).map((r) => r.id));
}

/**
 * A sheet that is one drawing, at its own size. In the tree: the part of the day as a heading, the plan as a figure with its
 * words, the title block as text; the lines of the title block are ornament.
 */
export function planSheet(plan: Drawing, page: number, title: string): { readonly element: Element; readonly artifacts: readonly Content[] } {
  const block = plan.marks.find((m): m is Group => isGroup(m, "note") && m.id === "title");
  const texts = block?.marks.filter(isText) ?? [];
  const named = texts.find((t) => t.text === title);
  const rest = texts.filter((t) => t !== named);
  const lines = block?.marks.filter((m) => !isText(m)) ?? [];
  const figure = element("Figure", [content(page, plan.marks.filter((m) => m !== block))], {
    alt: altOf(plan), box: { page, at: [0, 0], width: plan.width, height: plan.height },
  });
  // The title block's own words head the sheet; one whose title block found no room is headed by its bookmark alone.
  const head = named ? [element("H2", [content(page, [named], { layer: 3 })])] : [];
  const note = rest.length > 0 ? [element("P", [content(page, rest, { layer: 3 })])] : [];
  return { element: element("Sect", [...head, figure, ...note]), artifacts: [content(page, lines, { layer: 2 })] };
}
