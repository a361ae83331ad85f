import type { ArrangeResult, Layout, Quote } from "../../../lib/layout";
import type { Works } from "../../../lib/service";

const QUOTE: Quote = { currency: "GBP", lines: [], net: 0, tax: 0, total: 0 };
export const LAYOUT: Layout = {
  id: "a", title: "Rounds about the floor", why: [], turnovers: [], findings: [],
  scenes: [{ id: "meal", title: "Meal", rooms: ["grain-floor"], drapes: [], items: [], seats: 40, numbers: [] }],
};

export type Asked = { readonly works: Works; readonly times: Record<keyof Works, number> };

/** Small works that give one fixed layout, and count how often they were asked: what is tried here is the house around them. */
export function asked(): Asked {
  const times = { engineVersion: 0, arrange: 0, capacity: 0, check: 0, quote: 0, settle: 0, change: 0, repair: 0, planSvg: 0, planDrawing: 0, proposalPdf: 0, sheetsPdf: 0, calendar: 0 };
  const result: ArrangeResult = {
    format: "marquetry.result/1", engine: { version: "test", seed: 1 }, status: "arranged", reasons: [], instead: [],
    layouts: [LAYOUT, { ...LAYOUT, id: "b", title: "Long tables" }], timing: { totalMs: 0, stages: {} },
  };
  const works: Works = {
    engineVersion: "test",
    arrange: async () => { times.arrange += 1; return result; },
    capacity: async () => { times.capacity += 1; return { format: "marquetry.capacity/1", rooms: [] }; },
    check: async () => { times.check += 1; return []; },
    quote: async () => { times.quote += 1; return QUOTE; },
    settle: async (_venue, _brief, layout) => { times.settle += 1; return layout; },
    change: async (_venue, layout) => { times.change += 1; return { ...result, layouts: [{ ...layout, title: "One table more" }], moved: ["t9"], relaid: [] }; },
    repair: async (_venue, _brief, { layout }) => { times.repair += 1; return { ...result, layouts: [layout], moved: [] }; },
    planDrawing: async () => { times.planDrawing += 1; return { drawing: {}, idPrefix: "" }; },
    planSvg: async () => { times.planSvg += 1; return "<svg/>"; },
    calendar: async () => { times.calendar += 1; return "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n"; },
    sheetsPdf: async () => { times.sheetsPdf += 1; return new Uint8Array([37, 80, 68, 70]); },
    proposalPdf: async () => { times.proposalPdf += 1; return new Uint8Array([37, 80, 68, 70]); },
  };
  return { works, times };
}
