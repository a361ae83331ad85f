// Who may import whom. The table is directions.json: whatever it does not allow is refused.
import { readFileSync } from "node:fs";

const table = JSON.parse(readFileSync(new URL("directions.json", import.meta.url), "utf8"));
const core = Object.keys(table.core);
const folder = (room) => (room in table.pages ? `^${room}/` : `^lib/${room}/`);
const packages = (names) => `^node_modules/(${names.join("|")})/`;

const directions = Object.entries({ ...table.core, ...table.shell, ...table.pages }).map(([room, may]) => ({
  name: `${room}-imports`,
  comment: `${room} imports ${may.join(", ") || "no other room"} only`,
  severity: "error",
  from: { path: folder(room) },
  to: { path: "^(lib|app|components|tests)/", pathNot: [room, ...may].map(folder) },
}));

/** @type {import("dependency-cruiser").IConfiguration} */
export default {
  forbidden: [
    ...directions,
    {
      name: "known-rooms", severity: "error", comment: "every folder of lib has its line in directions.json",
      from: { path: "^lib/", pathNot: Object.keys({ ...table.core, ...table.shell }).map(folder) }, to: {},
    },
    {
      name: "core-is-pure", severity: "error", comment: "the core runs in a browser, in a worker and on a server alike",
      from: { path: `^lib/(${core.join("|")})/` }, to: { dependencyTypes: ["core"] },
    },
    {
      name: "core-packages", severity: "error", comment: "the core's outside packages are few and named",
      from: { path: `^lib/(${core.join("|")})/` }, to: { path: "^node_modules/", pathNot: packages(table.corePackages) },
    },
    {
      name: "components-run-anywhere", severity: "error", comment: "a component may be drawn in the browser",
      from: { path: "^components/" }, to: { dependencyTypes: ["core"] },
    },
    {
      name: "no-cycles", severity: "error", comment: "files that need one another to run are one file",
      from: { path: "^(lib|app|components)/" }, to: { circular: true, viaOnly: { dependencyTypesNot: ["type-only"] } },
    },
    {
      name: "resolved", severity: "error", comment: "what is imported is there",
      from: {}, to: { couldNotResolve: true },
    },
    {
      name: "declared", severity: "error", comment: "what is imported stands in package.json",
      from: { path: "^(lib|app|components)/" }, to: { dependencyTypes: ["npm-no-pkg", "npm-unknown"] },
    },
    {
      name: "not-for-tests-alone", severity: "error", comment: "what runs needs no package of the tests",
      from: { path: "^(lib|app|components)/" }, to: { dependencyTypes: ["npm-dev"], dependencyTypesNot: ["type-only"], pathNot: "^node_modules/@types/" },
    },
  ],
  options: {
    doNotFollow: { path: "^(node_modules|\\.next)/" },
    exclude: { path: "\\.css$" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["import", "require", "node", "default", "types"], extensions: [".ts", ".tsx", ".mjs", ".js", ".json"] },
  },
};
