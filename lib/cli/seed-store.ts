import { readConfig, setEnvironment } from "../config";
import { openHouse } from "../server/house";
import { makeLog } from "../server/log";
import { seedDemo } from "./seed-demo";

/** `npm run seed`: fills an empty store with the demo, without serving it. */
setEnvironment({ MARQUETRY_DEMO: "1" });
const config = readConfig();
if (!config.ok) {
  process.stderr.write(`${config.error.join("\n")}\n`);
  process.exit(2);
}
const opened = await openHouse(config.value, makeLog("warn"));
if (!opened.ok) {
  process.stderr.write(`${opened.error}\n`);
  process.exit(1);
}
const seeding = await seedDemo(opened.value.house);
await seeding.rest(opened.value.house, (words) => { process.stderr.write(`${words}\n`); });
await opened.value.close();
