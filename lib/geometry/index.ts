export * from "./tolerance";
export * from "./point";
export * from "./segment";
export * from "./polygon";
export * from "./shape";
export * from "./region";
