export { doorPoints, exitsOf, groundsOf, levelLinks, passagesFor, type Exit, type Walker } from "./ground";
export { grownFootprint } from "./grow";
export { nearestOnPiece, quickMap, walkMap, wideSpots, type FloorMap, type FloorPiece, type WalkMap, type WalkOptions, type WalkPiece } from "./map";
export { FREE_WALK, PATH, quickWays, straightWalk, TABLE_LINE, TWO_WAYS_FROM, waysMap, waysOut, type Unserved, type WaysOut } from "./out";
export { outward, type Outward } from "./carried";
export { leastWalk, narrower } from "./walk";
export { pinchOf, type Pinch } from "./pinch";
export { frontOf, ROUTE, quickRoutes, ROUTE_DOOR, routeMap, routes, type Routes, type Unreached } from "./routes";
export { isRowChair, isSeatedTable, isSolid, isWheelchairSpace, joinedRows, piecesOnFloor, runsOf, standingItem } from "./solids";
