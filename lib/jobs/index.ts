export { startClockwork, type Clockwork } from "./clockwork";
export { deliverDue, type Post } from "./outbox";
export { startPostman, type Postman } from "./postman";
