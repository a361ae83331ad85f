import type { Point } from "../../geometry";
import { PROFILES, STOCK_KINDS, type Venue } from "../schema";
import { idFrom, type Field, type Form, type Part, type Row } from "./form";
import { shownLength } from "./lengths";
import { cornerOf, readFloor, shownFloor } from "./outline";

const figure = (n: number | undefined): string => (n === undefined ? "" : String(n));

export function stockParts(venue: Venue): readonly Part[] {
  const len = (mm: number | undefined): string => (mm === undefined ? "" : shownLength(mm, venue));
  return [{ id: "stock", title: "Stock", one: "piece", key: "name", at: "stock", about: "What the venue owns and brings out. A round has one measure across; all else a width and a depth.", words: { shape: "width", seats: "comfort", count: "count", height: "height" }, fields: [
    { name: "name", label: "Name", kind: "text" }, { name: "kind", label: "Kind", kind: "one", options: STOCK_KINDS.map((value) => ({ value, text: value })) }, { name: "count", label: "How many", kind: "whole" },
    { name: "diameter", label: "Across, if round", kind: "length" }, { name: "width", label: "Width", kind: "length" }, { name: "depth", label: "Depth", kind: "length" }, { name: "height", label: "Height", kind: "length" },
    { name: "comfort", label: "Seats in comfort", kind: "whole" }, { name: "most", label: "Seats at the most", kind: "whole" }, { name: "ends", label: "Seats at the ends", kind: "yes" }, { name: "joins", label: "May be put end to end", kind: "yes" },
  ], shown: venue.stock.map((s) => ({ name: s.name, kind: s.kind, count: String(s.count), ...("diameter" in s.shape ? { diameter: len(s.shape.diameter), width: "", depth: "" } : { diameter: "", width: len(s.shape.width), depth: len(s.shape.depth) }), height: len(s.height), comfort: figure(s.seats?.comfort), most: figure(s.seats?.most), ends: s.ends ? "yes" : "", joins: s.joins ? "yes" : "" })) }];
}

export function readStock(form: Form, venue: Venue): Pick<Venue, "stock"> {
  const ids = venue.stock.map((s) => s.id);
  const fresh = (name: string): string => { const id = idFrom(name, ids, "piece"); ids.push(id); return id; };
  return { stock: form.rows("stock").map((row) => {
    const was = venue.stock[row.index], comfort = row.maybe.whole("comfort"), most = row.maybe.whole("most");
    if (comfort !== undefined && most !== undefined && most < comfort) row.amiss("most", "at least as many as in comfort.");
    return {
      ...was, id: was?.id ?? fresh(row.raw("name")), name: row.text("name"), kind: STOCK_KINDS.find((k) => k === row.raw("kind")) ?? "other", count: row.whole("count", 0, 10_000),
      shape: row.raw("diameter") !== "" ? { diameter: row.length("diameter", 100) } : { width: row.length("width", 50), depth: row.length("depth", 50) },
      height: row.maybe.length("height"), seats: comfort === undefined && most === undefined ? undefined : { comfort: comfort ?? most ?? 0, most: most ?? comfort ?? 0 }, ends: row.yes("ends"), joins: row.yes("joins"),
    };
  }) };
}

export function drapeParts(venue: Venue): readonly Part[] {
  const rooms = venue.rooms.map((r) => ({ value: r.id, text: r.name }));
  const corner = (id: string): Point => { const room = venue.rooms.find((r) => r.id === id); return room ? cornerOf(room.outline) : [0, 0]; };
  return [{ id: "drapes", title: "Drapes", one: "drape", key: "name", at: "drapes", about: "A drape lends a room a part of its neighbour, up to an opening between them. Lengths count from the upper left of the room that gives.", words: { area: "left", grows: "grows", from: "from", charge: "charge" }, fields: [
    { name: "name", label: "Name", kind: "text" }, { name: "from", label: "Room that gives", kind: "one", options: rooms }, { name: "grows", label: "Room that grows", kind: "one", options: rooms },
    { name: "left", label: "Middle of the part, from the left", kind: "length" }, { name: "top", label: "From the top", kind: "length" }, { name: "width", label: "Width", kind: "length" }, { name: "depth", label: "Depth", kind: "length" },
    { name: "corners", label: "Or its corners, with bars between", kind: "text" }, { name: "charge", label: "Drawing it", kind: "one", options: [{ value: "", text: "costs nothing" }, ...venue.charges.map((c) => ({ value: c.id, text: `costs “${c.name}”` }))] },
  ], shown: venue.drapes.map((d) => ({ name: d.name, from: d.from, grows: d.grows, ...shownFloor(d.area, corner(d.from), venue), charge: d.charge ?? "" })) }];
}

export function readDrapes(form: Form, venue: Venue): Pick<Venue, "drapes"> {
  const ids = venue.drapes.map((d) => d.id);
  const fresh = (name: string): string => { const id = idFrom(name, ids, "drape"); ids.push(id); return id; };
  return { drapes: form.rows("drapes").map((row) => {
    const was = venue.drapes[row.index], room = venue.rooms.find((r) => r.id === row.raw("from"));
    return { ...was, id: was?.id ?? fresh(row.raw("name")), name: row.text("name"), from: row.raw("from"), grows: row.raw("grows"), area: readFloor(row, room ? cornerOf(room.outline) : [0, 0], venue), charge: row.raw("charge") || null };
  }) };
}

const GAPS: readonly (readonly ["tableGap" | "wallGap" | "rowPitch", string])[] = [["tableGap", "Between tables"], ["wallGap", "From a table to a wall"], ["rowPitch", "From row to row"]];
const PROFILE_TEXT: Readonly<Record<(typeof PROFILES)[number], string>> = { "model-code": "model code", "uk-guide": "UK guide", house: "of the house" };

export function ruleParts(venue: Venue): readonly Part[] {
  const gaps = (set: "comfort" | "most", words: string): readonly Field[] => GAPS.map(([g, label]) => ({ name: `${set}-${g}`, label: `${label}, ${words}`, kind: "length" }));
  const len = (mm: number | undefined): string => (mm === undefined ? "" : shownLength(mm, venue));
  const shown = Object.fromEntries((["comfort", "most"] as const).flatMap((set) => GAPS.map(([g]) => [`${set}-${g}`, len(venue.rules?.[set]?.[g])])));
  return [
    { id: "rules", title: "Rules", key: "profile", at: "rules", about: "Left empty, the profile’s own figure holds.", words: Object.fromEntries((["comfort", "most"] as const).flatMap((set) => GAPS.map(([g]) => [`${set}.${g}`, `${set}-${g}`]))), fields: [
      { name: "profile", label: "Profile", kind: "one", options: PROFILES.map((value) => ({ value, text: PROFILE_TEXT[value] })) }, ...gaps("comfort", "in comfort"), ...gaps("most", "at the most"),
    ], shown: [{ profile: venue.rules?.profile ?? "model-code", ...shown }] },
    { id: "house", title: "Rules of the house", one: "rule", key: "rule", at: "rules.house", about: "A single value of the profile by its name, in its own unit; the names stand in the published schema.", fields: [{ name: "rule", label: "Rule", kind: "text" }, { name: "limit", label: "Limit", kind: "figure" }],
      shown: (venue.rules?.house ?? []).map((h) => ({ rule: h.rule, limit: String(h.limit) })) },
  ];
}

export function readRules(form: Form, venue: Venue): Pick<Venue, "rules"> {
  const row = form.one("rules"), house = form.rows("house").map((one) => ({ rule: one.text("rule"), limit: one.figure("limit") }));
  return { rules: { ...venue.rules, profile: PROFILES.find((p) => p === row.raw("profile")) ?? "model-code", comfort: gapsOf(row, "comfort"), most: gapsOf(row, "most"), house: house.length > 0 ? house : undefined } };
}

function gapsOf(row: Row, set: "comfort" | "most"): NonNullable<Venue["rules"]>["comfort"] {
  const [tableGap, wallGap, rowPitch] = GAPS.map(([g]) => row.maybe.length(`${set}-${g}`));
  return tableGap === undefined && wallGap === undefined && rowPitch === undefined ? undefined : { tableGap, wallGap, rowPitch };
}
