export { agreed, amended, changed, draft, invitation, lookLink, numbersDue, overdue, reminder, returned, sentToCouple } from "./to-couple";
export { askedOfDesk, deskInvitation, deskSignIn, overdueToDesk, sentToDesk, trial } from "./to-desk";
