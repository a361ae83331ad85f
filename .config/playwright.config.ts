import { defineConfig } from "@playwright/test";
import { findTool, TOOLS } from "../lib/cli/system";

const chromium = findTool(TOOLS.chromium, process.env.CHROMIUM_PATH);
if (!chromium) throw new Error("No Chromium here: `npm run fetch-browser` brings it, or CHROMIUM_PATH names it.");
// Chromium's own sandbox refuses to start for root.
const root = process.getuid?.() === 0;

export default defineConfig({
  testDir: "../tests/browser",
  outputDir: "../.out/browser",
  globalSetup: "../tests/browser/start-demo.ts",
  // A busy machine is slow, not wrong: waits end when what they wait for is there.
  timeout: 900_000,
  expect: { timeout: 60_000 },
  workers: 1,
  // A loaded machine may break a page off in the middle; the runner names what passed only at its second try.
  retries: 1,
  fullyParallel: false,
  forbidOnly: Boolean(process.env.CI),
  reporter: [["list"], ["json", { outputFile: "../.out/playwright.json" }]],
  use: {
    launchOptions: { executablePath: chromium, args: [...(root ? ["--no-sandbox"] : []), "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"] },
    actionTimeout: 60_000, navigationTimeout: 120_000,
  },
});
