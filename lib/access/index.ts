export { browserCookie, cookieName, readCookie, sessionCookie, type CookieToSet, type Side } from "./cookies";
export { DESK_LINKS_AN_HOUR, HOUR, LIFETIMES, LOOK_LINKS } from "./limits";
export { faultOf, type LinkFault } from "./links";
export { isFromOurPages } from "./origin";
export { makeCounter, RATES, rateOf, type Counter } from "./rates";
export { hashCode, hashSecret, isSecret, makeCode, makeSecret, sha256 } from "./secrets";
export { sessionState } from "./sessions";
