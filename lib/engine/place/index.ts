export * from "./overlap";
export * from "./room-floor";
export * from "./spots";
