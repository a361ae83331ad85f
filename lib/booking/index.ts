export { canonicalJson } from "./canonical";
export { answeredOn, deadlineAt, dueDate, overdueFrom, todayAt, type Deadline } from "./deadline";
export { sealedText, type Sealed } from "./fingerprint";
export { may, ROLES, type BookingAction, type DeskAction, type Role } from "./may";
export { BOOKING_FORM, RETURN_FORM } from "./forms";
export { isPlainLine, readNames } from "./names";
export { isMailHour, REMIND_AT, reminderFor } from "./reminders";
export { makeReference, readReference } from "./reference";
export { isOpenToCouple, STATES, step, type BookingEvent, type Effect, type Refused, type Standing, type State, type Step } from "./state";
