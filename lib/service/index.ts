/**
 * What the pages may do. Every use case is `verb(house, actor, input)`, checks who asks, and returns a value or a refusal.
 *
 *   const house = await theHouse();
 *   const actor = await currentActor(house, { cookie: (await headers()).get("cookie"), side: "couple" });
 *   const seen = await getBooking(house, actor, { reference });
 *   if (!seen.ok) notFound();
 */
export * from "./types";
export { theHouse, type House } from "./house";
export type { PlanInput, ProposalPdfInput, Works } from "./works";

// Getting in and out
export { currentActor } from "./current-actor";
export { lookAtLink, openByCode, openLink, type LinkLook, type Opened } from "./open-link";
export { askCoupleLink, askDeskLink, renewLink } from "./ask-link";
export { browserOf, markedBrowser } from "./asked-here";
export { signOut } from "./sign-out";
export { sameOrigin } from "./same-origin";
export { health, type Health } from "./health";
export { publicFace, type PublicFace } from "./venues";

// The desk
export { addBooking } from "./add-booking";
export { addPasted, lookAtPasted, type Pasted, type PastedRow } from "./paste-bookings";
export { mailLink } from "./mail-link";
export type { FinalGuests } from "../store";
export { invitePerson, listPeople, revokePerson, type PersonView } from "./invite-person";
export { listQueue } from "./list-queue";
export { returnRequest } from "./return-request";
export { agreeRevision } from "./agree-revision";
export { countGuests, offerDraft } from "./draft-for";
export { dropChange, lateChangeOf, lateWorkOf, takeChange, workOutChange, type LateChange, type LateWork } from "./change-late";
export { setStandard } from "./set-standard";
export { giveNumbers } from "./final-numbers";
export { changeAddress, remindNow } from "./reach-them";
export { closeBooking } from "./close-booking";
export { eraseBooking } from "./erase-booking";
export { listMailbox } from "./list-mailbox";
export { howManyFit, type FitsView, type RoomFits } from "./how-many-fit";
export { importVenue, listVenues, type VenueView } from "./venues";
export { addRoom, beginVenue, dropVenueDraft, removeRoom, saveVenuePage, venuesToEdit, type SavedVenue, type VenueToEdit } from "./edit-venue";

export { arrangeStandard, chooseStandard, dropStandard, standardSources, standardSvg, type StandardSource } from "./standard-layout";
export { standardKey } from "./adjust-ground";

// The couple; the desk may look
export { getBooking } from "./get-booking";
export { keepWords } from "./chosen-words";
export { saveStep } from "./save-step";
export { setsAside } from "./sets-aside";
export { arrangeFor, arrangingOf, stopArranging, type ArrangingView } from "./arrange-for";
export { capacityFor } from "./capacity-for";
export { chooseLayout } from "./choose-layout";
export { listLookLinks, makeLookLink, withdrawLookLink, type LookLink, type MadeLink } from "./look-links";
export { glance, type Glance } from "./glance";
export { askDesk } from "./ask-desk";
export { askErasure } from "./ask-erasure";
export { adjust, adjusting, adjustTurn, putRight, type AdjustView, type PutRight } from "./adjust";
export { takeAdjusted, type Taken } from "./adjust-take";
export { adjustDrawing } from "./adjust-drawing";
export { sendRequest, type SentRevision } from "./send-request";
export { planSvg, planSvgs } from "./plan-svg";
export { planDrawing } from "./plan-drawing";
export { proposalPdfFor, type Pdf } from "./proposal-pdf";
export { sheetsPdfFor } from "./sheets-pdf";
export { calendarFor, type Calendar } from "./calendar-ics";
export { ownData } from "./own-data";
export { endReminders, lookAtQuiet } from "./quiet";
