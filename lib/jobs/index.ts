export { deliverDue, type Post } from "./outbox";
export { startPostman, type Postman } from "./postman";
