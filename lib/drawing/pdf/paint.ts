import { assertNever } from "../../base";
import type { Ink, Mark, Stroke } from "../display";
import { IN_PLACE, placed, placedStep, toPoints, type Placing } from "./points";
import type { Pen, PdfSurface } from "./surface";

/** What an ink is on paper: #rrggbb. "none" is never asked for. */
export type Colours = (ink: Exclude<Ink, "none">) => string;

type Paint = { readonly surface: PdfSurface; readonly colours: Colours; readonly placing: Placing };

const colourOf = (ink: Ink | undefined, colours: Colours): string | undefined =>
  ink === undefined || ink === "none" ? undefined : colours(ink);

function penOf(stroke: Stroke | undefined, paint: Paint): Pen | undefined {
  const color = colourOf(stroke?.ink, paint.colours);
  if (stroke === undefined || color === undefined) return undefined;
  const length = (mm: number): number => toPoints(mm * paint.placing.scale);
  // A dash of no length is refused by PDF writers; a hair stands for the dot that was meant.
  const dash = stroke.dash?.map((d) => Math.max(length(d), 0.01));
  return { color, weight: length(stroke.weight), ...(dash && dash.length > 0 ? { dash } : {}), ...(stroke.cap ? { cap: stroke.cap } : {}) };
}

function paintMark(mark: Mark, paint: Paint): void {
  const { surface, colours, placing } = paint;
  switch (mark.kind) {
    case "path": {
      const steps = mark.steps.map((s) => placedStep(s, placing));
      const fill = colourOf(mark.fill, colours);
      const stroke = penOf(mark.stroke, paint);
      if (steps.length > 0 && (fill || stroke)) surface.path({ steps, fill, stroke, evenOdd: mark.evenOdd ?? false });
      return;
    }
    case "circle": {
      const fill = colourOf(mark.fill, colours);
      const stroke = penOf(mark.stroke, paint);
      const radius = toPoints(mark.radius * placing.scale);
      if (fill || stroke) surface.circle({ at: placed(mark.at, placing), radius, fill, stroke });
      return;
    }
    case "clip":
      surface.clip(mark.steps.map((s) => placedStep(s, placing)), () => paintMarks(mark.marks, paint));
      return;
    case "text": {
      const color = colourOf(mark.ink, colours);
      if (color === undefined || mark.text === "") return;
      surface.text({
        at: placed(mark.at, placing), text: mark.text, size: toPoints(mark.size * placing.scale), color,
        font: { face: mark.face, weight: mark.weight ?? "regular", italic: mark.italic ?? false },
        anchor: mark.anchor ?? "start", angle: mark.angle ?? 0,
      });
      return;
    }
    case "group":
      paintMarks(mark.marks, paint);
      return;
    default:
      assertNever(mark);
  }
}

function paintMarks(marks: readonly Mark[], paint: Paint): void {
  for (let i = 0; i < marks.length; i += 1) {
    const mark = marks[i];
    if (!mark) return;
    const shown = paint.surface.known?.(mark) ?? 0;
    if (shown > 0) i += shown - 1;
    else paintMark(mark, paint);
  }
}

/** Paints a display list on a PDF page. Its millimetres of paper become points exactly: 72 points are 25.4 mm. */
export function paint(marks: readonly Mark[], to: {
  readonly surface: PdfSurface; readonly colours: Colours; readonly placing?: Placing;
}): void {
  paintMarks(marks, { surface: to.surface, colours: to.colours, placing: to.placing ?? IN_PLACE });
}

const isPlain = (m: Mark): boolean => m.kind === "path" || m.kind === "circle" || (m.kind === "clip" && m.marks.every(isPlain));

/** Lines and fills that follow one another, without words between them: what may be drawn once and shown again. */
export function plainRuns(marks: readonly Mark[]): readonly (readonly Mark[])[] {
  const runs: Mark[][] = [];
  let run: Mark[] = [];
  const end = (): void => { if (run.length > 0) runs.push(run); run = []; };
  const inner: (readonly Mark[])[] = [];
  for (const m of marks) {
    if (isPlain(m)) { run.push(m); continue; }
    end();
    if (m.kind === "group") inner.push(...plainRuns(m.marks));
  }
  end();
  return [...runs, ...inner];
}
