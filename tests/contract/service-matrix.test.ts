import { afterAll, beforeAll, describe, expect, it } from "vitest";
import * as service from "../../lib/service";
import type { Actor, Outcome } from "../../lib/service";
import { added, coupleOf, DESK, NOBODY, testHouse, type TestHouse } from "./support/house";

let house: TestHouse;
let close: () => Promise<void>;
let ours = "";
let theirs = "";
beforeAll(async () => {
  ({ house, close } = await testHouse());
  ours = await added(house);
  theirs = await added(house);
});
afterAll(() => close());

const WHO = ["couple A", "couple B", "manager", "desk", "desk-look", "family", "nobody"] as const;
const actorOf = (who: (typeof WHO)[number]): Actor =>
  ({ "couple A": coupleOf(ours), "couple B": coupleOf(theirs), manager: DESK, desk: { ...DESK, role: "desk" } as const, "desk-look": { ...DESK, role: "desk-look" } as const, family: { kind: "look", reference: ours } as const, nobody: NOBODY })[who];
/** What one of the desk may, a manager may. */
const allOf = (may: readonly string[]): readonly string[] => (may.includes("desk") ? [...may, "manager"] : may);

/** Every use case that takes an actor, asked of couple A's booking; and who may ask it at all. */
const CASES: Readonly<Record<string, { readonly may: readonly string[]; readonly ask: (actor: Actor) => Promise<Outcome<unknown>> }>> = {
  getBooking: { may: ["couple A", "desk", "desk-look"], ask: (a) => service.getBooking(house, a, { reference: ours }) },
  arrangeFor: { may: ["couple A", "desk"], ask: (a) => service.arrangeFor(house, a, { reference: ours }) },
  arrangingOf: { may: ["couple A", "desk"], ask: (a) => service.arrangingOf(house, a, { reference: ours }) },
  stopArranging: { may: ["couple A", "desk"], ask: (a) => service.stopArranging(house, a, { reference: ours }) },
  capacityFor: { may: ["couple A", "desk", "desk-look"], ask: (a) => service.capacityFor(house, a, { reference: ours }) },
  planDrawing: { may: ["couple A", "desk", "desk-look", "family"], ask: (a) => service.planDrawing(house, a, { reference: ours, scene: "meal", pixelWidth: 640 }) },
  planSvg: { may: ["couple A", "desk", "desk-look", "family"], ask: (a) => service.planSvg(house, a, { reference: ours }) },
  planSvgs: { may: ["couple A", "desk", "desk-look", "family"], ask: (a) => service.planSvgs(house, a, { reference: ours, looks: [{}] }) },
  proposalPdfFor: { may: ["couple A", "desk", "desk-look"], ask: (a) => service.proposalPdfFor(house, a, { reference: ours }) },
  sheetsPdfFor: { may: ["desk", "desk-look"], ask: (a) => service.sheetsPdfFor(house, a, { reference: ours }) },
  calendarFor: { may: ["desk", "desk-look"], ask: (a) => service.calendarFor(house, a, { reference: ours }) },
  adjusting: { may: ["couple A", "desk"], ask: (a) => service.adjusting(house, a, { reference: ours }) },
  adjust: { may: ["couple A", "desk"], ask: (a) => service.adjust(house, a, { reference: ours, seen: "", values: {} }) },
  adjustTurn: { may: ["couple A", "desk"], ask: (a) => service.adjustTurn(house, a, { reference: ours, seen: "", way: "undo" }) },
  putRight: { may: ["couple A", "desk"], ask: (a) => service.putRight(house, a, { reference: ours, seen: "" }) },
  takeAdjusted: { may: ["couple A", "desk"], ask: (a) => service.takeAdjusted(house, a, { reference: ours, seen: "" }) },
  adjustDrawing: { may: ["couple A", "desk"], ask: (a) => service.adjustDrawing(house, a, { reference: ours, scene: "meal", pixelWidths: [640] }) },
  glance: { may: ["couple A", "desk", "desk-look", "family"], ask: (a) => service.glance(house, a, { reference: ours }) },
  listLookLinks: { may: ["couple A"], ask: (a) => service.listLookLinks(house, a, { reference: ours }) },
  makeLookLink: { may: ["couple A"], ask: (a) => service.makeLookLink(house, a, { reference: ours, label: "", email: "" }) },
  withdrawLookLink: { may: ["couple A"], ask: (a) => service.withdrawLookLink(house, a, { reference: ours, id: "" }) },
  askDesk: { may: ["couple A"], ask: (a) => service.askDesk(house, a, { reference: ours, what: "change", words: "" }) },
  saveStep: { may: ["couple A"], ask: (a) => service.saveStep(house, a, { reference: ours, step: "guests", values: { adults: "x" }, revision: 0 }) },
  setsAside: { may: ["couple A"], ask: (a) => service.setsAside(house, a, { reference: ours, step: "guests", values: { adults: "x" } }) },
  chooseLayout: { may: ["couple A"], ask: (a) => service.chooseLayout(house, a, { reference: ours, layout: "a", revision: 0 }) },
  sendRequest: { may: ["couple A"], ask: (a) => service.sendRequest(house, a, { reference: ours, revision: 0 }) },
  returnRequest: { may: ["desk"], ask: (a) => service.returnRequest(house, a, { reference: ours, number: 1, reason: "" }) },
  agreeRevision: { may: ["desk"], ask: (a) => service.agreeRevision(house, a, { reference: ours, number: 1, fingerprint: "" }) },
  mailLink: { may: ["desk"], ask: (a) => service.mailLink(house, a, { reference: ours }) },
  addBooking: { may: ["desk"], ask: (a) => service.addBooking(house, a, { values: {} }) },
  lookAtPasted: { may: ["desk"], ask: (a) => service.lookAtPasted(house, a, { text: "" }) },
  addPasted: { may: ["desk"], ask: (a) => service.addPasted(house, a, { text: "", good: 1, mail: false }) },
  listQueue: { may: ["desk", "desk-look"], ask: (a) => service.listQueue(house, a, {}) },
  listMailbox: { may: ["desk"], ask: (a) => service.listMailbox(house, a, {}) },
  listVenues: { may: ["desk", "desk-look"], ask: (a) => service.listVenues(house, a) },
  importVenue: { may: ["manager"], ask: (a) => service.importVenue(house, a, { json: "{}" }) },
  beginVenue: { may: ["manager"], ask: (a) => service.beginVenue(house, a, { values: {} }) },
  saveVenuePage: { may: ["manager"], ask: (a) => service.saveVenuePage(house, a, { venue: "tidewheel-mill", version: 0, place: { section: "stock" }, values: {} }) },
  addRoom: { may: ["manager"], ask: (a) => service.addRoom(house, a, { venue: "tidewheel-mill", version: 0, values: {} }) },
  removeRoom: { may: ["manager"], ask: (a) => service.removeRoom(house, a, { venue: "tidewheel-mill", version: 0, room: "loft" }) },
  venuesToEdit: { may: ["desk", "desk-look"], ask: (a) => service.venuesToEdit(house, a) },
  dropVenueDraft: { may: ["manager"], ask: (a) => service.dropVenueDraft(house, a, { venue: "tidewheel-mill" }) },
  standardSources: { may: ["manager"], ask: (a) => service.standardSources(house, a, { venue: "tidewheel-mill" }) },
  arrangeStandard: { may: ["manager"], ask: (a) => service.arrangeStandard(house, a, { venue: "tidewheel-mill", guests: 0 }) },
  chooseStandard: { may: ["manager"], ask: (a) => service.chooseStandard(house, a, { venue: "tidewheel-mill", version: 0, title: "", reference: ours, number: 1 }) },
  dropStandard: { may: ["manager"], ask: (a) => service.dropStandard(house, a, { venue: "tidewheel-mill", version: 0 }) },
  standardSvg: { may: ["desk", "desk-look"], ask: (a) => service.standardSvg(house, a, { venue: "tidewheel-mill", scene: "meal", pixelWidth: 640 }) },
  keepWords: { may: ["couple A"], ask: (a) => service.keepWords(house, a, { reference: ours, chosen: {} }) },
  countGuests: { may: ["desk"], ask: (a) => service.countGuests(house, a, { reference: ours, revision: 0, values: {} }) },
  offerDraft: { may: ["desk"], ask: (a) => service.offerDraft(house, a, { reference: ours, revision: 0, layout: "a", words: "" }) },
  workOutChange: { may: ["desk"], ask: (a) => service.workOutChange(house, a, { reference: ours, values: {} }) },
  lateWorkOf: { may: ["desk"], ask: (a) => service.lateWorkOf(house, a, { reference: ours }) },
  setStandard: { may: ["desk"], ask: (a) => service.setStandard(house, a, { reference: ours }) },
  lateChangeOf: { may: ["desk"], ask: (a) => service.lateChangeOf(house, a, { reference: ours }) },
  takeChange: { may: ["desk"], ask: (a) => service.takeChange(house, a, { reference: ours, seen: "" }) },
  dropChange: { may: ["desk"], ask: (a) => service.dropChange(house, a, { reference: ours }) },
  giveNumbers: { may: ["couple A", "desk"], ask: (a) => service.giveNumbers(house, a, { reference: ours, values: {} }) },
  changeAddress: { may: ["desk"], ask: (a) => service.changeAddress(house, a, { reference: ours, values: {} }) },
  remindNow: { may: ["desk"], ask: (a) => service.remindNow(house, a, { reference: ours }) },
  ownData: { may: ["couple A", "desk"], ask: (a) => service.ownData(house, a, { reference: ours }) },
  askErasure: { may: ["couple A"], ask: (a) => service.askErasure(house, a, { reference: ours }) },
  eraseBooking: { may: ["desk"], ask: (a) => service.eraseBooking(house, a, { reference: ours }) },
  listPeople: { may: ["manager"], ask: (a) => service.listPeople(house, a) },
  invitePerson: { may: ["manager"], ask: (a) => service.invitePerson(house, a, { values: {} }) },
  revokePerson: { may: ["manager"], ask: (a) => service.revokePerson(house, a, { email: "" }) },
  howManyFit: { may: ["desk", "desk-look"], ask: (a) => service.howManyFit(house, a, {}) },
  closeBooking: { may: ["desk"], ask: (a) => service.closeBooking(house, a, { reference: ours, reason: "" }) },
};

/** Use cases without an actor: what anyone may ask, each guarded by what it is asked with. */
const OPEN = ["theHouse", "currentActor", "lookAtLink", "openByCode", "openLink", "browserOf", "markedBrowser", "askCoupleLink", "askDeskLink", "renewLink", "endReminders", "lookAtQuiet", "signOut", "sameOrigin", "publicFace", "health", "standardKey"];

describe("who may ask what", () => {
  it("is decided for every use case that there is", () => {
    const verbs = Object.entries(service).filter(([, one]) => typeof one === "function").map(([name]) => name);
    expect(verbs.sort()).toEqual([...Object.keys(CASES), ...OPEN].sort());
  });

  for (const [name, { may, ask }] of Object.entries(CASES)) {
    for (const who of WHO) {
      it(`${name}: ${who} ${allOf(may).includes(who) ? "may" : "may not"}`, async () => {
        const answer = await ask(actorOf(who));
        const turnedAway = !answer.ok && answer.error.code === "not-allowed";
        expect(turnedAway).toBe(!allOf(may).includes(who));
      });
    }
  }

  it("tells a stranger the same of a booking that is there and of one that is not", async () => {
    const there = await service.getBooking(house, coupleOf(theirs), { reference: ours });
    const absent = await service.getBooking(house, coupleOf(theirs), { reference: "AAAA-99" });
    expect(there).toEqual(absent);
  });
});
