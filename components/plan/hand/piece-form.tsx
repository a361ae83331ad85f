"use client";
import { useEffect, useRef, type ComponentProps, type ReactNode } from "react";
import { nameOf, nearWalls, roomNow, runOf, WALLS, type HandView, type Wall } from "@/lib/hand";
import { isRound, type Item, type Scene } from "@/lib/layout";
import { formatLength, lengthStyle } from "@/lib/measure";
import type { HandPhrase } from "@/lib/words/hand";
import type { FieldError } from "../../ui/error-of";
import { alikeIn, namesIn, pieceWords, roomName, staysPut } from "./pieces";
import { useHandSay } from "./voice";

type Props = {
  readonly view: HandView; readonly scene: Scene; readonly item: Item; readonly action: string;
  readonly errors: readonly FieldError[]; readonly typed: Readonly<Record<string, string>>;
};

const WALL_WORDS: Readonly<Record<Wall, HandPhrase>> = { left: "left wall", right: "right wall", upper: "upper wall", lower: "lower wall" };

export function Amiss({ errors, name }: { readonly errors: readonly FieldError[]; readonly name: string }) {
  const say = useHandSay(), found = errors.find((e) => e.field === name);
  return found ? <span className="field-error" id={`${name}-error`}><span className="hidden-words">{say("Error: ")}</span>{found.message}</span> : null;
}
export const amiss = (errors: readonly FieldError[], name: string): { readonly "aria-invalid"?: true; readonly "aria-describedby"?: string } =>
  (errors.some((e) => e.field === name) ? { "aria-invalid": true, "aria-describedby": `${name}-error` } : {});

/** A field that follows the plan: once the piece stands elsewhere it says so, and keeps the focus. */
function Fresh({ value, ...rest }: Omit<ComponentProps<"input">, "value"> & { readonly value: string }) {
  const at = useRef<HTMLInputElement>(null);
  useEffect(() => { if (at.current) at.current.value = value; }, [value]);
  return <input ref={at} defaultValue={value} autoComplete="off" {...rest} />;
}
function FreshChoice({ value, ...rest }: Omit<ComponentProps<"select">, "value"> & { readonly value: string }) {
  const at = useRef<HTMLSelectElement>(null);
  useEffect(() => { if (at.current) at.current.value = value; }, [value]);
  return <select ref={at} defaultValue={value} {...rest} />;
}

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return <fieldset className="hand-part"><legend>{title}</legend>{children}</fieldset>;
}

/** One wall and how far from it. */
function FromWall({ k, wall, far, errors, metric }: { readonly k: 1 | 2; readonly wall: Wall; readonly far: string; readonly errors: readonly FieldError[]; readonly metric: boolean }) {
  const say = useHandSay(), words = say(k === 1 ? "first wall" : "second wall");
  return (
    <div className="hand-wall">
      <label htmlFor={`far${k}`}>{say(metric ? "Distance, m" : "Distance")}<span className="hidden-words">{say(" from the {wall}", { wall: words })}</span></label>
      <Fresh id={`far${k}`} name={`far${k}`} className="short" inputMode="decimal" value={far} {...amiss(errors, `far${k}`)} />
      <FreshChoice id={`wall${k}`} aria-label={words} name={`wall${k}`} value={wall}>{WALLS.map((w) => <option key={w} value={w}>{say("from the {wall}", { wall: say(WALL_WORDS[w]) })}</option>)}</FreshChoice>
      <Amiss errors={errors} name={`far${k}`} />
    </div>
  );
}

/** Everything that can be done to the chosen piece, as one plain form with a button for each deed. */
export function PieceForm({ view, scene, item, action, errors, typed }: Props) {
  const say = useHandSay(), { venue } = view;
  const held = view.held.includes(item.id), fixed = staysPut(view, item), names = namesIn(scene, say);
  const name = names.get(item.id) ?? nameOf(item);
  const run = runOf(scene, item);
  const rooms = scene.rooms.filter((r) => venue.rooms.some((v) => v.id === r));
  const room = venue.rooms.find((r) => r.id === item.room);
  const [one, two] = room ? nearWalls(roomNow(venue, scene.drapes, room, item.at), item) : [];
  const far = (k: 1 | 2): string => typed[`far${k}`] ?? formatLength(Math.round((k === 1 ? one : two)?.mm ?? 0), lengthStyle(venue));
  const others = scene.items.filter((i) => i.id !== item.id && i.kind !== "chair" && !staysPut(view, i));
  const tables = (view.offers[scene.id] ?? []).filter((o) => o.what.kind === "stock" && venue.stock.some((s) => o.what.kind === "stock" && s.id === o.what.id && s.kind === "table"));
  const metric = venue.lengths === "metric";
  return (
    <form method="post" action={action} className="hand-piece" key={item.id} aria-labelledby="piece-head" noValidate>
      <input type="hidden" name="seen" value={view.seen} />
      <input type="hidden" name="scene" value={scene.id} />
      <input type="hidden" name="piece" value={item.id} />
      <h2 id="piece-head">{name}</h2>
      <p className="small sec mt-2">{pieceWords(view, scene, item)}{held ? ` ${say("Held where it stands.")}` : ""}{fixed ? ` ${say("The venue never moves it.")}` : ""}</p>
      <Amiss errors={errors} name="piece" /><Amiss errors={errors} name="hold" />
      {!fixed && (
        <>
          <Part title={say("Where it stands")}>
            {/* Pressed by Enter in any field of the form, as the first of its buttons. */}
            <FromWall k={1} wall={one?.wall ?? "left"} far={far(1)} errors={errors} metric={metric} />
            <FromWall k={2} wall={two?.wall ?? "upper"} far={far(2)} errors={errors} metric={metric} />
            <p className="field-hint">{say("Measured from the edge of the piece, its chairs left out. Leave one empty to move it one way only.")}</p>
            {rooms.length > 1 && <p><label htmlFor="room">{say("Room")}</label> <FreshChoice id="room" name="room" value={item.room}>{rooms.map((r) => <option key={r} value={r}>{roomName(venue, r)}</option>)}</FreshChoice></p>}
            <button className="btn" type="submit" name="act" value="place">{say("Put it there")}</button>
          </Part>
          <Part title={say("How it is turned")}>
            <div className="hand-row">
              <button className="btn" type="submit" name="act" value="quarter">{say("A quarter turn")}</button>
              <button className="btn" type="submit" name="act" value="quarter-back">{say("A quarter turn back")}</button>
            </div>
            {!isRound(item.shape) && (
              <div className="hand-row">
                <label htmlFor="angle">{say("Degrees")}</label>
                <Fresh id="angle" name="angle" className="short" inputMode="decimal" value={typed["angle"] ?? String(item.angle)} {...amiss(errors, "angle")} />
                <button className="btn" type="submit" name="act" value="turn">{say("Turn it to this")}</button>
                <Amiss errors={errors} name="angle" />
              </div>
            )}
          </Part>
          <div className="hand-row">
            <button className="btn" type="submit" name="act" value={held ? "let-go" : "hold"}>{say(held ? "Let it go" : "Hold it here")}</button>
            <button className="btn" type="submit" name="act" value="remove">{say("Take it away")}</button>
          </div>
        </>
      )}
      {run.length > 1 && <p className="hand-only"><label><input type="checkbox" name="run" value="yes" defaultChecked={typed["piece"] === undefined || typed["run"] === "yes"} /> {say("With what is joined to it: {n} tables, one number.", { n: run.length })}</label></p>}
      {alikeIn(view, item) > 1 && <p className="hand-only"><label><input type="checkbox" name="only" value="yes" defaultChecked={typed["only"] === "yes"} /> {say("In this part of the day only. It stands so in {n} parts.", { n: alikeIn(view, item) })}</label></p>}
      <details className="act hand-more" open={errors.some((e) => ["with", "stock", "places", "note"].includes(e.field))}>
        <summary>{say("More for this piece")}</summary>
        {item.kind === "table" && item.role !== undefined && item.seats.length > 0 && (
          <div className="hand-row">
            <label htmlFor="places">{say("Places")}</label>
            <Fresh id="places" name="places" className="short" inputMode="numeric" value={typed["places"] ?? String(item.seats.length)} {...amiss(errors, "places")} />
            <button className="btn" type="submit" name="act" value="lay">{say("Lay so many")}</button>
            <Amiss errors={errors} name="places" />
          </div>
        )}
        {!fixed && others.length > 0 && (
          <div className="hand-row">
            <label htmlFor="with">{say("Changes places with")}</label>
            <select id="with" name="with" defaultValue="" {...amiss(errors, "with")}><option value="">{say("Choose a piece")}</option>{others.map((o) => <option key={o.id} value={o.id}>{names.get(o.id)}</option>)}</select>
            <button className="btn" type="submit" name="act" value="swap">{say("Change places")}</button>
            <Amiss errors={errors} name="with" />
          </div>
        )}
        {!fixed && item.kind === "table" && tables.length > 0 && (
          <div className="hand-row">
            <label htmlFor="stock">{say("Another table instead")}</label>
            <select id="stock" name="stock" defaultValue="" {...amiss(errors, "stock")}><option value="">{say("Choose a table")}</option>{tables.map((o) => (o.what.kind === "stock" ? <option key={o.what.id} value={o.what.id}>{o.left === undefined ? o.name : `${o.name}, ${say("{n} left", { n: o.left })}`}</option> : null))}</select>
            <button className="btn" type="submit" name="act" value="exchange">{say("Exchange it")}</button>
            <Amiss errors={errors} name="stock" />
          </div>
        )}
        <div className="field">
          <label htmlFor="note">{say("Note on this piece")}</label>
          <span className="field-hint" id="note-hint">{say("For whoever lays the room. Left empty, it goes.")}</span>
          <textarea id="note" name="note" rows={2} defaultValue={typed["note"] ?? item.note ?? ""} aria-describedby="note-hint" />
          <Amiss errors={errors} name="note" />
          <button className="btn mt-2" type="submit" name="act" value="note">{say("Keep the note")}</button>
        </div>
      </details>
    </form>
  );
}
