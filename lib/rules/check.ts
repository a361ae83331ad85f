import type { Brief } from "../brief";
import type { Finding, Layout } from "../layout";
import type { Venue } from "../venue";
import { findingText } from "../words/findings";
import { accessiblePlaces } from "./accessible-places";
import { accessway } from "./accessway";
import { aisles } from "./aisles";
import { carried } from "./carried";
import { asked, danceFloor, scenesAsked } from "./asked";
import { chairsBetween } from "./chairs-between";
import { commonPath } from "./common-path";
import { contextOf, type Context, type Raw, type SceneView } from "./context";
import { crowd } from "./crowd";
import { builtIn, doorClear, inRoom } from "./floor";
import { ends } from "./ends";
import { gaps } from "./gaps";
import { drain } from "./drain";
import { exitWidth } from "./exit-width";
import { exitsApart } from "./exits-apart";
import { fastened } from "./fastened";
import { frontStrip } from "./front-strip";
import { load } from "./load";
import { overlap } from "./overlap";
import { route, ways } from "./passage";
import { routeTurns } from "./route-turns";
import { alone, perTable, places } from "./places";
import { cables, circuitLoad } from "./power";
import { queue } from "./queue";
import { rooms } from "./rooms";
import { rowLength } from "./row-length";
import { centreAisle, rowClear } from "./rows";
import { seats } from "./seats";
import { musicSight } from "./sight";
import { ids, standing } from "./standing";
import { stock, tablePlaces } from "./stock";
import { toilets } from "./toilets";
import { turnoverRoom } from "./meanwhile";
import { travel } from "./travel";
import { turning } from "./turning";
import { turnovers, turnoverTime } from "./turnovers";
import { companions, wheelchairSpacesInRows } from "./wheelchair-rows";
import { wishes } from "./wishes";

type SceneRule = (v: SceneView, c: Context) => readonly Raw[];
type DayRule = (c: Context) => readonly Raw[];

/** Every rule that judges one part of the day; by name, so that one may be run alone. */
export const SCENE_RULES: Readonly<Record<string, SceneRule>> = {
  ids, rooms, inRoom, builtIn, overlap, doorClear, seats, tablePlaces, gaps, ends, rowClear, rowLength, centreAisle, aisles, frontStrip, stock, standing,
  ways, accessway, commonPath, route, routeTurns, turning, toilets, accessiblePlaces, wheelchairSpacesInRows, companions, load, exitWidth, drain, carried, travel, exitsApart, crowd, fastened, queue,
  places, alone, perTable, musicSight, circuitLoad, cables,
};
/** Every rule that judges the day as a whole. */
export const DAY_RULES: Readonly<Record<string, DayRule>> = { scenesAsked, asked, danceFloor, wishes, turnovers, turnoverTime, turnoverRoom, chairsBetween };

const WEIGHT: Readonly<Record<Finding["level"], number>> = { must: 0, should: 1, note: 2 };

/**
 * All findings on a layout, heaviest first. The same rules judge the engine's layouts, a hand's changes and agreed ones.
 * Without a brief only what the layout and the venue say of each other is judged, people being the places.
 */
export function check(venue: Venue, layout: Layout, brief?: Brief): readonly Finding[] {
  const c = contextOf(venue, layout, brief);
  return told(c, [...c.scenes.flatMap((v) => judgeScene(c, v)), ...judgeDay(c)]);
}

/** The same of a day's wet-weather twin, given as a layout of its own: what rooms outdoors could hold counts for nothing. */
export function checkWet(venue: Venue, layout: Layout, brief?: Brief): readonly Finding[] {
  const c = { ...contextOf(venue, layout, brief), wet: true };
  return told(c, [...c.scenes.flatMap((v) => judgeScene(c, v)), ...judgeDay(c)]);
}

/** What every rule finds in one part of the day; it follows from that part, the venue and the brief alone. */
export const judgeScene = (c: Context, v: SceneView): readonly Raw[] => Object.values(SCENE_RULES).flatMap((rule) => rule(v, c));
/** What the rules find that look at the day as a whole. */
export const judgeDay = (c: Context): readonly Raw[] => Object.values(DAY_RULES).flatMap((rule) => rule(c));

/** Findings with their sentences, heaviest first. */
export const told = (c: Context, raw: readonly Raw[]): readonly Finding[] =>
  raw.map((f) => withText(c.venue, c.layout, f)).sort((a, b) => WEIGHT[a.level] - WEIGHT[b.level]);

/** One rule's findings for one part of the day, without words: for a search that asks often. */
export function judge(c: Context, v: SceneView, names: readonly string[]): readonly Raw[] {
  return names.flatMap((n) => SCENE_RULES[n]?.(v, c) ?? []);
}

/** A finding with its sentence, in the venue's language and lengths. */
export const withText = (venue: Venue, layout: Pick<Layout, "scenes">, f: Raw): Finding => ({ ...f, text: findingText(f, { venue, layout }) });
