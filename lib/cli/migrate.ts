import { readConfig } from "../config";
import { openStore, storeErrorText } from "../store/open";

/** `npm run migrate`: brings the store up to date and says where it is. The server does the same when it starts. */
const config = readConfig();
if (!config.ok) {
  process.stderr.write(`${config.error.join("\n")}\n`);
  process.exit(2);
}
const opened = await openStore(config.value);
if (!opened.ok) {
  process.stderr.write(`${storeErrorText(opened.error)}\n`);
  process.exit(1);
}
await opened.value.close();
process.stdout.write("The store is up to date.\n");
