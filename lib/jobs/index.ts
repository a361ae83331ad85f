export { startClockwork, type Clockwork } from "./clockwork";
export { deliverDue, type Delivered, type Post } from "./outbox";
export { startPostman, type Postman } from "./postman";
