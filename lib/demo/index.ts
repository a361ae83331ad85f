export { demoBookings, type DemoAnswers, type DemoBooking, type DemoState } from "./bookings";
export { larkspur } from "./larkspur";
export { tidewheel } from "./tidewheel";
