"use client";
import type { ChangeEvent } from "react";
import type { HandView, Offer } from "@/lib/hand";
import type { Scene, SceneId } from "@/lib/layout";
import { formatLength, formatSize, lengthStyle } from "@/lib/measure";
import { Fees } from "../../desk/fees";
import { Weight } from "../../desk/findings";
import type { FieldError } from "../../ui/error-of";
import { useSay } from "../../words/speaking";
import { amiss, Amiss } from "./piece-form";
import { byRoom, namesIn, pieceWords, roomName } from "./pieces";
import type { Told } from "./told";
import { useHandSay } from "./voice";

export type Hrefs = { readonly part: (scene: SceneId) => string; readonly piece: (id: string) => string };

/** Undo, redo, put right, from the start: what concerns the whole plan. */
export function Deeds({ view, action, hidden }: { readonly view: HandView; readonly action: string; readonly hidden: Readonly<Record<string, string>> }) {
  const say = useHandSay();
  return (
    <form method="post" action={action} className="hand-deeds" aria-label={say("What was done")}>
      <input type="hidden" name="seen" value={view.seen} />
      {Object.entries(hidden).map(([name, value]) => <input key={name} type="hidden" name={name} value={value} />)}
      <button className="btn" type="submit" name="act" value="undo" aria-label={say("Undo: {what}", { what: view.undo ?? say("nothing is done yet") })} aria-disabled={view.undo === undefined || undefined}>{say("Undo")}</button>
      <button className="btn" type="submit" name="act" value="redo" aria-label={say("Redo: {what}", { what: view.redo ?? say("nothing was undone") })} aria-disabled={view.redo === undefined || undefined}>{say("Redo")}</button>
      <button className="btn" type="submit" name="act" value="mend">{say("Put it right")}</button>
      {view.done.length > 0 && <button className="leave" type="submit" name="act" value="again">{say("Back to the start")}</button>}
      <p className="note sec hand-last">{view.undo ? say("Last: {what}.", { what: view.undo }) : say("Nothing is changed yet.")} {view.redo ? say("Redo brings back: {what}.", { what: view.redo }) : ""}</p>
    </form>
  );
}

/** Which piece is meant, from a list. */
export function ChoosePiece({ view, scene, picked, page, onPick }: { readonly view: HandView; readonly scene: Scene; readonly picked: string | null; readonly page: string; readonly onPick?: (id: string | null) => void }) {
  const say = useHandSay(), names = namesIn(scene, say);
  return (
    <form method="get" action={page} className="hand-choose">
      <input type="hidden" name="part" value={scene.id} />
      <label htmlFor="choose">{say("Piece")}</label>
      <select id="choose" name="piece" {...(onPick ? { value: picked ?? "", onChange: (e: ChangeEvent<HTMLSelectElement>) => onPick(e.target.value || null) } : { defaultValue: picked ?? "" })}>
        <option value="">{say("Choose one")}</option>
        {byRoom(scene).map(({ room, items }) => (
          <optgroup key={room} label={roomName(view.venue, room)}>
            {items.map((i) => <option key={i.id} value={i.id}>{view.held.includes(i.id) ? say("{name}, held", { name: names.get(i.id) ?? i.id }) : names.get(i.id)}</option>)}
          </optgroup>
        ))}
      </select>
      {!onPick && <button className="btn" type="submit">{say("Choose")}</button>}
    </form>
  );
}

const offerKey = (o: Offer): string => (o.what.kind === "brought" ? `brought/${o.what.width}/${o.what.depth}/${o.what.what}` : `${o.what.kind}/${o.what.id}`);

/** What can still be brought in, as a short list in words. */
export function AddForm({ view, scene, action, errors, typed }: { readonly view: HandView; readonly scene: Scene; readonly action: string; readonly errors: readonly FieldError[]; readonly typed: Readonly<Record<string, string>> }) {
  const say = useHandSay(), { venue } = view, style = lengthStyle(venue, true);
  const offers = view.offers[scene.id] ?? [];
  const words = (o: Offer): string => {
    const called = o.what.kind === "standing" ? say("{piece}, back to where it stands", { piece: o.name }) : o.name;
    const size = "diameter" in o.shape ? formatLength(o.shape.diameter, style) : formatSize(o.shape.width, o.shape.depth, style);
    return [called, size, ...(o.left === undefined ? [] : [say("{n} left", { n: o.left })]), ...(o.places ? [say("laid for {n}", { n: o.places })] : [])].join(", ");
  };
  if (offers.length === 0) return <p className="small sec">{say("Everything that the venue owns and you bring stands somewhere already.")}</p>;
  return (
    <form method="post" action={action} className="hand-add" noValidate>
      <input type="hidden" name="seen" value={view.seen} />
      <input type="hidden" name="scene" value={scene.id} />
      <div className="hand-row">
        <label htmlFor="what">{say("What")}</label>
        <select id="what" name="what" defaultValue={typed["what"] ?? ""} {...amiss(errors, "what")}><option value="">{say("Choose from what is left")}</option>{offers.map((o) => <option key={offerKey(o)} value={offerKey(o)}>{words(o)}</option>)}</select>
        <Amiss errors={errors} name="what" />
      </div>
      <div className="hand-row">
        <label htmlFor="add-room">{say("Where")}</label>
        <select id="add-room" name="room" defaultValue={typed["room"] ?? scene.rooms[0]}>{scene.rooms.map((r) => <option key={r} value={r}>{roomName(venue, r)}</option>)}</select>
        <Amiss errors={errors} name="room" />
      </div>
      {view.layout.scenes.filter((s) => s.rooms.some((r) => scene.rooms.includes(r))).length > 1 && <p className="hand-only"><label><input type="checkbox" name="all" value="yes" /> {say("In every part of the day that uses the room")}</label></p>}
      <button className="btn" type="submit" name="act" value="add">{say("Bring it in")}</button>
      <p className="field-hint">{say("It is put on free floor; move it from there.")}</p>
    </form>
  );
}

/** What the checks found in this part of the day, by the letters on the plan. */
export function FoundHere({ told, title }: { readonly told: Told; readonly title: string }) {
  const say = useHandSay(), page = useSay();
  return (
    <section className="section" aria-labelledby="found-head">
      <h2 id="found-head">{say("What the checks found")}</h2>
      {told.findings.length === 0 && <p className="small sec mt-3">{say("{part}: nothing was found by the checks that were made.", { part: title })}</p>}
      {(["must", "should", "note"] as const).map((level) => {
        const own = told.findings.filter((f) => f.level === level);
        return own.length === 0 ? null : (
          <div key={level}>
            <Weight level={level} count={own.length} say={page} />
            <ul className="findings hand-findings">
              {own.map((f, i) => <li key={`${f.letter}-${i}`}>{f.letter && <span className="n"><span className="hidden-words">{say("On the plan: ")}</span>{f.letter}</span>}<span>{f.text}<span className="source">{page.given(f.source)}</span></span></li>)}
            </ul>
          </div>
        );
      })}
    </section>
  );
}

/** Everything that stands in this part of the day, in words, each piece to be chosen from here too. */
export function PieceList({ view, scene, picked, hrefs, onPick }: { readonly view: HandView; readonly scene: Scene; readonly picked: string | null; readonly hrefs: Hrefs; readonly onPick?: (id: string) => void }) {
  const say = useHandSay(), names = namesIn(scene, say);
  return (
    <section className="section" aria-labelledby="list-head">
      <h2 id="list-head">{say("{part} as a list", { part: scene.title })}</h2>
      {byRoom(scene).map(({ room, items }) => {
        const chairs = items.filter((i) => i.kind === "chair").length;
        return (
          <div key={room}>
            <h3 className="mt-5">{roomName(view.venue, room)}</h3>
            <ul className="hand-list">
              {items.filter((i) => i.kind !== "chair").map((i) => (
                <li key={i.id} aria-current={picked === i.id ? "true" : undefined}>
                  <a href={hrefs.piece(i.id)} onClick={(e) => { if (onPick) { e.preventDefault(); onPick(i.id); } }}>{names.get(i.id)}</a>
                  <span className="sec">{pieceWords(view, scene, i)}{view.held.includes(i.id) ? ` ${say("Held.")}` : ""}{i.note ? ` ${say("Note: {note}", { note: i.note })}` : ""}</span>
                </li>
              ))}
              {chairs > 0 && <li><b>{say("{n} chairs in rows", { n: chairs })}</b><span className="sec">{say("Each can be chosen from the list of pieces above.")}</span></li>}
            </ul>
          </div>
        );
      })}
    </section>
  );
}

/** Was and now, in words; and what it costs as it stands. */
export function Follows({ view, scene, told, hrefs }: { readonly view: HandView; readonly scene: Scene; readonly told: Told; readonly hrefs: Hrefs }) {
  const say = useHandSay(), page = useSay(), since = view.sent === undefined ? say("the layout that you chose") : say("revision {n}", { n: view.sent });
  return (
    <div className="two-up">
      <section className="section" aria-labelledby="changed-head">
        <h2 id="changed-head">{say("Was and now")}</h2>
        {told.changes.length === 0
          ? <p className="small sec mt-3">{say("{part}: everything stands as in {since}.", { part: scene.title, since })}</p>
          : <ol className="changes" aria-label={say("{part}: what differs from {since}", { part: scene.title, since })}>{told.changes.map((c) => <li key={c.number} value={c.number}><span className="n" aria-hidden="true">{c.number}</span><span>{c.text}</span></li>)}</ol>}
        {told.elsewhere.length > 0 && <p className="small mt-3">{told.elsewhere.map((e, i) => <span key={e.scene}>{i > 0 ? "; " : ""}<a href={hrefs.part(e.scene)}>{e.title}</a>: {say("{n} changes", { n: e.count })}</span>)}.</p>}
      </section>
      {told.quote && <section className="section" aria-labelledby="fees-head"><h2 id="fees-head">{say("Fee summary")}</h2><Fees quote={told.quote} locale={view.venue.locale} tax={view.venue.tax} say={page} /></section>}
    </div>
  );
}
